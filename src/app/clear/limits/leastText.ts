import { KEPT } from "../../../studies/limits/frontEndLimit.ts";
import type { LimitMargin } from "../../../studies/limits/limitsOf.ts";
import { marginWords } from "../../../studies/wording/limitSentences.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { keepTogether } from "../../words/keepTogether.ts";

/** Margins of both sides this near each other are one number: mm, or radians. */
export const ALIKE = 1e-3;

/** Whether a margin is kept, and by how much: `kept by 1/4 in`, `just met`, `passed by 1.2°`. */
export function marginText(
  { margin, measure }: Pick<LimitMargin, "margin" | "measure">,
  format: LengthFormat,
): string {
  if (Math.abs(margin) <= KEPT) return "just met";
  const word = margin < 0 ? "passed by" : "kept by";
  return `${word} ${keepTogether(marginWords(margin, measure, format))}`;
}

/** The limit with the least in hand: `lower ball joint, kept by 2.1°`, with its side where the other one differs. */
export function leastText(margins: readonly LimitMargin[], format: LengthFormat): string {
  const [least] = margins;
  if (least === undefined) return "no limit given";
  const isAlike = margins.some(
    (other) => other !== least && other.name === least.name && Math.abs(other.margin - least.margin) < ALIKE,
  );
  return `${isAlike ? "" : `${least.side} `}${least.name}, ${marginText(least, format)}`;
}
