import { BufferAttribute, BufferGeometry, Matrix4 } from "three";
import { cross, normalize } from "../../../src/geometry/vec.ts";
import { aboutAxis, type RingCase, type WheelCase } from "../referenceRing.ts";
import { closedOutline } from "../sectionDistance.ts";

/**
 * How far a ring cut into `sides` flat sides about its axis is from the round one, mm. At the same x a
 * circle of radius r becomes a polygon with its corners on the circle and the middles of its sides at
 * r·cos(π/sides), so no point of either surface is farther from the other than R(1 − cos(π/sides)),
 * R the largest r; a gap changes by no more than the surfaces move.
 */
export function tessellationError(ring: RingCase, sides: number): number {
  const largest = Math.max(...ring.profile.map(([, r]) => r));
  return largest * (1 - Math.cos(Math.PI / sides));
}

/** The ring's surface as triangles, corners on the round surface, vehicle axes of the left side, mm. */
export function ringGeometry(ring: RingCase, wheel: WheelCase, sides: number): BufferGeometry {
  const outline = closedOutline(ring.profile, ring.barrelRadius);
  const count = outline.length;
  // 64-bit places: 32-bit ones would add their own rounding to the tessellation error.
  const places = new Float64Array(3 * count * sides);
  const index: number[] = [];
  for (let k = 0; k < sides; k++) {
    outline.forEach(([x, r], i) => {
      places.set(aboutAxis(wheel, x, r, (2 * Math.PI * k) / sides), 3 * (k * count + i));
      const next = (i + 1) % count;
      const a = k * count + i;
      const b = k * count + next;
      const c = ((k + 1) % sides) * count + i;
      const d = ((k + 1) % sides) * count + next;
      index.push(a, b, c, b, d, c);
    });
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(places, 3));
  geometry.setIndex(index);
  return geometry;
}

/** The turn and slide that take a solid revolved about Z (x of the section along Z) to the wheel's place. */
export function revolvedToWheel({ center, axis }: WheelCase): Matrix4 {
  const up = normalize(cross(axis, [1, 0, 0]));
  const side = cross(axis, up);
  return new Matrix4().set(
    up[0],
    side[0],
    axis[0],
    center[0],
    up[1],
    side[1],
    axis[1],
    center[1],
    up[2],
    side[2],
    axis[2],
    center[2],
    0,
    0,
    0,
    1,
  );
}
