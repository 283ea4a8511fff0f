import type { Side } from "../../suspension/frontEnd.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { lengthText } from "./lengths.ts";

/** What a region of a panel is told by. */
export interface TrimFacts {
  readonly part: string;
  readonly side: Side;
  readonly kind: "lip" | "face";
  readonly depth: number;
  readonly off: number;
  readonly goesBeyond: boolean;
  readonly isCutOff: boolean;
}

/** mm. A path farther off the sheet than this is told of. */
const OFF = 1;

/** Stands on every template that metal is cut by. */
export const TRIM_CAUTION =
  "Only sheet metal that carries nothing is cut by this: never a frame, a pillar or a brace. Look behind it first. Laws on fender cover apply.";

export function trimTitle({ part, side }: Pick<TrimFacts, "part" | "side">): string {
  return `Trim template: ${part}, ${side} side`;
}

/** Lines of a template's foot. @param isMirrored the other side is cut by it turned over */
export function trimNotes(
  facts: TrimFacts,
  allowance: number,
  isMirrored: boolean,
  format: LengthFormat,
): string[] {
  const { kind, depth, off, goesBeyond, isCutOff } = facts;
  return [
    `Solid: cut here; what tire and rim, with ${lengthText(allowance, format)} about them, take at every pose that counts, and 0.5 mm more.`,
    kind === "lip"
      ? `Dashed: the lip's line as measured. ${lengthText(depth, format)} in from it at most; roll the cut edge as it was.`
      : `Dashed: the edges of this face of the box. The cut goes ${lengthText(depth, format)} under it at most.`,
    kind === "lip"
      ? `Seen from outside the truck. The panel is taken to stand as a sheet through the lip${off > OFF ? `, which leaves it by ${lengthText(off, format)}` : ""}: it is not measured itself.`
      : "Seen from outside the box.",
    ...(isMirrored ? ["The other side: turn it over."] : []),
    ...(goesBeyond ? ["It goes on past the ends of the lip: measure farther before cutting there."] : []),
    ...(isCutOff ? ["It goes on past what is drawn."] : []),
    TRIM_CAUTION,
  ];
}

/** At the line where the axle is. */
export const AXLE_LINE = "axle line";

/** What the files together are called. */
export function trimFilesTitle(heading: string): string {
  return `Trim templates: ${heading}`;
}

/** Why there is nothing to cut a part by. */
export const NO_TEMPLATE = {
  mesh: "is a scan, which no flat template fits; give its edge as a path of points",
  nothing: "keeps the allowance as it is: there is nothing to trim",
  unknown: "is no body part of this truck",
  notFound: "could not be worked out in the time allowed; give more seconds with --budget",
} as const;

/** What is asked for where no part is named. */
export const NO_TRIM_PART = "there is no body part that is nearer than the allowance; name one with --part";
