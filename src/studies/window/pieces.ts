import { divided, type Part } from "./division.ts";
import type { FieldSearch } from "./fieldSearch.ts";
import type { Closer, Unfinished } from "./windowTypes.ts";

/** A stretch of the field with what everything looked at so far does all over it; neighbors share their ends. */
export interface Piece extends Part {
  /** Where it is open: the pairs of which it is. */
  readonly pairs: readonly number[];
}

/** Microseconds, about, of one search. */
const SEARCH_WORK = 5000;

/** The stretches between `points`, rising, with what is proven of each, the limits and all pairs looked at. */
export function provenPieces(
  search: FieldSearch,
  pairs: readonly number[],
  points: readonly number[],
  tolerance: number,
): readonly Piece[] {
  const isSpent = () => search.budget.isSpent(SEARCH_WORK);
  const whole = { low: points[0]!, high: points.at(-1)!, state: "keeps", by: null, pairs: [] } as const;
  let pieces: readonly Piece[] = [whole];
  const divide = (
    subject: number | null,
    prove: (low: number, high: number) => ReturnType<FieldSearch["over"]>,
  ) => {
    pieces = groupsOf(pieces).flatMap((group): readonly Piece[] => {
      if (group[0]!.state === "misses") return group;
      const [low, high] = [group[0]!.low, group.at(-1)!.high];
      const inner = points.filter((point) => point > low && point < high);
      return overlaid(group, divided(low, high, inner, prove, tolerance, isSpent), subject);
    });
  };
  divide(null, (low, high) => search.limitsOver(low, high));
  for (const pair of pairs) divide(pair, (low, high) => search.over(pair, low, high));
  return pieces;
}

/** Neighbors that nothing is in the way of yet, together; what is settled against, alone. */
function groupsOf(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const groups: Piece[][] = [];
  for (const piece of pieces) {
    const last = groups.at(-1);
    if (last !== undefined && last[0]!.state !== "misses" && piece.state !== "misses") last.push(piece);
    else groups.push([piece]);
  }
  return groups;
}

/** Pieces cut where the parts of one more subject are; both cover the same stretch. @param pair null = the limits */
function overlaid(pieces: readonly Piece[], parts: readonly Part[], pair: number | null): readonly Piece[] {
  const found: Piece[] = [];
  for (const part of parts) {
    if (part.state === "misses") {
      found.push({ ...part, pairs: [] });
      continue;
    }
    for (const piece of pieces) {
      const low = Math.max(piece.low, part.low);
      const high = Math.min(piece.high, part.high);
      if (!(low < high)) continue;
      const isOpen = piece.state === "open" || part.state === "open";
      const more = part.state === "open" && pair !== null ? [pair] : [];
      found.push({ low, high, state: isOpen ? "open" : "keeps", by: null, pairs: [...piece.pairs, ...more] });
    }
  }
  return joined(found);
}

/** Neighbors that both keep are one. */
function joined(pieces: readonly Piece[]): readonly Piece[] {
  const found: Piece[] = [];
  for (const piece of pieces) {
    const last = found.at(-1);
    if (last?.state === "keeps" && piece.state === "keeps")
      found[found.length - 1] = { ...last, high: piece.high };
    else found.push(piece);
  }
  return found;
}

/**
 * The same by looks at single values, rising: between two alike ones the values are taken as they are, between two unlike ones
 * they are open.
 */
export function sampledPieces(
  search: FieldSearch,
  pairs: readonly number[],
  values: readonly number[],
): readonly Piece[] {
  let order = pairs;
  const looks = values.map((value): Closer | Unfinished | null => {
    if (search.budget.isSpent(SEARCH_WORK)) return { kind: "unfinished" };
    const by = search.closerAt(value, order);
    if (by?.kind === "part") order = search.withFirst(order, value, by);
    return by;
  });
  return values.slice(1).map((high, i): Piece => {
    const [a, b] = [looks[i]!, looks[i + 1]!];
    const at = { low: values[i]!, high, pairs };
    const isKnown = a?.kind !== "unfinished" && b?.kind !== "unfinished";
    if (isKnown && a === null && b === null) return { ...at, state: "keeps", by: null };
    if (isKnown && a !== null && b !== null) return { ...at, state: "misses", by: a };
    return { ...at, state: "open", by: null };
  });
}
