import type { OrderSetup } from "../../setup/types/orderTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { isSamePattern } from "../../units/boltPattern.ts";
import { isSameThread } from "../../units/threadCallout.ts";
import { builtPinMisfits } from "./builtPinMisfits.ts";
import type { Misfit } from "./misfit.ts";
import type { OrderedParts } from "./orderedParts.ts";

/**
 * Diameters of thread that a rod end is to be screwed in: with less, the jam nut carries what the thread should (common
 * practice, no source). No statement of strength.
 */
export const LEAST_ENGAGED_DIAMETERS = 1.5;

/** Radians. What rounding an angle to a tenth of a degree makes of a taper; 1.5 and 2 in/ft are forty times as far apart. */
const SAME_TAPER = 0.001;

/** mm. Bores and steps are told to a thousandth of an inch. */
const SAME_SIZE = 0.02;

/** What of an order's own numbers does not go together, in the order of the sheet. */
export function misfitsOf(setup: Setup, order: OrderSetup, parts: OrderedParts): readonly Misfit[] {
  return [
    ...unknownNames(setup, order, parts),
    ...jointMisfits(parts),
    ...boltedMisfits(order, parts),
    ...pinMisfits(order, parts),
    ...builtPinMisfits(setup, order, parts),
    ...armMisfits(order),
  ];
}

function unknownNames(
  { stances, measuredStances }: Setup,
  { stance }: OrderSetup,
  parts: OrderedParts,
): readonly Misfit[] {
  const names = [...stances, ...measuredStances].map(({ name }) => name);
  const items = parts.unknown.map(
    ({ block, item, names: known }): Misfit => ({
      at: ["order", block, "item"],
      kind: "unknown item",
      item,
      names: known,
    }),
  );
  const isKnown = stance === null || names.includes(stance);
  return isKnown ? items : [{ at: ["order", "stance"], kind: "unknown stance", stance, names }, ...items];
}

function jointMisfits(parts: OrderedParts): readonly Misfit[] {
  return (["upperBallJoint", "lowerBallJoint"] as const).flatMap((key): readonly Misfit[] => {
    const { seat, taper } = parts[key];
    if (seat === null || taper === null || Math.abs(seat - taper) <= SAME_TAPER) return [];
    return [{ at: ["order", key, "seat"], kind: "tapers differ", seat, stud: taper }];
  });
}

function boltedMisfits({ wheel }: OrderSetup, { hub, brake }: OrderedParts): readonly Misfit[] {
  const found: Misfit[] = [];
  for (const [what, block, pattern] of [
    ["wheel", "wheel", wheel.boltPattern],
    ["rotor", "brake", brake.boltPattern],
  ] as const) {
    if (pattern === null || hub.boltPattern === null || isSamePattern(pattern, hub.boltPattern)) continue;
    const at = ["order", block, "boltPattern"];
    found.push({ at, kind: "patterns differ", pattern, other: hub.boltPattern, what });
  }
  for (const [what, block, key, bore, over] of [
    ["wheel", "wheel", "centerBore", wheel.centerBore, hub.pilot],
    ["rotor", "brake", "hatRegister", brake.hatRegister, hub.register],
  ] as const) {
    if (bore === null || over === null || bore >= over - SAME_SIZE) continue;
    found.push({ at: ["order", block, key], kind: "bore too small", bore, over, what });
  }
  if (brake.leastRim !== null && wheel.rimDiameter !== null && wheel.rimDiameter < brake.leastRim - SAME_SIZE)
    found.push({
      at: ["order", "wheel", "rimDiameter"],
      kind: "rim too small",
      rim: wheel.rimDiameter,
      least: brake.leastRim,
    });
  return found;
}

/** Whatever is slid on from the end has to pass what is outboard of its place. */
function pinMisfits({ hubFace }: OrderSetup, { hub }: OrderedParts): readonly Misfit[] {
  const { sealDiameter, innerBearing, outerBearing, nutThread, shoulder, outerSeat } = hub;
  const found: Misfit[] = [];
  const noStep = (
    at: readonly string[],
    what: Extract<Misfit, { kind: "no step down" }>["what"],
    diameter: number | null | undefined,
    inboard: number | null,
    mayBeEqual = false,
  ) => {
    if (diameter === null || diameter === undefined || inboard === null) return;
    const isLess = mayBeEqual ? diameter <= inboard + SAME_SIZE : diameter < inboard - SAME_SIZE;
    if (!isLess) found.push({ at: ["order", "hub", ...at], kind: "no step down", diameter, inboard, what });
  };
  noStep(["innerBearing", "bore"], "inner bearing", innerBearing.bore, sealDiameter);
  noStep(["outerBearing", "bore"], "outer bearing", outerBearing.bore, innerBearing.bore);
  noStep(["nutThread"], "nut thread", nutThread?.diameter, outerBearing.bore, true);
  if (shoulder !== null && innerBearing.width !== null && outerSeat !== null) {
    const most = shoulder - innerBearing.width;
    if (outerSeat > most + SAME_SIZE)
      found.push({
        at: ["order", "hub", "outerSeat"],
        kind: "bearings overlap",
        seat: outerSeat,
        least: most,
      });
  }
  if (shoulder !== null && hubFace !== null && !(shoulder < hubFace))
    found.push({ at: ["order", "hub", "shoulder"], kind: "no room on the pin", shoulder, hubFace });
  return found;
}

function armMisfits({ steeringArm }: OrderSetup): readonly Misfit[] {
  const { thread, rodEndThread, engagement, jamNut, shank } = steeringArm;
  const found: Misfit[] = [];
  const at = (key: string) => ["order", "steeringArm", key];
  if (thread !== null && rodEndThread !== null && !isSameThread(thread, rodEndThread))
    found.push({ at: at("rodEndThread"), kind: "threads differ", thread: rodEndThread, other: thread });
  const least = thread === null ? null : LEAST_ENGAGED_DIAMETERS * thread.diameter;
  if (thread !== null && least !== null && engagement !== null && engagement < least - SAME_SIZE)
    found.push({ at: at("engagement"), kind: "too little engaged", engaged: engagement, least, thread });
  if (engagement !== null && shank !== null && shank < engagement + (jamNut ?? 0) - SAME_SIZE)
    found.push({ at: at("shank"), kind: "shank too short", shank, least: engagement + (jamNut ?? 0) });
  return found;
}
