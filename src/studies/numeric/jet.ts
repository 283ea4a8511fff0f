import type { Vec3 } from "../../geometry/vec.ts";

/**
 * A number over a cell of two inputs, each running from −1 to 1: its value and slopes at the cell's middle, and its second
 * derivatives all over the cell, each as a middle and how far it can be from that. With Taylor's theorem that bounds the number
 * over the cell, by an error that falls with the square of the cell's size (Moore, Methods and Applications of Interval
 * Analysis, 1979, from memory). Rounding is not followed: whoever tells a bound adds a share far above it.
 */
export interface Jet {
  readonly mid: number;
  readonly u: number;
  readonly v: number;
  readonly uu: number;
  readonly uv: number;
  readonly vv: number;
  /** How far the second derivatives can be from theirs at the middle of what they take. */
  readonly uuOff: number;
  readonly uvOff: number;
  readonly vvOff: number;
  /** How far the number, and its slopes, can be from those at the cell's middle. */
  readonly off: number;
  readonly uOff: number;
  readonly vOff: number;
}

export type JetVec = readonly [Jet, Jet, Jet];

/** A jet of its own numbers; a slope goes no farther than its own second derivatives say. */
function jet(
  mid: number,
  u: number,
  v: number,
  uu: number,
  uv: number,
  vv: number,
  uuOff: number,
  uvOff: number,
  vvOff: number,
): Jet {
  const mostUu = Math.abs(uu) + uuOff;
  const mostUv = Math.abs(uv) + uvOff;
  const mostVv = Math.abs(vv) + vvOff;
  const off = Math.abs(u) + Math.abs(v) + 0.5 * (mostUu + mostVv) + mostUv;
  const [uOff, vOff] = [mostUu + mostUv, mostUv + mostVv];
  return { mid, u, v, uu, uv, vv, uuOff, uvOff, vvOff, off, uOff, vOff };
}

export function constant(mid: number): Jet {
  return jet(mid, 0, 0, 0, 0, 0, 0, 0, 0);
}

/** Of which nothing is known. */
const NOTHING = ((n: number) => jet(n, n, n, n, n, n, n, n, n))(Number.NaN);

/** Cosine and sine of an angle that grows evenly with the first input, by `half`. */
export function turned(angle: number, half: number): { readonly cos: Jet; readonly sin: Jet } {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const bend = half * half;
  const off = bend * Math.abs(half);
  return {
    cos: jet(cos, -half * sin, 0, -bend * cos, 0, 0, off, 0, 0),
    sin: jet(sin, half * cos, 0, -bend * sin, 0, 0, off, 0, 0),
  };
}

/** The same jet with its two inputs changed for one another. */
export function swapped(f: Jet): Jet {
  return jet(f.mid, f.v, f.u, f.vv, f.uv, f.uu, f.vvOff, f.uvOff, f.uuOff);
}

/** A number that grows evenly with the second input, by `half`. */
export function alongSecond(mid: number, half: number): Jet {
  return jet(mid, 0, half, 0, 0, 0, 0, 0, 0);
}

export function plus(f: Jet, g: Jet): Jet {
  return jet(
    f.mid + g.mid,
    f.u + g.u,
    f.v + g.v,
    f.uu + g.uu,
    f.uv + g.uv,
    f.vv + g.vv,
    f.uuOff + g.uuOff,
    f.uvOff + g.uvOff,
    f.vvOff + g.vvOff,
  );
}

export function times(f: Jet, n: number): Jet {
  const m = Math.abs(n);
  return jet(
    n * f.mid,
    n * f.u,
    n * f.v,
    n * f.uu,
    n * f.uv,
    n * f.vv,
    m * f.uuOff,
    m * f.uvOff,
    m * f.vvOff,
  );
}

export function minus(f: Jet, g: Jet): Jet {
  return plus(f, times(g, -1));
}

/** How far a product can be from that of the middles. */
function productOff(a: number, aOff: number, b: number, bOff: number): number {
  return Math.abs(a) * bOff + (Math.abs(b) + bOff) * aOff;
}

export function product(f: Jet, g: Jet): Jet {
  return jet(
    f.mid * g.mid,
    f.mid * g.u + g.mid * f.u,
    f.mid * g.v + g.mid * f.v,
    f.mid * g.uu + g.mid * f.uu + 2 * f.u * g.u,
    f.mid * g.uv + g.mid * f.uv + f.u * g.v + f.v * g.u,
    f.mid * g.vv + g.mid * f.vv + 2 * f.v * g.v,
    productOff(f.mid, f.off, g.uu, g.uuOff) +
      productOff(g.mid, g.off, f.uu, f.uuOff) +
      2 * productOff(f.u, f.uOff, g.u, g.uOff),
    productOff(f.mid, f.off, g.uv, g.uvOff) +
      productOff(g.mid, g.off, f.uv, f.uvOff) +
      productOff(f.u, f.uOff, g.v, g.vOff) +
      productOff(f.v, f.vOff, g.u, g.uOff),
    productOff(f.mid, f.off, g.vv, g.vvOff) +
      productOff(g.mid, g.off, f.vv, f.vvOff) +
      2 * productOff(f.v, f.vOff, g.v, g.vOff),
  );
}

/** The sign a number has all over the cell; 0 = it may have either. */
export function signOf(f: Jet): -1 | 0 | 1 {
  return f.mid - f.off > 0 ? 1 : f.mid + f.off < 0 ? -1 : 0;
}

/** 1/f; NaN throughout where f may be zero. */
export function inverse(f: Jet): Jet {
  if (signOf(f) === 0) return NOTHING;
  const least = Math.abs(f.mid) - f.off;
  const slope = -1 / f.mid ** 2;
  const bend = 2 / f.mid ** 3;
  // Both grow toward zero: there they are farthest from those at the middle.
  return through(f, 1 / f.mid, slope, 1 / least ** 2 + slope, bend, 2 / least ** 3 - Math.abs(bend));
}

/** √f; NaN throughout where f may be zero or less. */
export function root(f: Jet): Jet {
  const least = f.mid - f.off;
  if (!(least > 0)) return NOTHING;
  const size = Math.sqrt(f.mid);
  const slope = 0.5 / size;
  const bend = -0.25 / (size * f.mid);
  return through(f, size, slope, 0.5 / Math.sqrt(least) - slope, bend, 0.25 / least ** 1.5 + bend);
}

/** A function of f by its value and slopes at the middle, and how far its two derivatives can be from those over the cell. */
function through(f: Jet, mid: number, d: number, dOff: number, dd: number, ddOff: number): Jet {
  const off = (h: number, hOff: number, a: number, aOff: number, b: number, bOff: number) =>
    productOff(d, dOff, h, hOff) + productOff(dd, ddOff, a * b, productOff(a, aOff, b, bOff));
  return jet(
    mid,
    d * f.u,
    d * f.v,
    d * f.uu + dd * f.u * f.u,
    d * f.uv + dd * f.u * f.v,
    d * f.vv + dd * f.v * f.v,
    off(f.uu, f.uuOff, f.u, f.uOff, f.u, f.uOff),
    off(f.uv, f.uvOff, f.u, f.uOff, f.v, f.vOff),
    off(f.vv, f.vvOff, f.v, f.vOff, f.v, f.vOff),
  );
}

export function still(v: Vec3): JetVec {
  return [constant(v[0]), constant(v[1]), constant(v[2])];
}

export function plusVec(a: JetVec, b: JetVec): JetVec {
  return [plus(a[0], b[0]), plus(a[1], b[1]), plus(a[2], b[2])];
}

export function minusVec(a: JetVec, b: JetVec): JetVec {
  return [minus(a[0], b[0]), minus(a[1], b[1]), minus(a[2], b[2])];
}

export function timesVec(a: JetVec, n: number): JetVec {
  return [times(a[0], n), times(a[1], n), times(a[2], n)];
}

/** A vector that stands still, times a number that does not. */
export function along(v: Vec3, f: Jet): JetVec {
  return [times(f, v[0]), times(f, v[1]), times(f, v[2])];
}

export function productVec(a: JetVec, f: Jet): JetVec {
  return [product(a[0], f), product(a[1], f), product(a[2], f)];
}

export function dotVec(a: JetVec, b: JetVec): Jet {
  return plus(plus(product(a[0], b[0]), product(a[1], b[1])), product(a[2], b[2]));
}

/** With a vector that stands still. */
export function dotStill(a: JetVec, v: Vec3): Jet {
  return plus(plus(times(a[0], v[0]), times(a[1], v[1])), times(a[2], v[2]));
}

export function crossVec(a: JetVec, b: JetVec): JetVec {
  const part = (i: 0 | 1 | 2, k: 0 | 1 | 2) => minus(product(a[i], b[k]), product(a[k], b[i]));
  return [part(1, 2), part(2, 0), part(0, 1)];
}

/** The most that a vector's length is anywhere in the cell; Infinity where nothing is known. */
export function mostLength(a: JetVec): number {
  let most = 0;
  // What is even in both inputs is longest at a corner; the rest is half of the second derivatives.
  for (const [u, v] of [
    [1, 1],
    [1, -1],
  ] as const)
    for (const sign of [1, -1]) {
      const parts = a.map((f) => f.mid + sign * (u * f.u + v * f.v));
      most = Math.max(most, Math.hypot(...parts));
    }
  const bends = a.map((f) => 0.5 * (f.uOff + f.vOff));
  const bound = most + Math.hypot(...bends);
  return Number.isNaN(bound) ? Number.POSITIVE_INFINITY : bound;
}
