import type { OrderedHub } from "../../setup/types/orderTypes.ts";

/** A length of the pin with one diameter, mm along the pin from the hub face, + outboard. */
export interface PinStep {
  readonly name: "seal" | "inner bearing" | "between bearings" | "outer bearing" | "nut thread";
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
}

/**
 * The steps of the pin that a hub and its bearings fix, inboard first; steps whose numbers are not given are left out.
 * Between the bearings the pin is taken as thick as the outer bearing's bore: it may be thicker there, but no thinner.
 * @param hubFace from the steering axis to the hub face, where the first step begins; null = not known
 */
export function pinSteps(hub: OrderedHub, hubFace: number | null): readonly PinStep[] {
  const { shoulder, sealDiameter, innerBearing, outerBearing, outerSeat, nutThread, pinEnd } = hub;
  const step = (
    name: PinStep["name"],
    from: number | null,
    to: number | null,
    diameter: number | null,
  ): readonly PinStep[] =>
    from === null || to === null || diameter === null || !(to > from) ? [] : [{ name, from, to, diameter }];
  const innerFrom = shoulder === null ? null : -shoulder;
  const innerTo = innerFrom === null || innerBearing.width === null ? null : innerFrom + innerBearing.width;
  const outerFrom = outerSeat === null ? null : -outerSeat;
  const outerTo = outerFrom === null || outerBearing.width === null ? null : outerFrom + outerBearing.width;
  return [
    ...step("seal", hubFace === null ? null : -hubFace, innerFrom, sealDiameter),
    ...step("inner bearing", innerFrom, innerTo, innerBearing.bore),
    ...step("between bearings", innerTo, outerFrom, outerBearing.bore),
    ...step("outer bearing", outerFrom, outerTo, outerBearing.bore),
    ...step("nut thread", outerTo, pinEnd, nutThread?.diameter ?? null),
  ];
}
