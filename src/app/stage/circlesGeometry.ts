import { BufferGeometry, Float32BufferAttribute } from "three";

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

/** Circles worth inking on a ring: its beads, and the edges of the tread (the outermost points within `depth` of the top). */
export function ringCircles(profile: ArrayLike<number>, depth = 8): number[] {
  const points: [x: number, r: number][] = [];
  for (let i = 0; i + 1 < profile.length; i += 2) points.push([profile[i]!, profile[i + 1]!]);
  const top = Math.max(...points.map(([, r]) => r));
  const tread = points.filter(([, r]) => r >= top - depth);
  return [points[0], tread[0], tread.at(-1), points.at(-1)].flatMap((point) => point ?? []);
}
