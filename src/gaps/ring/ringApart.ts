import type { RingShape } from "./ringShape.ts";

/**
 * How far two rings on one axis are apart at most, mm: no signed distance to one differs from that to the other by more, where
 * it is above that for either. By the Fréchet distance of their outlines, bounded by pairing their points in order from the first
 * (discrete Fréchet distance, Eiter and Mannila 1994): one outline turns into the other with no point going farther, so what is
 * outside of one by more than that stays outside all along.
 * @param shift how far `a` stands outboard of where its own x says, seen from `b`
 */
export function ringApart({ outline: a }: RingShape, { outline: b }: RingShape, shift: number): number {
  const apart = (i: number, j: number) => Math.hypot(a[i]![0] + shift - b[j]![0], a[i]![1] - b[j]![1]);
  // Closed: the first points of both come once more at the end.
  let before: number[] = [];
  for (let i = 0; i <= a.length; i++) {
    const row: number[] = [];
    for (let j = 0; j <= b.length; j++) {
      const here = apart(i % a.length, j % b.length);
      const way = Math.min(
        i > 0 ? before[j]! : Number.POSITIVE_INFINITY,
        j > 0 ? row[j - 1]! : Number.POSITIVE_INFINITY,
        i > 0 && j > 0 ? before[j - 1]! : Number.POSITIVE_INFINITY,
      );
      row.push(i === 0 && j === 0 ? here : Math.max(here, way));
    }
    before = row;
  }
  return before[b.length]!;
}
