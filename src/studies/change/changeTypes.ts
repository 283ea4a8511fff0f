import type { Side } from "../../suspension/frontEnd.ts";
import type { Verdict } from "../reports/check.ts";
import type { LeftPart, TrimRegion } from "../trim/trimTypes.ts";

/** One field written otherwise; mm or radians. */
export interface SetField {
  readonly key: string;
  readonly kind: "length" | "angle";
  readonly from: number;
  readonly to: number;
  /** Of a steering stop that no wheel is steered to: how far one is, rad. */
  readonly reached?: number;
}

/** What a change moves besides, or breaks. mm and radians. */
export type AlsoMoves =
  | {
      /** `rideHeight`: of the body over the tire's patch at the measured height of the arms. */
      readonly what: "rideHeight" | "scrubRadius" | "halfTrack" | "bumpSteer";
      readonly from: number;
      readonly to: number;
    }
  /** Of the pin over the order's base knuckle; `ordered` may differ from `from`: the truck is then not as ordered yet. */
  | { readonly what: "drop"; readonly from: number; readonly to: number; readonly ordered: number }
  /** A limit that some pose passes now, and passed none before. */
  | { readonly what: "limit"; readonly name: string; readonly side: Side }
  /** The tire stands farther out, or a panel covers less: rules on that may hold where the truck is driven. */
  | { readonly what: "fenderCover" };

/** How far a body part is cut back, mm; the regions that go; and what is left where that is a path. */
export interface TrimmedPart {
  readonly part: string;
  readonly depth: number;
  readonly regions: readonly TrimRegion[];
  readonly left: LeftPart | null;
}

/** A change with which the truck clears: proven by a check. */
export interface FoundChange {
  /** One field, or two where no single one does, or only a new knuckle; none where a part is trimmed. */
  readonly set: readonly SetField[];
  /** A body part that is cut back; null = none is. */
  readonly trim: TrimmedPart | null;
  /** The worst gap then, and what none is below; mm. */
  readonly gap: number | null;
  readonly bound: number | null;
  /** What is known of smaller changes of the same fields. */
  readonly smaller: Smaller;
  readonly alsoMoves: readonly AlsoMoves[];
}

/**
 * That no smaller change does: proven all the way from now, up to `within` of the change; of a pair, that no other one in which
 * neither change is larger does, up to `within` of each; or looked at every `step`; or that a step
 * less does not, of either field while the other stays, of a trim where the edge left stands nearer by that; or looked at only where
 * the search for it came by. mm or radians.
 */
export type Smaller =
  | { readonly rank: "proven"; readonly within: number }
  | { readonly rank: "proven pair"; readonly within: readonly number[] }
  | { readonly rank: "sampled"; readonly step: number }
  | { readonly rank: "stepped"; readonly steps: readonly number[] }
  | { readonly rank: "searched" };

/** The values of a field that were tried; `step`: every so much and not between, mm or radians, null = none was passed over. */
export interface TriedField {
  readonly key: string;
  readonly kind: "length" | "angle";
  readonly from: number;
  readonly to: number;
  readonly step: number | null;
}

/** What would make a truck clear, least effort first. */
export interface ChangeReport {
  readonly verdict: Verdict;
  readonly changes: readonly FoundChange[];
  /** Fields tried of which no single change does it. */
  readonly without: readonly TriedField[];
  /** Of the fields tried only the knuckle's do it alone, so pairs of the others, two at least, were tried too. */
  readonly isPaired?: true;
  readonly cutShort?: true;
}
