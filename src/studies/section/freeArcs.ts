import { length, sub, type Vec3 } from "../../geometry/vec.ts";
import type { Curve } from "./tubeLegs.ts";

/** Steps of the searches for an extreme (each keeps two thirds) and for a border (each halves): to rounding. */
const THIRDS = 60;
const HALVINGS = 52;

/** Negative where a point is covered; changes by no more than the point moves. */
export type Cover = (point: Vec3) => number;

/**
 * The parts of a curve that nothing covers, each as its points, ends found to rounding. Of each piece of the curve every
 * cover's least and greatest value are searched, so that none is missed that covers, or leaves free, only the middle
 * of a piece: along a piece this short each has one extreme.
 */
export function freeArcs(curve: Curve, covers: readonly Cover[]): Vec3[][] {
  const arcs: Vec3[][] = [];
  let arc: Vec3[] | null = null;
  const emit = (from: number, to: number) => {
    if (arc === null) {
      arc = [curve.at(from)];
      arcs.push(arc);
    }
    arc.push(curve.at(to));
  };
  for (let i = 0; i < curve.pieces; i++) {
    const [s0, s1] = [i / curve.pieces, (i + 1) / curve.pieces];
    const middle = curve.at(0.5 * (s0 + s1));
    // A piece bends so little that no point of it is farther from its middle than this.
    const reach = 2 * Math.max(apart(middle, curve.at(s0)), apart(middle, curve.at(s1)));
    const borders = covers.flatMap((cover) =>
      Math.abs(cover(middle)) > reach ? [] : bordersOf((s) => cover(curve.at(s)), s0, s1),
    );
    const places = [s0, ...borders.sort((a, b) => a - b), s1];
    for (let k = 1; k < places.length; k++) {
      const [from, to] = [places[k - 1]!, places[k]!];
      if (!(from < to)) continue;
      const inside = curve.at(0.5 * (from + to));
      if (covers.every((cover) => cover(inside) >= 0)) emit(from, to);
      else arc = null;
    }
  }
  return arcs;
}

function apart(a: Vec3, b: Vec3): number {
  return length(sub(a, b));
}

/** Where f changes its sign between a and b. */
function bordersOf(f: (s: number) => number, a: number, b: number): number[] {
  const turns = [extremeOf(f, a, b, 1), extremeOf(f, a, b, -1)].sort((p, q) => p - q);
  const places = [a, ...turns, b];
  return places.slice(1).flatMap((to, i) => {
    const from = places[i]!;
    return f(from) < 0 === f(to) < 0 ? [] : [borderBetween(f, from, to)];
  });
}

/** Where sign × f is least. */
function extremeOf(f: (s: number) => number, a: number, b: number, sign: 1 | -1): number {
  let [low, high] = [a, b];
  for (let i = 0; i < THIRDS; i++) {
    const third = (high - low) / 3;
    if (sign * f(low + third) < sign * f(high - third)) high -= third;
    else low += third;
  }
  return 0.5 * (low + high);
}

function borderBetween(f: (s: number) => number, a: number, b: number): number {
  let [low, high] = [a, b];
  const below = f(a) < 0;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (low + high);
    if (f(middle) < 0 === below) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
