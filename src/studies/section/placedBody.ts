import type { RingShape } from "../../gaps/ring/ringShape.ts";
import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { addScaled, cross, normalize, type Vec3 } from "../../geometry/vec.ts";
import type { BodyPart, Point } from "../../setup/types/truckTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";

/** A body part as it stands on one side of the truck, in vehicle axes. */
export interface PlacedPart {
  readonly side: Side;
  readonly part: BodyPart;
}

/**
 * The body parts of one side where they stand. The right side is the mirror image of what is typed, but for a
 * part of the right side alone that was typed at y < 0, where it stands.
 */
export function placedBody(body: readonly BodyPart[], side: Side): PlacedPart[] {
  return body
    .filter((part) => part.side === "both" || part.side === side)
    .map((part) => ({ side, part: side === "right" && !standsAsTyped(part) ? mirrored(part) : part }));
}

/** Whether a part of the right side alone was typed where it stands, at y < 0. */
export function standsAsTyped(part: BodyPart): boolean {
  if (part.side !== "right") return false;
  if (part.kind === "mesh") {
    let sum = 0;
    for (let i = 1; i < part.positions.length; i += 3) sum += part.positions[i]!;
    return sum < 0;
  }
  const points = part.kind === "path" ? part.points : [part.min, part.max];
  return points.reduce((sum, point) => sum + point[1], 0) < 0;
}

function mirrored(part: BodyPart): BodyPart {
  switch (part.kind) {
    case "path":
      return { ...part, points: part.points.map(([x, y, z]): Point => [x, -y, z]) };
    case "box":
      return {
        ...part,
        min: [part.min[0], -part.max[1], part.min[2]],
        max: [part.max[0], -part.min[1], part.max[2]],
      };
    case "mesh":
      return { ...part, ...mirroredMesh(part) };
  }
}

/** The mirror image across the center plane, wound the other way so that outside stays outside. */
export function mirroredMesh<
  Mesh extends { readonly positions: Float64Array; readonly triangles: Uint32Array },
>({ positions, triangles }: Mesh): { positions: Float64Array; triangles: Uint32Array } {
  return {
    positions: positions.map((value, i) => (i % 3 === 1 ? -value + 0 : value)),
    triangles: triangles.map((_, i) => triangles[i % 3 === 0 ? i : i % 3 === 1 ? i + 1 : i - 1]!),
  };
}

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
