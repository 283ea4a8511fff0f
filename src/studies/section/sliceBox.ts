import type { Vec3 } from "../../geometry/vec.ts";
import type { Outline } from "./outline.ts";
import { type SectionPlane, sheetAxes } from "./sectionPlane.ts";

/** Cuts a box aligned with the axes: a rectangle, or nothing. Its lower face belongs to it, its upper face not. */
export function sliceBox(min: Vec3, max: Vec3, plane: SectionPlane): Outline[] {
  const { normal, right, up } = sheetAxes(plane);
  if (!(plane.at >= min[normal] && plane.at < max[normal])) return [];
  const [left, low, far, high] = [min[right], min[up], max[right], max[up]];
  return [{ points: Float64Array.of(left, low, far, low, far, high, left, high), closed: true }];
}
