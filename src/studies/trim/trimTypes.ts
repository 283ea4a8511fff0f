import type { PathPart } from "../../setup/types/truckTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Outline } from "../section/outline.ts";

/** What tire and rim, with the allowance about them, take of one sheet of a body part over all poses that count. */
export interface TrimRegion {
  readonly part: string;
  readonly side: Side;
  readonly kind: "lip" | "face";
  /** Closed lines on the sheet laid flat, as seen from outside the truck; mm. */
  readonly outlines: readonly Outline[];
  /** The same in vehicle axes, x, y, z in turn. */
  readonly places: readonly Float64Array[];
  /** The edge as it is, on the sheet. */
  readonly edge: Outline;
  /** Where along u the axle line is met: what lies there is on it. Null where the edge does not cross it. */
  readonly axleAt: number | null;
  /** mm². */
  readonly area: number;
  /** mm. How far it goes in from the edge, at most; of a face how deep under it. */
  readonly depth: number;
  /** mm. The path leaves the sheet by this at most: 0 where the sheet runs through it. */
  readonly off: number;
  /** It goes on past the ends of the path, where nothing was measured. */
  readonly goesBeyond: boolean;
  /** It goes on past what was looked at. */
  readonly isCutOff: boolean;
}

/** The edge that is left of a path, and the part as it is then. */
export interface LeftPart {
  readonly part: PathPart;
  /** Its place among the body parts. */
  readonly index: number;
}

/** A body part, what is taken of it, and what is left. */
export interface Trim {
  readonly part: string;
  /** One a sheet and side, largest first; of sides that are mirror images the left one. */
  readonly regions: readonly TrimRegion[];
  /** Null where what is left is no one path: of a box, or cut otherwise on each side. */
  readonly left: LeftPart | null;
}
