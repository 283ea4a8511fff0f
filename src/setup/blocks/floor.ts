import type * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import {
  angleField,
  choiceField,
  lengthField,
  pointField,
  quantityField,
  textField,
} from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { MassesSetup } from "../types/airTypes.ts";
import { DEFAULT_REAR, DEFAULT_SIDE } from "../types/defaults.ts";
import type { FloorSetup, RollSetup } from "../types/floorTypes.ts";
import { refuseRepeatedNames } from "./variants.ts";

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

/** What the body does over its front wheels, as typed. */
export const rollField = block("body roll and one wheel over a curb, to be checked at every stance", {
  most: angleField("body roll each way to be checked, degrees", { above: 0, below: 45 }),
  curb: lengthField(
    "how far one wheel alone is lifted above the stance, such as over a curb; left out: not checked",
    "positive",
  ).optional(),
});

export type RollAsTyped = z.infer<typeof rollField>;

/** The block in mm and radians; null = the setup has none. */
export function resolveRoll(typed: RollAsTyped | undefined, reading: BlockReading): RollSetup | null {
  if (typed === undefined) return null;
  return { most: reading.angle(typed.most), curb: reading.lengthOr(null, typed.curb, "curb") };
}

/** Weights at the front wheels, as typed. */
export const massesField = block("weights at the front wheels", {
  corner: quantityField("what a scale under the left front wheel shows at the measured height", "weight"),
  cornerRight: quantityField("the same under the right front wheel; default as corner", "weight").optional(),
  unsprung: quantityField(
    "what of it does not ride on the spring, each side: wheel, tire, brake, knuckle and about half the arms",
    "weight",
    "notNegative",
  ),
});

export type MassesAsTyped = z.infer<typeof massesField>;

/** The block in kg; null = the setup has none. */
export function resolveMasses(typed: MassesAsTyped | undefined, reading: BlockReading): MassesSetup | null {
  if (typed === undefined) return null;
  const corner = reading.quantity(typed.corner, "weight");
  const cornerRight =
    typed.cornerRight === undefined ? corner : reading.quantity(typed.cornerRight, "weight");
  const unsprung = reading.quantity(typed.unsprung, "weight");
  if (!(unsprung < Math.min(corner, cornerRight)))
    reading.issue(
      ["unsprung"],
      typed.unsprung,
      "must be less than corner: the rest of it rides on the spring",
    );
  return { corner, cornerRight, unsprung };
}
