import type { BodyPart, Point } from "../../setup/types.ts";

/** The points that a part was given by. */
export function partPoints(part: BodyPart): readonly Point[] {
  if (part.kind === "path") return part.points;
  return part.kind === "box" ? [part.min, part.max] : part.vertices;
}

/** Whether a part of the right side alone was typed where it stands (y < 0), and so is not to be mirrored. */
export function standsAsTyped(part: BodyPart): boolean {
  return part.side === "right" && partPoints(part).reduce((sum, point) => sum + point[1], 0) < 0;
}
