import type { Setup } from "../../setup/types/types.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { modelAsked } from "../alignment/modelAsked.ts";
import { gapsAt, isSamePart } from "../reports/gapsAt.ts";
import type { CheckEntry } from "../reports/pairSearch.ts";
import { changedKnuckle } from "./changedKnuckle.ts";
import { type FittedKnuckle, UNKNOWNS } from "./fitKnuckle.ts";
import { propagated, stepOf } from "./propagated.ts";
import type { WheelWithin } from "./wheelWithin.ts";

/** How well the readings tell what both knuckles make of the truck: one standard deviation, mm; null = they do not. */
export interface TruckWithin {
  /** Of the track. null where a side was not read, or not enough of it. */
  readonly track: number | null;
  /** Of the worst gap as built. null where its side was not read, or not enough of it. */
  readonly worstGap: number | null;
}

/** Both half tracks are read for themselves, so their variances add. */
export function trackWithin({ left, right }: Readonly<Record<Side, WheelWithin | null>>): number | null {
  if (left?.halfTrack == null || right?.halfTrack == null) return null;
  return Math.hypot(left.halfTrack, right.halfTrack);
}

/** A truck on the knuckle of one side, as `modelAsked` is asked for it. */
export interface KnuckleOnTruck {
  /** Its `knuckle` is the one as built. */
  readonly setup: Setup;
  readonly file: string;
  readonly isAligned: boolean;
}

/**
 * Standard deviation of a worst gap. To first order the least over all poses changes as the gap at the worst pose does (Danskin's
 * theorem, from memory): so the slopes are taken there, at its travel and steering input. Of that part alone: where another is
 * nearly as near, the worst of both is spread less evenly.
 */
export function gapWithin(
  { setup, file, isAligned }: KnuckleOnTruck,
  fit: FittedKnuckle,
  worst: CheckEntry,
): number | null {
  const gapWith = (at: number, by: number): number => {
    const knuckle = changedKnuckle(setup.knuckle, UNKNOWNS[at]!, by);
    const made = modelAsked({ setup: { ...setup, knuckle }, file, isAligned });
    const pose = made.ok ? solvePose(made.value.frontEnd, worst.travel, worst.steer) : null;
    if (!made.ok || !pose?.ok) return Number.NaN;
    const pairs = made.value.pairs.filter(({ name, side }) => isSamePart({ part: name, side }, worst));
    return gapsAt({ ...made.value, pairs }, pose)[0]?.gap ?? Number.NaN;
  };
  const slopes = UNKNOWNS.map((unknown, i) => {
    if (unknown === "toe") return 0;
    const step = stepOf(unknown);
    return (gapWith(i, step) - gapWith(i, -step)) / (2 * step);
  });
  return propagated(fit, slopes);
}
