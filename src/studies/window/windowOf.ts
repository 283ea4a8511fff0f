import { requirePositive } from "../../geometry/requireFinite.ts";
import type { Result } from "../../setup/types/types.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { evenly } from "../numeric/evenly.ts";
import { ownPairs } from "../reports/check.ts";
import { gapsAt } from "../reports/gapsAt.ts";
import { fieldEffect } from "./fieldEffect.ts";
import { FieldSearch } from "./fieldSearch.ts";
import { fitsOf, type RangeEnds } from "./fits.ts";
import { closingOf } from "./opening.ts";
import { type Piece, provenPieces, sampledPieces } from "./pieces.ts";
import { type TogetherStretch, togetherOver } from "./together.ts";
import type { TruckToVary } from "./truckOverField.ts";
import { DEFAULT_REACH, WINDOW_TOLERANCE, type WindowField, windowField } from "./windowField.ts";
import type { FieldWindow } from "./windowTypes.ts";

export interface WindowOptions {
  /** The range to look at, mm or radians; default `DEFAULT_REACH` either way, as far as the file may say it. */
  readonly from?: number;
  readonly to?: number;
  /** mm or radians; default `WINDOW_TOLERANCE`. */
  readonly tolerance?: number;
  readonly budget?: Budget;
  /** Whether an empty window is told what closes and what opens it, which takes as long again. Default true. */
  readonly isOpened?: boolean;
}

const NOT_OPENED = { closedBy: [], opens: null } as const;

/** Values looked at where nothing is proven between them. */
const SAMPLES = 25;

/** Share of the range left off an end that the file may not say itself. */
const INSIDE = 1e-6;

/**
 * Which values of a field fit: at each of them the worst gap of every part over the poses that count is at least the allowance,
 * as a check tells it. mm and radians.
 * @param key such as `knuckle.hubFace`
 * @returns issues where there is no such field, or the range is none
 * @throws RangeError for a tolerance that is not finite and more than 0
 */
export function windowOf(truck: TruckToVary, key: string, options: WindowOptions = {}): Result<FieldWindow> {
  const found = windowField(truck.document, truck.setup, key, truck.file);
  if (!found.ok) return found;
  return { ok: true, value: windowOfField(truck, found.value, options) };
}

/** The same of a field that was looked up. */
export function windowOfField(
  truck: TruckToVary,
  field: WindowField,
  options: WindowOptions = {},
): FieldWindow {
  const tolerance = options.tolerance ?? WINDOW_TOLERANCE[field.kind];
  requirePositive("windowOf", tolerance);
  const budget = options.budget ?? Budget.endless();
  const range = rangeOf(field, options);
  const search = new FieldSearch(truck, field, fieldEffect(field.path), budget);
  const stretches = togetherOver(search, range.from, range.to, tolerance);
  const together = stretches.filter(({ by }) => by === null);
  const told = { field: field.key, kind: field.kind, now: field.now, ...range, tolerance };
  const cut = () => (budget.cut ? { cutShort: true as const } : {});
  if (together.length === 0) {
    const closedBy = stretches.flatMap(({ by }) => (by === null ? [] : [{ by, isUnmoved: false }]));
    return {
      ...told,
      between: { rank: "proven" },
      fits: [],
      closedBy,
      opens: null,
      ...cut(),
    };
  }
  const anchor = anchorIn(together, field.now);
  const pairs = nearestFirst(search.modelAt(anchor));
  const isProven = together.every(({ low, high }) => search.canProve(low, high, clamped(anchor, low, high)));
  const step = (range.to - range.from) / (SAMPLES - 1);
  const pieces = stretches.flatMap(({ low, high, by }): readonly Piece[] => {
    if (by !== null) return [{ low, high, state: "misses", by, pairs: [] }];
    const points = (inner: readonly number[]) => withPoint(inner, field.now);
    if (isProven) return provenPieces(search, pairs, points([low, high]), tolerance);
    return sampledPieces(search, pairs, points([...evenly(low, high, 1 + Math.ceil((high - low) / step))]));
  });
  const fits = fitsOf(search, pieces, tolerance, rangeEnds(field, range));
  const isOpened = fits.length === 0 && (options.isOpened ?? true);
  const opened = isOpened ? closingOf(search, pairs, together, tolerance) : NOT_OPENED;
  const between = isProven ? { rank: "proven" as const } : { rank: "sampled" as const, step };
  return { ...told, between, fits, ...opened, ...cut() };
}

/** Where to begin: now, or the nearest value to it that is looked at. */
function anchorIn(stretches: readonly TogetherStretch[], now: number): number {
  const values = stretches.map(({ low, high }) => clamped(now, low, high));
  return values.reduce((best, value) => (Math.abs(value - now) < Math.abs(best - now) ? value : best));
}

function withPoint(points: readonly number[], point: number): readonly number[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  if (!(point > first && point < last) || points.includes(point)) return points;
  return [...points, point].sort((a, b) => a - b);
}

function clamped(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}

/** The range asked for, within what the file may say. */
export function rangeOf(
  { kind, now, least, most }: WindowField,
  { from, to }: Pick<WindowOptions, "from" | "to">,
): { readonly from: number; readonly to: number } {
  const reach = DEFAULT_REACH[kind];
  const slack = INSIDE * reach;
  return {
    from: from ?? Math.max(now - reach, least + slack),
    to: to ?? Math.min(now + reach, most - slack),
  };
}

/** What ends a range: that nothing past it was looked at, or that a setup may hold nothing past it. */
function rangeEnds(
  { kind, key, least, most }: WindowField,
  { from, to }: ReturnType<typeof rangeOf>,
): RangeEnds {
  const slack = 2 * INSIDE * DEFAULT_REACH[kind];
  // A tire as narrow as the rim is where the search ends, not what a setup may hold.
  const isLeast = from - least <= slack && key !== "tire.sectionWidth";
  return {
    from: { kind: isLeast ? "setup" : "range" },
    to: { kind: most - to <= slack ? "setup" : "range" },
  };
}

/**
 * Places in a model's list of the pairs whose gaps are asked for, a mirrored truck's right side left out: what rides together first,
 * since its search costs nothing; then by how near it comes at a few poses.
 */
function nearestFirst(model: Model): readonly number[] {
  const { droop, bump } = model.setup.travel;
  const least = model.pairs.map(() => Number.POSITIVE_INFINITY);
  for (const travel of [droop, 0, bump])
    for (const steer of [-1, 0, 1]) {
      const pose = solvePose(model.frontEnd, travel, steer);
      if (!pose.ok) continue;
      for (const [i, { gap }] of gapsAt(model, pose).entries()) least[i] = Math.min(least[i]!, gap);
    }
  const rides = (at: number) => (model.pairs[at]!.kind === "together" ? 0 : 1);
  return ownPairs(model)
    .map((pair) => model.pairs.indexOf(pair))
    .sort((a, b) => rides(a) - rides(b) || least[a]! - least[b]!);
}
