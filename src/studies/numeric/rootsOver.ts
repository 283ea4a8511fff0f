import { lowestBetween } from "./lowestBetween.ts";
import { rootBetween } from "./rootBetween.ts";

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
