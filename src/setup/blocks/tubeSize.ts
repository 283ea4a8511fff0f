import { lengthField } from "../fields/fields.ts";
import type { BlockReading, LengthAsTyped } from "../reading/blockReading.ts";

/** What size a round tube is, as a member of a build and in a catalog. */
export const tubeSizeShape = {
  diameter: lengthField("outside diameter", "positive"),
  wall: lengthField("wall thickness", "positive"),
};

export type TubeSizeAsTyped = Readonly<Record<keyof typeof tubeSizeShape, LengthAsTyped>>;

/** mm; a wall that leaves no bore is an issue. */
export function resolveTubeSize(
  typed: TubeSizeAsTyped,
  reading: BlockReading,
): { readonly diameter: number; readonly wall: number } {
  const diameter = reading.length(typed.diameter, "diameter");
  const wall = reading.length(typed.wall, "wall");
  if (!(wall < diameter / 2))
    reading.issue(["wall"], typed.wall, "must be less than half the diameter; a solid one is of kind bar");
  return { diameter, wall };
}
