import type { Side } from "../../suspension/frontEnd.ts";
import type { Verdict } from "../reports/check.ts";

/** One field written otherwise; mm or radians. */
export interface SetField {
  readonly key: string;
  readonly kind: "length" | "angle";
  readonly from: number;
  readonly to: number;
}

/** What a change moves besides, or breaks. mm and radians. */
export type AlsoMoves =
  | {
      readonly what: "scrubRadius" | "halfTrack" | "bumpSteer";
      readonly from: number;
      readonly to: number;
    }
  /** A limit that some pose passes now, and passed none before. */
  | { readonly what: "limit"; readonly name: string; readonly side: Side }
  /** The tire stands farther out, or a panel covers less: rules on that may hold where the truck is driven. */
  | { readonly what: "fenderCover" };

/** A change with which the truck clears: proven by a check. */
export interface FoundChange {
  /** One field, or two where no single one does; none where a part is trimmed. */
  readonly set: readonly SetField[];
  /** A body part cut back by a depth, mm; null = none is. */
  readonly trim: { readonly part: string; readonly depth: number } | null;
  /** The worst gap then, and what none is below; mm. */
  readonly gap: number | null;
  readonly bound: number | null;
  readonly alsoMoves: readonly AlsoMoves[];
}

/** What would make a truck clear, least effort first. */
export interface ChangeReport {
  readonly verdict: Verdict;
  readonly changes: readonly FoundChange[];
  /** Fields tried of which no single change does it. */
  readonly without: readonly string[];
  readonly cutShort?: true;
}
