import type { Side } from "../../suspension/frontEnd.ts";

/** A part that is nearer than the allowance, with the pose. mm. */
export interface TooNear {
  readonly kind: "part";
  readonly part: string;
  readonly side: Side;
  readonly travel: number;
  readonly steer: number;
  readonly gap: number;
  /** The same at every pose. */
  readonly together?: true;
}

/** What keeps a value from fitting. */
export type Closer =
  | TooNear
  /** A limit that every pose passes, or a rule by which the truck does not go together. */
  | { readonly kind: "limit"; readonly name: string };

/**
 * What sets an end: what is in the way beyond it; the budget that let nothing be proven beyond; the asked range; that a setup may hold
 * nothing beyond.
 */
export type SetBy = Closer | Unfinished | RangeEnd;

/** An end of the range looked at. */
export interface RangeEnd {
  readonly kind: "range" | "setup";
}

/** The budget was spent before it was known. */
export interface Unfinished {
  readonly kind: "unfinished";
}

/** Values that fit, mm or radians: at both ends everything keeps its allowance, and at every value between (see `between`). */
export interface Fit {
  readonly from: number;
  readonly to: number;
  readonly fromSetBy: SetBy;
  readonly toSetBy: SetBy;
}

/** The smallest single change found that makes some value fit; mm or radians. */
export interface Opening {
  readonly field: string;
  readonly kind: "length" | "angle";
  /** What it is now. */
  readonly from: number;
  readonly to: number;
  /** A value of the window's field that then fits. */
  readonly at: number;
}

/** Something that closes an empty window at its best value. */
export interface ClosedBy {
  readonly by: Closer;
  /** The field does not change this gap: it closes every value. */
  readonly isUnmoved: boolean;
}

/** Which values of one field fit, all else as it is. mm and radians. */
export interface FieldWindow {
  /** The field's key. */
  readonly field: string;
  readonly kind: "length" | "angle";
  readonly now: number;
  /** The range looked at. */
  readonly from: number;
  readonly to: number;
  /** How far beyond an end something is too near. */
  readonly tolerance: number;
  /** What is known of the values between, those that fit and those that do not: proven, or looked at every `step`. */
  readonly between: { readonly rank: "proven" } | { readonly rank: "sampled"; readonly step: number };
  /** In rising order. */
  readonly fits: readonly Fit[];
  /** Only of an empty window. */
  readonly closedBy: readonly ClosedBy[];
  readonly opens: Opening | null;
  readonly cutShort?: true;
}
