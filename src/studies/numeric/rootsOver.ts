import { requireFinite } from "../../geometry/requireFinite.ts";

/** A place looked at, and the value there; NaN = there is none. */
export interface Looked {
  readonly x: number;
  readonly y: number;
}

/** Halvings that bring the edge of where there is a value down to rounding. */
const EDGE_HALVINGS = 50;

/**
 * Every place at which a function is zero that a march over places looked at can find, in rising order: between two neighbors of
 * opposite signs, between one with a value and one without, and where three neighbors dip toward zero and back. What comes and
 * goes between two neighbors is passed over.
 * @param looked the function at places in rising order @param near how near zero a dip that does not cross it still counts
 * @param finest how finely a dip is looked into
 */
export function rootsOver(
  f: (x: number) => number,
  looked: readonly Looked[],
  near: number,
  finest: number,
): readonly number[] {
  const roots: number[] = [];
  const add = (x: number) => {
    if (!Number.isNaN(x) && roots.every((one) => Math.abs(one - x) > finest)) roots.push(x);
  };
  const between = (a: Looked, b: Looked) => {
    if (a.y * b.y <= 0) add(rootBetween(f, a.x, b.x));
  };
  for (let i = 1; i < looked.length; i++) {
    const [a, b] = [looked[i - 1]!, looked[i]!];
    if (Number.isNaN(a.y) && Number.isNaN(b.y)) continue;
    if (Number.isNaN(a.y)) between(edge(f, b, a), b);
    else if (Number.isNaN(b.y)) between(a, edge(f, a, b));
    else between(a, b);
    const c = looked[i + 1];
    if (c !== undefined && dips(a, b, c)) intoDip(a, b, c);
  }
  return roots.sort((a, b) => a - b);

  /** Three neighbors of one sign, the middle one nearest zero: between them it may cross and come back, or just touch. */
  function intoDip(a: Looked, b: Looked, c: Looked): void {
    const sign = Math.sign(b.y);
    const x = lowestBetween((at) => sign * f(at), a.x, c.x, finest);
    const y = f(x);
    if (sign * y < 0) {
      add(rootBetween(f, a.x, x));
      add(rootBetween(f, x, c.x));
    } else if (Math.abs(y) <= near) add(x);
  }
}

function dips(a: Looked, b: Looked, c: Looked): boolean {
  const alike = a.y * b.y > 0 && b.y * c.y > 0;
  return alike && Math.abs(b.y) <= Math.abs(a.y) && Math.abs(b.y) <= Math.abs(c.y);
}

/** The last place, going from one with a value to one without, that has a value. */
function edge(f: (x: number) => number, has: Looked, hasNot: Looked): Looked {
  let [inside, outside] = [has, hasNot.x];
  for (let i = 0; i < EDGE_HALVINGS; i++) {
    const x = 0.5 * (inside.x + outside);
    if (x === inside.x || x === outside) break;
    const y = f(x);
    if (Number.isNaN(y)) outside = x;
    else inside = { x, y };
  }
  return inside;
}

/** Halvings that bring any length of a truck down to rounding. */
const MOST_HALVINGS = 60;

/**
 * Where a function crosses zero between two places, by bisection: it has opposite signs (or a zero) at `a` and `b`, and
 * the answer is within |b − a| ÷ 2^60 of a crossing. @returns NaN where the function has no value on the way.
 * @throws RangeError for places that are not finite
 */
export function rootBetween(f: (x: number) => number, a: number, b: number): number {
  requireFinite("rootBetween", a, b);
  const atA = f(a);
  if (atA === 0) return a;
  let [same, other] = [a, b];
  for (let i = 0; i < MOST_HALVINGS; i++) {
    const middle = 0.5 * (same + other);
    if (middle === same || middle === other) break;
    const value = f(middle);
    if (Number.isNaN(value)) return Number.NaN;
    if (value > 0 === atA > 0 && value !== 0) same = middle;
    else other = middle;
  }
  return other;
}

/** The lowest place of a function with one valley between two ends, by golden sections, to a tolerance. */
export function lowestBetween(
  value: (x: number) => number,
  from: number,
  to: number,
  tolerance: number,
): number {
  requireFinite("lowestBetween", from, to, tolerance);
  const share = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [a, b] = [high - share * (high - low), low + share * (high - low)];
  let [atA, atB] = [value(a), value(b)];
  while (high - low > tolerance) {
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - share * (high - low);
      atA = value(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + share * (high - low);
      atB = value(b);
    }
  }
  return 0.5 * (low + high);
}
