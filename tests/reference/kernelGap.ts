import { GAP, GAP_ROW, partGapTo } from "../../src/gaps/partGap.ts";
import { type PartInput, partShapeOf } from "../../src/gaps/partShape.ts";
import { type RingShape, ringShapeOf } from "../../src/gaps/ring/ringShape.ts";
import { type Vec3, vecAt } from "../../src/geometry/vec.ts";
import { type RingCase, type WheelCase, wheelRow } from "./referenceRing.ts";

/** What the kernel says: the thing under test. */
export interface KernelGap {
  readonly gap: number;
  readonly point: Vec3;
  readonly onRing: Vec3;
}

const shapes = new WeakMap<RingCase, RingShape>();

export function shapeOf(ring: RingCase): RingShape {
  let shape = shapes.get(ring);
  if (shape === undefined) {
    shape = ringShapeOf(ring.profile.flat(), ring.barrelRadius);
    shapes.set(ring, shape);
  }
  return shape;
}

/** Gap of a part to a ring at one pose, left-hand frame, mm. */
export function kernelGap(ring: RingCase, wheel: WheelCase, part: PartInput, mirrored = false): KernelGap {
  const row = new Float64Array(GAP_ROW);
  const gap = partGapTo(row, 0, shapeOf(ring), wheelRow(wheel), 0, partShapeOf(part, mirrored));
  return { gap, point: vecAt(row, GAP.point), onRing: vecAt(row, GAP.onRing) };
}

/** A path of one point: a ball. */
export function ball(center: Vec3, radius = 0): PartInput {
  return { name: "ball", kind: "path", radius, points: [center] };
}
