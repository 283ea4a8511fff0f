import { BufferGeometry, Float32BufferAttribute } from "three";
import { addScaled, length, scale, sub, type Vec3 } from "../../geometry/vec.ts";

/** mm: long dash, gap, short dash, gap — the pattern drawings use for center lines. */
const PATTERN = [48, 12, 10, 12];

/** Center lines from one point to another, as the segments that are inked. */
export function dashesGeometry(lines: readonly (readonly [from: Vec3, to: Vec3])[]): BufferGeometry {
  const positions: number[] = [];
  for (const [from, to] of lines) {
    const whole = length(sub(to, from));
    const way = scale(sub(to, from), 1 / whole);
    for (let at = 0, k = 0; at < whole; at += PATTERN[k % 4]!, k++) {
      if (k % 2 === 1) continue;
      const end = Math.min(whole, at + PATTERN[k % 4]!);
      positions.push(...addScaled(from, way, at), ...addScaled(from, way, end));
    }
  }
  return new BufferGeometry().setAttribute("position", new Float32BufferAttribute(positions, 3));
}

const SEGMENTS = 96;

/** Circles about y as line segments, from pairs of [along the axis, radius], flat, mm. */
export function circlesGeometry(circles: readonly number[]): BufferGeometry {
  const positions: number[] = [];
  for (let i = 0; i + 1 < circles.length; i += 2) {
    const y = circles[i]!;
    const r = circles[i + 1]!;
    for (let k = 0; k < SEGMENTS; k++) {
      for (const turn of [k, k + 1]) {
        const angle = (2 * Math.PI * turn) / SEGMENTS;
        positions.push(r * Math.cos(angle), y, r * Math.sin(angle));
      }
    }
  }
  return new BufferGeometry().setAttribute("position", new Float32BufferAttribute(positions, 3));
}

/** A profile's points, from its flat pairs. */
export function profilePoints(profile: ArrayLike<number>): [x: number, r: number][] {
  const points: [x: number, r: number][] = [];
  for (let i = 0; i + 1 < profile.length; i += 2) points.push([profile[i]!, profile[i + 1]!]);
  return points;
}

/** The tread of a profile: its points within `depth` of the top, mm. */
export function treadOf(points: readonly [x: number, r: number][], depth = 8): [x: number, r: number][] {
  const top = Math.max(...points.map(([, r]) => r));
  return points.filter(([, r]) => r >= top - depth);
}

/** Circles worth inking on a ring: its beads, and the edges of the tread. */
export function ringCircles(profile: ArrayLike<number>): number[] {
  const points = profilePoints(profile);
  const tread = treadOf(points);
  return [points[0], tread[0], tread.at(-1), points.at(-1)].flatMap((point) => point ?? []);
}
