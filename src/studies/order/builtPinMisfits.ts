import type { OrderSetup } from "../../setup/types/orderTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { Misfit } from "./misfit.ts";
import type { OrderedParts } from "./orderedParts.ts";
import { pinSteps } from "./pinSteps.ts";

/** mm. Bores, steps and seats are told to a thousandth of an inch. */
const SAME_SIZE = 0.03;

/**
 * Where the build's pin is not what the hub sits on with the hub face as ordered: the seats of both bearings, where they carry,
 * and the pin's end. Nothing without a pin, or of what the hub leaves open. A pin drawn for a hub face comes along with it.
 */
export function builtPinMisfits(
  { build, knuckle }: Setup,
  order: OrderSetup,
  { hub }: OrderedParts,
): readonly Misfit[] {
  const pin = build?.pin ?? null;
  if (pin === null || pin.steps.length === 0) return [];
  const ordered = order.hubFace ?? knuckle.hubFace;
  const comesAlong = pin.forHubFace === null ? 0 : ordered - knuckle.hubFace;
  const found: Misfit[] = [];
  for (const { name, from, to, diameter: bore } of pinSteps(hub, null)) {
    if (name !== "inner bearing" && name !== "outer bearing") continue;
    const seat = { from: ordered + from, to: ordered + to };
    const [low, high] = [seat.from - comesAlong, seat.to - comesAlong];
    const under = pin.steps.findIndex(
      (step) =>
        step.from < high - SAME_SIZE &&
        step.to > low + SAME_SIZE &&
        Math.abs(step.diameter - bore) > SAME_SIZE,
    );
    const endsBefore = pin.steps.at(-1)!.to < high - SAME_SIZE;
    if (under >= 0 || endsBefore) {
      const at = ["build", "pin", "steps", under >= 0 ? under : pin.steps.length - 1];
      const diameter = under >= 0 ? pin.steps[under]!.diameter : null;
      found.push({ at, kind: "seat on the pin", what: name, ...seat, bore, diameter });
    }
    const key = name === "inner bearing" ? "inner" : "outer";
    const carries = pin.bearings?.[key];
    if (carries !== undefined && (carries < low - SAME_SIZE || carries > high + SAME_SIZE)) {
      const at = ["build", "pin", "bearings", key];
      found.push({ at, kind: "bearing off its seat", what: name, center: carries + comesAlong, ...seat });
    }
  }
  if (hub.pinEnd !== null) {
    const [end, wanted] = [pin.steps.at(-1)!.to + comesAlong, ordered + hub.pinEnd];
    if (Math.abs(end - wanted) > SAME_SIZE)
      found.push({ at: ["build", "pin", "steps", pin.steps.length - 1, "to"], kind: "pin end", end, wanted });
  }
  return found;
}
