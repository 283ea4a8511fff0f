import type { AlsoMoves } from "../change/changeTypes.ts";
import type { TooNear } from "../window/windowTypes.ts";

/** Numbers of a truck standing at a height, wheels straight ahead, that a field can be solved for; of the left wheel. */
export const POSE_TARGETS = [
  "camber",
  "caster",
  "kingpinInclination",
  "scrubRadius",
  "mechanicalTrail",
  "halfTrack",
] as const;

export type PoseTarget = (typeof POSE_TARGETS)[number];

/** What is wanted: a number at a pose, the worst gap of all, or as little bump steer as there is. mm or radians. */
export type SolveTarget =
  | {
      readonly of: PoseTarget;
      readonly value: number;
      /** The wheel travel it is wanted at, mm, + = bump. Default 0: as measured. */
      readonly at?: number;
    }
  | { readonly of: "gap"; readonly value: number }
  | { readonly of: "bumpSteer" };

/** All of them by name, those with a number wanted first. */
export const SOLVE_TARGETS = [...POSE_TARGETS, "gap", "bumpSteer"] as const;

/** The wheel travel a target is wanted at, mm; what is over all travel is told as measured. */
export function targetTravel(target: SolveTarget): number {
  return ("at" in target ? target.at : undefined) ?? 0;
}

/** What a target is told in. */
export function targetMeasure({ of }: { readonly of: SolveTarget["of"] }): "length" | "angle" {
  return of === "camber" || of === "caster" || of === "kingpinInclination" || of === "bumpSteer"
    ? "angle"
    : "length";
}

/** A value of the field that gives what is wanted; mm or radians. */
export interface Solved {
  readonly value: number;
  /** What is then there: the number wanted, the worst gap, or the toe change farthest from 0. */
  readonly reached: number;
  /** Of a gap: how a check proves it. */
  readonly bracket?: GapBracket;
  /** What the value moves besides; only where it was asked for. */
  readonly also?: AlsoSolved;
}

/** A number that a value moves besides the one wanted, of the left wheel at the height wanted or the worst gap of all; mm or radians. */
export interface AlsoOf {
  readonly what: "camber" | "mechanicalTrail" | "gap";
  readonly from: number;
  readonly to: number;
  /** It is plausibly no truck's. */
  readonly isUnusual: boolean;
}

/** All that a value moves besides what is wanted: numbers, and what a change moves. */
export interface AlsoSolved {
  readonly numbers: readonly AlsoOf[];
  readonly moves: readonly AlsoMoves[];
}

/**
 * At the value nothing is nearer than the gap wanted, and `beyond` something is. `bound`: what a check proves no pose is below at the
 * value. mm or radians.
 */
export interface GapBracket {
  readonly bound: number;
  readonly beyond: number;
  readonly by: TooNear;
}

/** Which values of one field give what is wanted, all else as it is. */
export interface SolveReport {
  /** The field's key. */
  readonly field: string;
  readonly kind: "length" | "angle";
  readonly now: number;
  readonly from: number;
  readonly to: number;
  readonly target: SolveTarget;
  /** What is there now; null = nothing is measured. */
  readonly reachedNow: number | null;
  /** In rising order. */
  readonly found: readonly Solved[];
  /** Where none was found: the value looked at that comes nearest. */
  readonly nearest: Solved | null;
  /** The range asked for, where it was looked on past it, since what comes nearest stood at its end. */
  readonly asked?: { readonly from: number; readonly to: number };
  /** The field does not change what is wanted. */
  readonly isUnmoved: boolean;
  /** What is known of the other values: a gap is proven over stretches, or all was looked at every `step`. */
  readonly between: { readonly rank: "proven" } | { readonly rank: "sampled"; readonly step: number };
  readonly cutShort?: true;
}
