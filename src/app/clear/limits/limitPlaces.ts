import type { Setup } from "../../../setup/types/types.ts";
import { isPassed, type LimitOverRange } from "../../../studies/limits/limitsPassed.ts";
import { heightText, lockText } from "../../../studies/wording/poseText.ts";
import { safeLength, safePercent } from "../../../studies/wording/safeSide.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";

/** A pose to go to, with its words. */
export interface LimitPlace {
  readonly travel: number;
  readonly steer: number;
  readonly words: string;
}

/** Where a limit is first passed over the range; where it comes nearest when it is kept everywhere. */
export function placeOf(limit: LimitOverRange, setup: Setup, format: LengthFormat): LimitPlace {
  const at = (travel: number, steer: number) => ({
    ...{ travel, steer, where: `${heightText(travel, setup, format)}, ${lockText(steer)}` },
  });
  // Where it is passed is told no later than it is.
  const from = (travel: number, steer: number) => {
    const told = safeLength(travel, travel < 0 ? "up" : "down", format);
    const share = (Math.sign(steer) * safePercent(steer)) / 100;
    return { ...at(travel, steer), where: `${heightText(told, setup, format)}, ${lockText(share)}` };
  };
  if (!isPassed(limit)) {
    const { where, ...pose } = at(limit.travel, limit.steer);
    return { ...pose, words: `least at ${where}` };
  }
  const { starts } = limit;
  const travel = starts?.bump ?? starts?.droop ?? null;
  if (travel !== null) {
    const { where, ...pose } = from(travel, 0);
    return { ...pose, words: `passed from ${where} on` };
  }
  const start = starts?.left ?? starts?.right ?? null;
  if (start !== null) {
    const { where, ...pose } = from(start.travel, start.steer);
    return { ...pose, words: `passed from ${where} on` };
  }
  const { where, ...pose } = at(limit.travel, limit.steer);
  return { ...pose, words: `passed most at ${where}` };
}
