import type { RingShape } from "../../gaps/ring/ringShape.ts";
import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { addScaled, cross, normalize, type Vec3 } from "../../geometry/vec.ts";

/**
 * Flat sides about the axis. Corners lie on the round surface, so that the middles of the sides lie inside it by
 * R(1 − cos(π/360)): 0.015 mm at R = 400 mm.
 */
const SIDES = 360;

/** Tire and rim at a place, as a closed surface. @param axis unit, outboard */
export function ringMesh({ outline }: RingShape, center: Vec3, axis: Vec3): TriangleMesh {
  const e = normalize(cross(axis, Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 0, 1]));
  const f = cross(axis, e);
  const count = outline.length;
  const positions = new Float64Array(3 * count * SIDES);
  const triangles = new Uint32Array(6 * count * SIDES);
  for (let k = 0; k < SIDES; k++) {
    const angle = (2 * Math.PI * k) / SIDES;
    outline.forEach(([x, r], i) => {
      const out = addScaled(addScaled(center, e, r * Math.cos(angle)), f, r * Math.sin(angle));
      positions.set(addScaled(out, axis, x), 3 * (k * count + i));
      const next = (i + 1) % count;
      const [a, b] = [k * count + i, k * count + next];
      const [c, d] = [((k + 1) % SIDES) * count + i, ((k + 1) % SIDES) * count + next];
      // The outline runs counterclockwise in (x, r): around the axis from e to f that is outside.
      triangles.set([a, b, c, b, d, c], 6 * (k * count + i));
    });
  }
  return { positions, triangles };
}
