import type { Setup } from "../../setup/types.ts";
import type { LimitBorder } from "../../studies/limits/limitBorders.ts";
import { isPassed, type LimitOverRange } from "../../studies/limits/limitsPassed.ts";
import { heightText, lockText, travelText } from "../../studies/wording/poseText.ts";
import type { LengthFormat } from "../../units/formatLength.ts";

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
  if (!isPassed(limit)) {
    const { where, ...pose } = at(limit.travel, limit.steer);
    return { ...pose, words: `least at ${where}` };
  }
  const { starts } = limit;
  const travel = starts?.bump ?? starts?.droop ?? null;
  if (travel !== null) {
    const { where, ...pose } = at(travel, 0);
    return { ...pose, words: `passed from ${where} on` };
  }
  const start = starts?.left ?? starts?.right ?? null;
  if (start !== null) {
    const { where, ...pose } = at(start.travel, start.steer);
    return { ...pose, words: `passed from ${where} on` };
  }
  const { where, ...pose } = at(limit.travel, limit.steer);
  return { ...pose, words: `passed most at ${where}` };
}

/** What is met on a way from a stance: `the bump stop at 3 in bump`. @param along what `at` of the border is */
export function borderText(border: LimitBorder, along: "travel" | "steer", format: LengthFormat): string {
  const at = along === "travel" ? travelText(border.at, format) : lockText(border.at);
  switch (border.stop) {
    case "limit":
      return `${border.name} (${border.side}) at ${at}`;
    case "reach":
      return `the ${border.side} ${border.joint} ends at ${at}`;
    case "unproven":
      return `nothing is proven past ${at}`;
    case "end":
      return `nothing up to ${at}`;
  }
}
