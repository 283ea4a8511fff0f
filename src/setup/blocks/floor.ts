import type * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { choiceField, pointField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { DEFAULT_REAR, DEFAULT_SIDE } from "../types/defaults.ts";
import type { FloorSetup } from "../types/floorTypes.ts";
import { refuseRepeatedNames } from "./repeatedNames.ts";

/** How the truck is measured to the floor, as typed. */
export const floorField = block("where the truck is measured to the floor, and what may drag on it", {
  rear: choiceField(
    "what the rear does as the front goes up and down: follows it, so that the truck stays level, or stays at its measured height; default follows",
    ["follows", "stays"],
  ).optional(),
  lip: pointField(
    "where floor to fender lip is measured, left side, vehicle axes; left out: not measured",
  ).optional(),
  frame: pointField(
    "where floor to frame is measured, left side, vehicle axes; left out: not measured",
  ).optional(),
  points: list(
    "points of the truck that may drag; default none",
    block("a point that may drag", {
      name: textField("name of the point, unique in the block"),
      at: pointField("where it is, vehicle axes, left side"),
      side: choiceField("which side has it; default both", ["both", "left", "right"]).optional(),
    }),
  ).optional(),
});

export type FloorAsTyped = z.infer<typeof floorField>;

/** The block in mm, defaults filled in; null = the setup has none. @param hasWheelbase the truck's is given */
export function resolveFloor(
  typed: FloorAsTyped | undefined,
  reading: BlockReading,
  hasWheelbase: boolean,
): FloorSetup | null {
  if (typed === undefined) return null;
  const { rear = DEFAULT_REAR, lip, frame, points = [] } = typed;
  if (rear === "stays" && !hasWheelbase)
    reading.issue(["rear"], rear, "needs truck.wheelbase: the truck pitches about its rear axle");
  refuseRepeatedNames(points, reading.inside("points"));
  return {
    rear,
    lip: lip === undefined ? null : reading.point(lip, "lip"),
    frame: frame === undefined ? null : reading.point(frame, "frame"),
    points: points.map(({ name, at, side = DEFAULT_SIDE }, i) => ({
      name,
      side,
      at: reading.point(at, "points", i, "at"),
    })),
  };
}
