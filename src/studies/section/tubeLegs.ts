import { addScaled, cross, dot, length, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";

/** One straight leg of a tube: from `start` along the unit `way` for `length` mm to `end`. */
export interface TubeLeg {
  readonly start: Vec3;
  readonly way: Vec3;
  readonly length: number;
  readonly end: Vec3;
}

/** Legs between neighboring points; points in one place have none between them. */
export function tubeLegs(points: readonly Vec3[]): TubeLeg[] {
  return points.slice(1).flatMap((end, i) => {
    const start = points[i]!;
    const way = sub(end, start);
    const size = length(way);
    return size > 0 ? [{ start, way: scale(way, 1 / size), length: size, end }] : [];
  });
}

/** Distance of a point from a leg's middle line. */
export function legDistance(leg: TubeLeg, point: Vec3): number {
  const along = Math.min(Math.max(dot(sub(point, leg.start), leg.way), 0), leg.length);
  return length(sub(point, addScaled(leg.start, leg.way, along)));
}

/** A curve in space, from s = 0 to s = 1. */
export interface Curve {
  readonly at: (s: number) => Vec3;
  /** Straight pieces that keep it within `SAGITTA`. */
  readonly pieces: number;
}

/** mm. How far a straight piece may stand off the curve it stands for. */
const SAGITTA = 0.005;
const MOST_PIECES = 720;

/**
 * The round side of a leg where a plane cuts it: two curves, or none. The side is start + t·way +
 * r(cos φ·e + sin φ·f) with e the direction square to the leg that climbs steepest out of the plane, and f level.
 * On the plane height + t·(way·n) + r(e·n) cos φ = 0 (height = start's above the plane): cos φ is linear in t, so each
 * t has the two points ±φ. φ runs evenly; t follows from cos a − cos b = −2 sin((a+b)/2) sin((a−b)/2),
 * which stays exact where the leg is so nearly level that φ hardly changes, and the ellipse has become a strip.
 */
export function sideCurves(leg: TubeLeg, radius: number, normal: Vec3, at: number): Curve[] {
  const climb = dot(leg.way, normal);
  const slopeSq = 1 - climb * climb;
  const height = dot(leg.start, normal) - at;
  // Square to the plane: a whole circle where it is cut.
  if (!(slopeSq > 1e-24)) {
    const t = -height / climb;
    if (!(t >= 0 && t <= leg.length)) return [];
    return [circle(addScaled(leg.start, leg.way, t), radius, normal)];
  }
  const e = normalize(addScaled(normal, leg.way, -climb));
  const f = cross(leg.way, e);
  const steep = radius * dot(e, normal);
  // cos φ at both ends of the leg, and the part of it that the plane reaches.
  const cosStart = -height / steep;
  const cosEnd = -(height + leg.length * climb) / steep;
  if (Math.min(cosStart, cosEnd) > 1 || Math.max(cosStart, cosEnd) < -1) return [];
  const clamp = (cos: number) => Math.min(Math.max(cos, -1), 1);
  const [a, b] = [Math.acos(clamp(cosStart)), Math.acos(clamp(cosEnd))];
  const tOf = (cos: number, otherwise: number) =>
    clamp(cos) === cos ? otherwise : -(height + steep * clamp(cos)) / climb;
  const [ta, tb] = [tOf(cosStart, 0), tOf(cosEnd, leg.length)];
  const whole = Math.sin(0.5 * (b + a)) * Math.sin(0.5 * (b - a));
  const point = (s: number, sign: number): Vec3 => {
    const phi = a + s * (b - a);
    const share =
      Math.abs(whole) > 1e-300 ? (Math.sin(0.5 * (phi + a)) * Math.sin(0.5 * (phi - a))) / whole : s;
    const t = s === 1 ? tb : ta + (tb - ta) * share;
    const axis = addScaled(leg.start, leg.way, t);
    return addScaled(addScaled(axis, e, radius * Math.cos(phi)), f, sign * radius * Math.sin(phi));
  };
  // Of t(φ) and the circle the second derivative is at most this; a chord stands off by an eighth of it × step².
  const bend = radius + (Math.abs(climb) > 0 ? Math.abs(steep / climb) : 0);
  const pieces = piecesFor(bend * (b - a) ** 2);
  return [1, -1].map((sign) => ({ at: (s: number) => point(s, sign), pieces }));
}

/** The ball about a point where a plane cuts it: a circle, or null. */
export function ballCircle(center: Vec3, radius: number, normal: Vec3, at: number): Curve | null {
  const height = dot(center, normal) - at;
  const sq = radius * radius - height * height;
  return sq > 0 ? circle(addScaled(center, normal, -height), Math.sqrt(sq), normal) : null;
}

function circle(center: Vec3, radius: number, normal: Vec3): Curve {
  const e = normalize(cross(normal, Math.abs(normal[0]) > 0.5 ? [0, 1, 0] : [1, 0, 0]));
  const f = cross(normal, e);
  const point = (s: number): Vec3 => {
    const phi = 2 * Math.PI * (s === 1 ? 0 : s);
    return addScaled(addScaled(center, e, radius * Math.cos(phi)), f, radius * Math.sin(phi));
  };
  return { at: point, pieces: Math.max(12, piecesFor(radius * (2 * Math.PI) ** 2)) };
}

function piecesFor(bendTimesStepSq: number): number {
  return Math.min(MOST_PIECES, Math.max(1, Math.ceil(Math.sqrt(bendTimesStepSq / (8 * SAGITTA)))));
}
