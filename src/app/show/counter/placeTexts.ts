/** A point on the page, px. */
export type PagePoint = readonly [x: number, y: number];

/** A text that stands in a column and points at something. */
export interface Pointing {
  /** px. */
  readonly height: number;
  readonly to: PagePoint;
}

/** Where texts of a column stand. */
export interface Column {
  /** Where their leaders begin, px. */
  readonly x: number;
  readonly top: number;
  readonly foot: number;
}

/**
 * Puts texts in a column, each in front of what it points at as near as the others let it (least squares), none over another, none
 * past the ends, and no two leaders crossed. What all of them take must be no more than the column.
 * @returns the middle of each, px down the page, in the order given
 */
export function placeTexts(texts: readonly Pointing[], column: Column): readonly number[] {
  const order = texts.map((_, i) => i).sort((a, b) => texts[a]!.to[1] - texts[b]!.to[1]);
  let places = placesOf(order, texts, column);
  // To swap two that cross makes both leaders shorter: no order comes twice. The bound is for texts that differ in height.
  for (let turn = 0; turn < texts.length ** 2; turn++) {
    const pair = crossed(order, texts, places, column.x);
    if (!pair) break;
    const [a, b] = pair;
    [order[a], order[b]] = [order[b]!, order[a]!];
    places = placesOf(order, texts, column);
  }
  return places;
}

/** By isotonic regression: those that would overlap stand together, in front of the middle of what they point at. */
function placesOf(
  order: readonly number[],
  texts: readonly Pointing[],
  { top, foot }: Column,
): readonly number[] {
  let above = top;
  const offsets = order.map((one) => {
    const middle = above + 0.5 * texts[one]!.height;
    above += texts[one]!.height;
    return middle;
  });
  const slack = Math.max(0, foot - above);
  const groups: { sum: number; count: number }[] = [];
  order.forEach((one, i) => {
    groups.push({ sum: texts[one]!.to[1] - offsets[i]!, count: 1 });
    for (;;) {
      const [before, last] = groups.slice(-2);
      if (!before || !last || before.sum / before.count < last.sum / last.count) break;
      groups.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const moved = groups.flatMap(({ sum, count }) =>
    Array<number>(count).fill(Math.min(slack, Math.max(0, sum / count))),
  );
  const places = Array<number>(texts.length).fill(0);
  order.forEach((one, i) => {
    places[one] = offsets[i]! + moved[i]!;
  });
  return places;
}

/** Two places in an order whose leaders cross; null = none do. */
function crossed(
  order: readonly number[],
  texts: readonly Pointing[],
  places: readonly number[],
  x: number,
): readonly [number, number] | null {
  for (let a = 0; a < order.length; a++)
    for (let b = a + 1; b < order.length; b++) {
      const [one, other] = [order[a]!, order[b]!];
      const from: PagePoint = [x, places[one]!];
      if (doCross([from, texts[one]!.to], [[x, places[other]!], texts[other]!.to])) return [a, b];
    }
  return null;
}

/** Whether two lines cross. */
export function doCross(
  [a, b]: readonly [PagePoint, PagePoint],
  [c, d]: readonly [PagePoint, PagePoint],
): boolean {
  const turn = (p: PagePoint, q: PagePoint, r: PagePoint) =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}
