/** A point of a plane outline. */
type PlanePoint = readonly [number, number];

/**
 * The first two edges of a closed outline that meet where they should not, lower number first; null for a simple
 * outline. Edge i runs from point i to the next; the last one closes. Neighbors may share their one corner but
 * not fold back. Compares every pair, so cost grows with the square of the count. Needs edges of some length.
 */
export function firstCrossing(outline: readonly PlanePoint[]): readonly [number, number] | null {
  const count = outline.length;
  const corner = (i: number): PlanePoint => outline[i % count]!;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      const meet =
        j === i + 1
          ? foldsBack(corner(i), corner(j), corner(j + 1))
          : i === 0 && j === count - 1
            ? foldsBack(corner(j), corner(0), corner(1))
            : edgesMeet(corner(i), corner(i + 1), corner(j), corner(j + 1));
      if (meet) return [i, j];
    }
  }
  return null;
}

/** Twice the signed area of the triangle: + = left turn, 0 = on one line. */
function turn(a: PlanePoint, b: PlanePoint, c: PlanePoint): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function foldsBack(a: PlanePoint, b: PlanePoint, c: PlanePoint): boolean {
  const along = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
  return turn(a, b, c) === 0 && along < 0;
}

function edgesMeet(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): boolean {
  const [abc, abd, cda, cdb] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (Math.sign(abc) * Math.sign(abd) < 0 && Math.sign(cda) * Math.sign(cdb) < 0) return true;
  return (
    (abc === 0 && isInBox(a, b, c)) ||
    (abd === 0 && isInBox(a, b, d)) ||
    (cda === 0 && isInBox(c, d, a)) ||
    (cdb === 0 && isInBox(c, d, b))
  );
}

function isInBox(a: PlanePoint, b: PlanePoint, p: PlanePoint): boolean {
  return (
    Math.min(a[0], b[0]) <= p[0] &&
    p[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= p[1] &&
    p[1] <= Math.max(a[1], b[1])
  );
}
