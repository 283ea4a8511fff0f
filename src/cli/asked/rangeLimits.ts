import { type EnvelopeRange, reachableTravel } from "../../studies/envelope/envelopeRange.ts";
import { type ReachLimit, reachLimits } from "../../studies/reports/reachLimits.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { InputError } from "./inputError.ts";
import type { Truck } from "./readTruck.ts";

/**
 * Joints that cannot follow somewhere in a range. @throws InputError when no height of it is in reach, naming the
 * option it came from
 */
export function rangeLimits(
  { file, model }: Truck,
  range: EnvelopeRange,
  asked: { readonly travel?: string; readonly stance?: string },
): readonly ReachLimit[] {
  const travel = reachableTravel(model, range);
  if (travel === null) {
    const { units } = model.setup;
    const { left, right } = model.frontEnd;
    const text = (mm: number) => String(Math.trunc(unitsFromMm(mm, units) * 1e3) / 1e3 + 0);
    const low = text(Math.max(left.reach.droop.travel, right.reach.droop.travel));
    const high = text(Math.min(left.reach.bump.travel, right.reach.bump.travel));
    const [option, value] =
      asked.stance !== undefined
        ? (["--stance", asked.stance] as const)
        : (["--travel", asked.travel ?? ""] as const);
    throw InputError.ofOption(
      file,
      option,
      value,
      `is out of reach; both wheels follow from ${low} to ${high} ${units}`,
    );
  }
  if (range.travelLow < range.travelHigh) {
    return reachLimits(model).filter(({ along, startsAt }) => {
      if (along === "travel") return startsAt > range.travelLow && startsAt < range.travelHigh;
      return startsAt > range.steerLow && startsAt < range.steerHigh;
    });
  }
  return [...new Set([range.steerLow, range.steerHigh])].flatMap((steer): ReachLimit[] => {
    const pose = solvePose(model.frontEnd, range.travelLow, steer);
    if (pose.ok) return [];
    const { side, status, along, startsAt } = pose;
    return [{ side, joint: jointOf(status), along, startsAt, travel: range.travelLow }];
  });
}
