import type { LengthFormat } from "../../units/formatLength.ts";
import { backspacingFromOffset, RIM_FLANGE_WIDTH } from "../../units/wheelOffset.ts";
import type { Model } from "../model/model.ts";
import { amountWords, finestLength, lengthText } from "./lengths.ts";

/** One of the two trucks a counter compares. */
export interface WhyTruck {
  readonly letter: string;
  readonly model: Model;
}

/** How much farther in the second's wheel stands on the same hub face than the first's, mm; what reads as nothing is 0. */
export function fartherIn(first: WhyTruck, second: WhyTruck, format: LengthFormat): number {
  return readable(second.model.setup.wheel.offset - first.model.setup.wheel.offset, format);
}

/**
 * In what the wheel and tire of two trucks with one hub face differ, in a sentence that speaks of the second; "" = in nothing that
 * can be read.
 */
export function wheelSentence(first: WhyTruck, second: WhyTruck, format: LengthFormat): string {
  const clauses = [
    placeClause(first, second, format),
    rimClause(first, second, format),
    tireClause(first, second, format),
  ].filter((clause) => clause !== "");
  if (clauses.length === 0) return "";
  return `The hub face is the same on ${first.letter} and ${second.letter}, the wheel is not: ${clauses.join("; ")}.`;
}

function placeClause(first: WhyTruck, second: WhyTruck, format: LengthFormat): string {
  const inward = fartherIn(first, second, format);
  if (inward === 0) return "";
  const [a, b] = [first, second].map(({ model: { setup } }) =>
    lengthText(backspacingFromOffset(setup.wheel.offset, setup.wheel.rimWidth), format),
  );
  const against = a === b ? "on both" : `against ${a} on ${first.letter}`;
  const way =
    inward > 0
      ? "in, under the fender and toward arms, knuckle and frame"
      : "out, toward the fender lip and away from arms, knuckle and frame";
  return `${second.letter}'s wheel stands ${amountWords(inward, format)} farther ${way}: backspacing ${b} ${against}`;
}

/** A rim of another width, and where its edges come to stand by it. */
function rimClause(first: WhyTruck, second: WhyTruck, format: LengthFormat): string {
  const [a, b] = [first, second].map(({ model }) => model.setup.wheel) as [Wheel, Wheel];
  if (readable(b.rimWidth - a.rimWidth, format) === 0) return "";
  const edge = (name: string, outward: number) =>
    readable(outward, format) === 0
      ? []
      : [`its ${name} edge ${amountWords(outward, format)} farther ${outward > 0 ? "out" : "in"}`];
  const edges = [
    ...edge("inner", innerEdge(b) - innerEdge(a)),
    ...edge("outer", outerEdge(b) - outerEdge(a)),
  ].join(" and ");
  return `${second.letter}'s rim is ${lengthText(b.rimWidth, format)} wide against ${lengthText(a.rimWidth, format)}${edges === "" ? "" : `, with ${edges}`}`;
}

function tireClause(first: WhyTruck, second: WhyTruck, format: LengthFormat): string {
  const sizeOf = ({ model: { tire } }: WhyTruck) => [tire.sectionWidth, 2 * tire.freeRadius] as const;
  const [a, b] = [sizeOf(first), sizeOf(second)];
  if (a.every((mm, i) => readable(b[i]! - mm, format) === 0)) return "";
  const text = (mm: number) => lengthText(mm, format);
  return `${second.letter}'s tire is ${text(b[0])} wide and ${text(b[1])} tall against ${text(a[0])} and ${text(a[1])}`;
}

type Wheel = Model["setup"]["wheel"];

/** mm outboard of the mounting face. */
function innerEdge({ offset, rimWidth }: Wheel): number {
  return -backspacingFromOffset(offset, rimWidth);
}

function outerEdge({ offset, rimWidth }: Wheel): number {
  return rimWidth / 2 + RIM_FLANGE_WIDTH - offset;
}

function readable(mm: number, format: LengthFormat): number {
  return Math.abs(mm) < 0.5 * finestLength(format) ? 0 : mm;
}
