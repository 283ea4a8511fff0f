import type { Vec3 } from "../../geometry/vec.ts";

/**
 * The lower triangle L of a covariance L Lᵀ, row by row: it carries a ball of radius 1 to the ellipsoid of one standard
 * deviation. A direction without spread, or with less than none by rounding, has length 0.
 */
export function choleskyOf([[a], [b, d], [c, e, f]]: readonly [Vec3, Vec3, Vec3]): readonly [
  Vec3,
  Vec3,
  Vec3,
] {
  const root = (square: number) => Math.sqrt(Math.max(0, square));
  const share = (value: number, by: number) => (by > 0 ? value / by : 0);
  const l11 = root(a);
  const l21 = share(b, l11);
  const l31 = share(c, l11);
  const l22 = root(d - l21 * l21);
  const l32 = share(e - l31 * l21, l22);
  const l33 = root(f - l31 * l31 - l32 * l32);
  return [
    [l11, 0, 0],
    [l21, l22, 0],
    [l31, l32, l33],
  ];
}
