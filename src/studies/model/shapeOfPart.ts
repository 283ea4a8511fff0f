import { type PartShape, partShapeOf } from "../../gaps/partShape.ts";
import type { BodyPart } from "../../setup/types/types.ts";

const known = new WeakMap<BodyPart, Map<boolean, PartShape>>();

/**
 * The part cut into cells, as `partShapeOf`, once for each part and hand: the parts of a setup are never changed in place,
 * and a scanned fender takes a while to cut up.
 */
export function shapeOfPart(part: BodyPart, mirrored: boolean): PartShape {
  const shapes = known.get(part) ?? new Map<boolean, PartShape>();
  known.set(part, shapes);
  const shape = shapes.get(mirrored) ?? partShapeOf(part, mirrored);
  shapes.set(mirrored, shape);
  return shape;
}
