/** A place in a box of two inputs. */
export type Place = readonly [x: number, y: number];

/** From what to what each input goes; both ends alike = it stays there. */
export type Box = readonly [x: readonly [low: number, high: number], y: readonly [low: number, high: number]];

/** A place and how high it is. */
export interface Summit {
  readonly at: Place;
  readonly value: number;
}

const WAYS: readonly Place[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
];

/** Steps that one climb may take before it ends where it is. */
const MOST_STEPS = 400;

/**
 * Climbs from a place to a higher one as long as a neighbor is higher, and looks nearer and nearer: a pattern search, which asks
 * for no slope, so that kinks and steps of the value do not stop it. What it ends at is the largest found, no bound.
 * @param valueAt −∞ where there is none; @param first steps to begin with; @param finest steps to end with, as `first`
 */
export function climb(
  valueAt: (x: number, y: number) => number,
  from: Summit,
  box: Box,
  first: Place,
  finest: Place,
): Summit {
  let { at, value } = from;
  let share = 1;
  const within = (axis: 0 | 1, by: number) => Math.min(box[axis][1], Math.max(box[axis][0], at[axis] + by));
  const isFine = () => share * first[0] <= finest[0] && share * first[1] <= finest[1];
  for (let step = 0; step < MOST_STEPS; step++) {
    let next: Summit | null = null;
    for (const [x, y] of WAYS) {
      const to: Place = [within(0, x * share * first[0]), within(1, y * share * first[1])];
      if (to[0] === at[0] && to[1] === at[1]) continue;
      const there = valueAt(...to);
      if (there > (next?.value ?? value)) next = { at: to, value: there };
    }
    if (next) ({ at, value } = next);
    else if (isFine()) break;
    else share *= 0.5;
  }
  return { at, value };
}
