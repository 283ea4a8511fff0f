import type { Setup } from "../../setup/types/types.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { modelAsked } from "../alignment/modelAsked.ts";
import type { CheckReport } from "../reports/check.ts";
import { gapsAt, isSamePart, type PartOnSide } from "../reports/gapsAt.ts";
import type { CheckEntry } from "../reports/pairSearch.ts";
import { type FittedKnuckle, UNKNOWNS } from "./fitKnuckle.ts";
import { leastOf } from "./leastOf.ts";
import { changedKnuckle, covarianceOf, propagated, stepOf } from "./propagated.ts";
import type { WheelWithin } from "./wheelWithin.ts";

/** How well the readings tell what both knuckles make of the truck: one standard deviation, mm; null = they do not. */
export interface TruckWithin {
  /** Of the track. null where a side was not read, or not enough of it. */
  readonly track: number | null;
  /** Of the worst gap as built. null where its side was not read, or not enough of it. */
  readonly worstGap: GapWithin | null;
}

/** How well the readings tell the worst gap. */
export interface GapWithin {
  /** One standard deviation of the nearest of all parts, mm. */
  readonly sigma: number;
  /**
   * In a share of what the readings leave possible another part than the nearest as built comes nearest, most often this one;
   * null = none does.
   */
  readonly other: (PartOnSide & { readonly share: number }) | null;
}

/** Both half tracks are read for themselves, so their variances add. */
export function trackWithin({ left, right }: Readonly<Record<Side, WheelWithin | null>>): number | null {
  if (left?.halfTrack == null || right?.halfTrack == null) return null;
  return Math.hypot(left.halfTrack, right.halfTrack);
}

/** A knuckle that was read, on a truck as `modelAsked` is asked for it. */
export interface KnuckleOnTruck {
  /** Its `knuckle` is the one as built. */
  readonly setup: Setup;
  readonly file: string;
  readonly isAligned: boolean;
  readonly fit: FittedKnuckle;
}

/** Standard deviations to either side that are looked at. */
const LOOKED = 4;

/** A part that may come nearest, with what its gap does. */
interface NearPart {
  readonly entry: CheckEntry;
  readonly fit: FittedKnuckle;
  readonly slopes: readonly number[];
  readonly sigma: number;
}

/**
 * Standard deviation of the worst gap of all parts on the sides that were read. To first order the least gap of a part over all
 * poses changes as the gap at its worst pose does (Danskin's theorem, from memory): so slopes are taken there, of every part. Where
 * others may come nearest too, it is the spread of the nearest of all, by draws of all their gaps together.
 * @returns null where the worst part's side was not read, or not enough of it
 */
export function gapWithin(
  sides: Readonly<Record<Side, KnuckleOnTruck | null>>,
  { worst, parts }: Pick<CheckReport, "worst" | "parts">,
): GapWithin | null {
  const told = (["left", "right"] as const).flatMap((side) => {
    const on = sides[side];
    return on === null
      ? []
      : nearParts(
          on,
          parts.filter((entry) => entry.side === side),
        );
  });
  const first = told.find(({ entry }) => isSamePart(entry, worst));
  if (first === undefined) return null;
  const reach = first.entry.gap + LOOKED * first.sigma;
  const near = told.filter((one) => one !== first && one.entry.gap - LOOKED * one.sigma < reach);
  if (near.length === 0) return { sigma: first.sigma, other: null };
  const all = [first, ...near];
  const { sigma, shares } = leastOf(
    all.map(({ entry }) => entry.gap),
    all.map((a) => all.map((b) => togetherOf(a, b))),
  );
  const at = shares.indexOf(Math.max(...shares.slice(1)), 1);
  if (!(shares[at]! > 0)) return { sigma, other: null };
  const { part, side } = all[at]!.entry;
  return { sigma, other: { part, side, share: 1 - shares[0]! } };
}

/** Covariance of two gaps; knuckles are read apart. */
function togetherOf(a: NearPart, b: NearPart): number {
  if (a.fit !== b.fit || a.entry.side !== b.entry.side) return 0;
  return covarianceOf(a.fit, a.slopes, b.slopes);
}

/** The parts of one side whose gap the readings tell. */
function nearParts(
  { setup, file, isAligned, fit }: KnuckleOnTruck,
  entries: readonly CheckEntry[],
): NearPart[] {
  const gapsWith = (at: number, by: number): readonly number[] => {
    const knuckle = changedKnuckle(setup.knuckle, UNKNOWNS[at]!, by);
    const made = modelAsked({ setup: { ...setup, knuckle }, file, isAligned });
    return entries.map((entry) => {
      const pose = made.ok ? solvePose(made.value.frontEnd, entry.travel, entry.steer) : null;
      if (!made.ok || !pose?.ok) return Number.NaN;
      const pairs = made.value.pairs.filter(({ name, side }) => isSamePart({ part: name, side }, entry));
      return gapsAt({ ...made.value, pairs }, pose)[0]?.gap ?? Number.NaN;
    });
  };
  const columns = UNKNOWNS.map((unknown, i) => {
    if (unknown === "toe") return entries.map(() => 0);
    const step = stepOf(unknown);
    const [more, less] = [gapsWith(i, step), gapsWith(i, -step)];
    return entries.map((_, at) => (more[at]! - less[at]!) / (2 * step));
  });
  return entries.flatMap((entry, at) => {
    const slopes = columns.map((column) => column[at]!);
    const sigma = propagated(fit, slopes);
    return sigma === null ? [] : [{ entry, fit, slopes, sigma }];
  });
}
