import type { FieldSearch } from "./fieldSearch.ts";
import type { Piece } from "./pieces.ts";
import type { Fit, RangeEnd, SetBy } from "./windowTypes.ts";

/** What ends the range looked at, below and above. */
export interface RangeEnds {
  readonly from: RangeEnd;
  readonly to: RangeEnd;
}

/** What is known at one value. */
interface Look {
  readonly value: number;
  /** null = it fits. */
  readonly by: SetBy | null;
}

/** Microseconds, about, of a look at a value. */
const LOOK_WORK = 20_000;

/**
 * The values that fit, out of pieces that cover the range in rising order. What pieces leave open is looked at value by value:
 * an end lies between a value that fits and one that does not, no farther apart than the tolerance.
 * @param ends of the range that the pieces cover
 */
export function fitsOf(
  search: FieldSearch,
  pieces: readonly Piece[],
  tolerance: number,
  ends: RangeEnds,
): readonly Fit[] {
  const looks: Look[] = [];
  const runs = runsOf(pieces);
  for (const [i, run] of runs.entries()) {
    if (run.state !== "open") {
      looks.push({ value: run.low, by: run.by }, { value: run.high, by: run.by });
      continue;
    }
    const before = i > 0 ? lookAtEnd(runs[i - 1]!, run.low) : null;
    const after = i + 1 < runs.length ? lookAtEnd(runs[i + 1]!, run.high) : null;
    looks.push(...looksInto(search, run, before, after, tolerance));
  }
  return fitsBetween(looks, ends);
}

interface Run extends Piece {
  /** Where its pieces meet. */
  readonly inner: readonly number[];
}

/** Neighbors of one state put together. */
function runsOf(pieces: readonly Piece[]): readonly Run[] {
  const runs: Run[] = [];
  for (const piece of pieces) {
    const last = runs.at(-1);
    if (last?.state !== piece.state || piece.state === "misses") {
      runs.push({ ...piece, inner: [] });
      continue;
    }
    const pairs = [...new Set([...last.pairs, ...piece.pairs])];
    runs[runs.length - 1] = { ...last, high: piece.high, pairs, inner: [...last.inner, piece.low] };
  }
  return runs;
}

function lookAtEnd(run: Run, value: number): Look {
  return { value, by: run.state === "keeps" ? null : run.by };
}

/** Looks at values of an open run, its ends among them. @param before, after what is known at its ends; null = nothing */
function looksInto(
  search: FieldSearch,
  run: Run,
  before: Look | null,
  after: Look | null,
  tolerance: number,
): Look[] {
  const look = (value: number): Look => {
    if (search.budget.isSpent(LOOK_WORK)) return { value, by: { kind: "unfinished" } };
    return { value, by: search.closerAt(value, run.pairs, true) };
  };
  const first = before ?? look(run.low);
  const last = after ?? look(run.high);
  if ((first.by === null) !== (last.by === null)) return narrowed(first, last, look, tolerance);
  // A touch in passing, or a hole hardly wider than the tolerance: every value where pieces meet.
  const between = run.inner.length > 0 ? run.inner : [0.5 * (run.low + run.high)];
  const all = [first, ...between.map(look), last];
  return all.flatMap((one, i): Look[] => {
    const next = all[i + 1];
    if (next === undefined || (one.by === null) === (next.by === null)) return [one];
    return narrowed(one, next, look, tolerance).slice(0, -1);
  });
}

/** Of two unlike looks, the two nearer each other than the tolerance between which it turns; with the outer ones. */
function narrowed(first: Look, last: Look, look: (value: number) => Look, tolerance: number): Look[] {
  let [a, b] = [first, last];
  while (b.value - a.value > tolerance) {
    const middle = look(0.5 * (a.value + b.value));
    if ((middle.by === null) === (a.by === null)) a = middle;
    else b = middle;
    if (middle.by?.kind === "unfinished") break;
  }
  // What is told of the value that does not fit is of the end itself, not of somewhere in the stretch beyond.
  const told = (one: Look) => (one.by === null || one.by.kind === "unfinished" ? one : look(one.value));
  const [nearA, nearB] = [told(a), told(b)];
  return [
    first,
    a.by === null ? a : { ...nearA, by: nearA.by ?? a.by },
    b.by === null ? b : { ...nearB, by: nearB.by ?? b.by },
    last,
  ];
}

function fitsBetween(looks: readonly Look[], ends: RangeEnds): readonly Fit[] {
  const fits: Fit[] = [];
  let from: { readonly value: number; readonly by: SetBy } | null = null;
  let last: Look | null = null;
  const close = (to: number, by: SetBy) => {
    if (from !== null) fits.push({ from: from.value, to, fromSetBy: from.by, toSetBy: by });
    from = null;
  };
  for (const look of looks) {
    if (look.by === null) from ??= { value: look.value, by: last?.by ?? ends.from };
    else if (from !== null) close(last!.value, look.by);
    last = look;
  }
  if (last !== null) close(last.value, ends.to);
  return fits;
}
