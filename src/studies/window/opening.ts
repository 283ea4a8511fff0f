import { valueAt } from "../../setup/types/keyPath.ts";
import { evenly } from "../numeric/evenly.ts";
import { type FieldSearch, tooNear } from "./fieldSearch.ts";
import type { TogetherStretch } from "./together.ts";
import { DEFAULT_REACH, WINDOW_TOLERANCE, type WindowField, windowField } from "./windowField.ts";
import type { ClosedBy, FieldWindow, Opening } from "./windowTypes.ts";

/** Values of the field looked at for the one that fits best. */
const SAMPLES = 9;

/** mm. A gap that differs by less over the whole range is not moved by the field. */
const UNMOVED = 1e-6;

/** Values of the field at which changes are tried. */
const MOST_PLACES = 8;

/** Shares of the greatest change tried first, each twice the one before. */
const DOUBLINGS = 8;

/** Microseconds, about, of a look at one truck. */
const LOOK_WORK = 20_000;

/** A field that may be changed instead, and which way it helps. */
interface Candidate {
  readonly field: WindowField;
  readonly ways: readonly (1 | -1)[];
}

/** A truck that clears with one more field changed. */
interface Found {
  readonly candidate: Candidate;
  readonly value: number;
  readonly at: number;
  /** mm by which the tread or the wheel moves. */
  readonly effort: number;
}

/**
 * What closes an empty window, and the smallest single change found that opens it: of offset, tire width, steering stop, bump stop,
 * travel and allowance, tried at the values where the field comes nearest to fitting. An angle counts as the way it moves the tread.
 * What is found is proven by a check; that nothing smaller does is not.
 */
export function closingOf(
  search: FieldSearch,
  pairs: readonly number[],
  stretches: readonly TogetherStretch[],
  tolerance: number,
): Pick<FieldWindow, "closedBy" | "opens"> {
  const inside = (value: number) => stretches.some(({ low, high }) => value >= low && value <= high);
  const range = [stretches[0]!.low, stretches.at(-1)!.high] as const;
  // What stands there now first: a budget may leave it at that.
  const values = [search.field.now, ...evenly(range[0], range[1], SAMPLES)].filter(inside);
  const looks: {
    readonly value: number;
    readonly short: readonly number[];
    readonly gaps: readonly number[];
  }[] = [];
  const entries = new Map<number, ReturnType<FieldSearch["gapsAt"]>>();
  for (const value of values) {
    if (search.budget.isSpent(LOOK_WORK)) break;
    const found = search.gapsAt(value, pairs);
    entries.set(value, found);
    const { allowance } = search.modelAt(value).setup;
    const gaps = found.map((entry) => entry?.gap ?? Number.POSITIVE_INFINITY);
    looks.push({ value, gaps, short: gaps.map((gap) => gap - allowance) });
  }
  if (looks.length === 0) return { closedBy: [], opens: null };
  looks.sort((a, b) => a.value - b.value);
  const isWhole = looks.length === values.length;
  const worstOf = ({ short }: (typeof looks)[number]) => Math.min(...short);
  const best = looks.reduce((a, b) => (worstOf(b) > worstOf(a) ? b : a));
  const closers = [...pairs.keys()]
    .filter((i) => looks.some(({ short }) => short[i]! < 0))
    .sort((a, b) => best.short[a]! - best.short[b]!);
  const closedBy: ClosedBy[] = closers.flatMap((i) => {
    const gaps = looks.map(({ gaps: all }) => all[i]!);
    const isUnmoved = isWhole && Math.max(...gaps) - Math.min(...gaps) < UNMOVED;
    const entry = entries.get(best.value)![i];
    return entry && (best.short[i]! < 0 || isUnmoved) ? [{ by: tooNear(entry), isUnmoved }] : [];
  });
  const limit = search.closerAt(best.value, []);
  if (limit?.kind === "limit") closedBy.unshift({ by: limit, isUnmoved: false });
  // Where each closer alone would just let go: a change may mend the others there.
  const crossings = closers.flatMap((i) =>
    looks.slice(1).flatMap((b, j) => {
      const a = looks[j]!;
      const [from, to] = [a.short[i]!, b.short[i]!];
      return from < 0 === to < 0 ? [] : [a.value + ((b.value - a.value) * from) / (from - to)];
    }),
  );
  const places = [
    best.value,
    search.field.now,
    ...crossings.flatMap((x) => [x - tolerance, x, x + tolerance]),
    ...range,
  ];
  const order = [...closers, ...pairs.keys()].map((i) => pairs[i]!);
  const opens = smallestChange(
    search,
    [...new Set(order)],
    [...new Set(places.filter(inside))].slice(0, MOST_PLACES),
  );
  return { closedBy, opens };
}

function smallestChange(
  search: FieldSearch,
  pairs: readonly number[],
  places: readonly number[],
): Opening | null {
  let best: Found | null = null;
  for (const candidate of candidatesOf(search))
    for (const way of candidate.ways)
      for (const at of places) best = tried(search, pairs, candidate, way, at, best) ?? best;
  if (best === null) return null;
  const { field } = best.candidate;
  return { field: field.key, kind: field.kind, from: field.now, to: best.value, at: best.at };
}

/** A change of one field one way that is smaller than the best so far; null where there is none. */
function tried(
  search: FieldSearch,
  pairs: readonly number[],
  candidate: Candidate,
  way: 1 | -1,
  at: number,
  best: Found | null,
): Found | null {
  const { field } = candidate;
  const tread = field.kind === "angle" ? search.modelAt(search.field.now).tire.freeRadius : 1;
  const end = way > 0 ? field.most - field.now : field.now - field.least;
  const most = Math.min(DEFAULT_REACH[field.kind], end);
  const tolerance = WINDOW_TOLERANCE[field.kind];
  let order = pairs;
  const clears = (change: number): boolean => {
    if (search.budget.isSpent(LOOK_WORK)) return false;
    const by = search.with(field, field.now + way * change).closerAt(at, order);
    if (by?.kind === "part") order = search.withFirst(order, at, by);
    return by === null;
  };
  const limit = best === null ? most : Math.min(most, best.effort / tread - tolerance);
  const first = best === null ? most / 2 ** DOUBLINGS : limit;
  if (!(first > tolerance)) return null;
  const step = smallestStep(clears, first, limit, tolerance, () => search.budget.isSpent(0));
  if (step === null) return null;
  return { candidate, value: field.now + way * step, at, effort: step * tread };
}

/** What a builder may change instead, as far as the truck has it; never the window's own field. */
function candidatesOf(search: FieldSearch): Candidate[] {
  const { document, setup, file } = search.truck;
  const { limits, truck } = setup;
  const rack = truck.steering.type === "rack";
  const offset = valueAt(document, ["wheel", "offset"]) === undefined ? "wheel.backspacing" : "wheel.offset";
  const keys: readonly (readonly [key: string, ways: Candidate["ways"]])[] = [
    ["allowance", [-1]],
    [offset, [-1, 1]],
    ["tire.sectionWidth", [-1]],
    [
      limits?.steeringStop != null
        ? "limits.steeringStop.angle"
        : `truck.steering.${rack ? "stroke" : "swing"}`,
      [-1],
    ],
    [limits?.bumpStop != null ? "limits.bumpStop.travel" : "travel.bump", [-1]],
    ["travel.droop", [1]],
  ];
  return keys.flatMap(([key, ways]) => {
    if (key === search.field.key) return [];
    const found = windowField(document, setup, key, file);
    return found.ok ? [{ field: found.value, ways }] : [];
  });
}

/**
 * The smallest step found that does: doubled from the first until one does, then halved. What is found does; that nothing smaller
 * does is not proven where doing comes and goes.
 * @param first, most of the steps tried, more than 0 @returns null where none of them does
 */
export function smallestStep(
  does: (step: number) => boolean,
  first: number,
  most: number,
  tolerance: number,
  isSpent: () => boolean,
): number | null {
  let low = 0;
  let high = first;
  while (!does(high)) {
    if (high >= most || isSpent()) return null;
    [low, high] = [high, Math.min(2 * high, most)];
  }
  while (high - low > tolerance) {
    const middle = 0.5 * (low + high);
    if (does(middle)) high = middle;
    else low = middle;
  }
  return high;
}
