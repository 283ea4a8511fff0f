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
