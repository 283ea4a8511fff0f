import type { BodyPart, Point } from "../../setup/types/truckTypes.ts";

/** The points that a part was given by, one after another: a scan has too many to list. */
export function* partPoints(part: BodyPart): Generator<Point> {
  if (part.kind === "path") yield* part.points;
  else if (part.kind === "box") yield* [part.min, part.max];
  else {
    const { positions } = part;
    for (let i = 0; i < positions.length; i += 3) yield [positions[i]!, positions[i + 1]!, positions[i + 2]!];
  }
}

/** Whether a part of the right side alone was typed where it stands (y < 0), and so is not to be mirrored. */
export function standsAsTyped(part: BodyPart): boolean {
  if (part.side !== "right") return false;
  let sum = 0;
  for (const point of partPoints(part)) sum += point[1];
  return sum < 0;
}
