import type { Setup } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { KEPT } from "../limits/frontEndLimit.ts";
import type { BindsFirst, LimitMargin, LimitPose } from "../limits/limitsOf.ts";
import type { LimitOverRange } from "../limits/limitsPassed.ts";
import { firstLimit, isOpen, type LimitPlace, type LimitsState } from "./limitRows.ts";
import { marginWords } from "./limitSentences.ts";
import { heightText, lockText } from "./poseWords.ts";
import { borderText } from "./stopTexts.ts";

/** Whether a margin is kept, and by how much: `in hand 1/4 in`, `just met`, `passed by 1.2°`. */
export function marginText(
  { margin, measure }: Pick<LimitMargin, "margin" | "measure">,
  format: LengthFormat,
): string {
  if (Math.abs(margin) <= KEPT) return "just met";
  return `${margin < 0 ? "passed by" : "in hand"} ${marginWords(margin, measure, format)}`;
}

/** The least margin over the range, and that more was not proven where the time ended first. */
export function leastMarginText(limit: LimitOverRange, format: LengthFormat): string {
  return `${marginText(limit, format)}${isOpen(limit) ? ", not proven" : ""}`;
}

/** The limit with the least in hand: `lower ball joint, in hand 2.1°`, with its side where the other one differs. */
export function leastText(margins: readonly LimitMargin[], format: LengthFormat): string {
  const first = firstLimit(margins);
  if (first === null) return "no limit given";
  const { limit, isAlike } = first;
  return `${isAlike ? "" : `${limit.side} `}${limit.name}, ${marginText(limit, format)}`;
}

/** The same of a pose that may be out of reach. */
export function bindsText(pose: LimitPose, format: LengthFormat): string {
  return pose.ok ? leastText(pose.margins, format) : `out of reach of the ${pose.side} ${pose.joint}`;
}

/** Where a limit is told of: `passed from 2 in bump, straight ahead on`. */
export function placeText({ kind, told }: LimitPlace, setup: Setup, format: LengthFormat): string {
  const where = `${heightText(told.travel, setup, format)}, ${lockText(told.steer)}`;
  switch (kind) {
    case "from":
      return `passed from ${where} on`;
    case "most":
      return `passed most at ${where}`;
    case "least":
      return `least at ${where}`;
  }
}

/** What is known of all limits over the range, in a sentence; "" where some are passed: each says so itself. */
export function limitsStateSentence(state: LimitsState): string {
  switch (state) {
    case "passed":
      return "";
    case "kept":
      return "Every limit given is kept over all travel and both locks.";
    case "open":
      return "Not finished: no limit was found passed so far.";
  }
}

/** What is met first on the four ways from a stance; ways on which nothing is met are not told. @param travel mm */
export function firstMetText(first: BindsFirst, travel: number, format: LengthFormat): string {
  const ways = [
    ["going lower", first.bump, "travel"],
    ["going higher", first.droop, "travel"],
    ["steering left", first.left, "steer"],
    ["steering right", first.right, "steer"],
  ] as const;
  const met = ways.filter(([, border]) => border.stop !== "end");
  if (met.length === 0) return "From here no limit is met up to the ends of travel and both locks.";
  const told = met.map(([way, border, along]) => {
    const from = along === "travel" ? travel : 0;
    return `${way}, ${borderText(border, along, from, format)}`;
  });
  return `Met first from here: ${told.join("; ")}.`;
}
