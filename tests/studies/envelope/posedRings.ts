import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";
import type { EnvelopeRange } from "../../../src/studies/envelope/envelopeRange.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { surfaceQuery } from "../../reference/mesh/surfaceQuery.ts";
import { aboutAxis, type WheelCase } from "../../reference/referenceRing.ts";
import { sectionDistance } from "../../reference/sectionDistance.ts";

/** Left wheels of a range, `rows` heights × `columns` steers, ends included; those out of reach left out. */
export function posedWheels(model: Model, range: EnvelopeRange, rows: number, columns: number): WheelCase[] {
  const at = (low: number, high: number, i: number, count: number) =>
    count === 1 ? low : low + ((high - low) * i) / (count - 1);
  const wheels: WheelCase[] = [];
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      const pose = solvePose(
        model.frontEnd,
        at(range.travelLow, range.travelHigh, i, rows),
        at(range.steerLow, range.steerHigh, j, columns),
      );
      if (pose.ok) wheels.push({ center: pose.left.wheelCenter, axis: pose.left.wheelAxis });
    }
  }
  return wheels;
}

/**
 * How deep corners, middles and middles of the edges of every `stride`th triangle lie in the deepest of the posed
 * rings about them, mm; 0 when all lie outside.
 */
export function deepestInRings(
  model: Model,
  wheels: readonly WheelCase[],
  { positions, triangles }: TriangleMesh,
  stride: number,
): number {
  const { outline } = model.ring;
  const xLow = Math.min(...outline.map(([x]) => x));
  const xHigh = Math.max(...outline.map(([x]) => x));
  const rLow = Math.min(...outline.map(([, r]) => r));
  const rHigh = Math.max(...outline.map(([, r]) => r));
  let deepest = 0;
  const look = (x: number, y: number, z: number) => {
    for (const { center, axis } of wheels) {
      const dx = x - center[0];
      const dy = y - center[1];
      const dz = z - center[2];
      const along = dx * axis[0] + dy * axis[1] + dz * axis[2];
      // Ruled out without a look: what lies in no deeper than found cannot be within this of the box's faces.
      if (along < xLow + deepest || along > xHigh - deepest) continue;
      const r = Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - along * along));
      if (r < rLow + deepest || r > rHigh - deepest) continue;
      deepest = Math.max(deepest, -sectionDistance(outline, along, r));
    }
  };
  for (let t = 0; t < triangles.length; t += 3 * stride) {
    for (const [a, b, c] of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0.5, 0.5, 0],
      [0, 0.5, 0.5],
      [0.5, 0, 0.5],
      [1 / 3, 1 / 3, 1 / 3],
    ] as const) {
      const [i, j, k] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
      look(
        a * positions[i]! + b * positions[j]! + c * positions[k]!,
        a * positions[i + 1]! + b * positions[j + 1]! + c * positions[k + 1]!,
        a * positions[i + 2]! + b * positions[j + 2]! + c * positions[k + 2]!,
      );
    }
  }
  return deepest;
}

/** Most that corners and middles of the rings' outlines, `turns` about each wheel, lie outside a surface, mm. */
export function mostOutsideSurface(
  model: Model,
  wheels: readonly WheelCase[],
  mesh: TriangleMesh,
  turns: number,
): number {
  const surface = surfaceQuery(mesh);
  const { outline } = model.ring;
  let most = 0;
  for (const wheel of wheels) {
    outline.forEach(([x0, r0], i) => {
      const [x1, r1] = outline[(i + 1) % outline.length]!;
      for (const share of [0, 0.5]) {
        for (let k = 0; k < turns; k++) {
          const point = aboutAxis(
            wheel,
            x0 + share * (x1 - x0),
            r0 + share * (r1 - r0),
            (2 * Math.PI * (k + share)) / turns,
          );
          if (!surface.isInside(point)) most = Math.max(most, surface.distance(point));
        }
      }
    });
  }
  return most;
}
