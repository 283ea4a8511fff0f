import type * as z from "zod";
import { block, list } from "../../fields/blockFields.ts";
import { lengthField, pointField, textField } from "../../fields/fields.ts";
import type { BlockReading } from "../../reading/blockReading.ts";
import type { Chosen, OrderedBrake } from "../../types/orderTypes.ts";
import type { Point } from "../../types/truckTypes.ts";
import { boltPatternField, boltPatternOf, threadField, threadOf } from "./boltedNotations.ts";

/** Holes of a caliper bracket: there are two to four; more is a slip. */
const MAX_HOLES = 12;

/** What a brake is, in an order and in a catalog. */
export const brakeShape = {
  rotorDiameter: lengthField("outer diameter of the rotor", "positive").optional(),
  rotorThickness: lengthField("thickness of the rotor across both faces", "positive").optional(),
  hatOffset: lengthField("from the seat of the rotor's hat inboard to the rotor's outboard face").optional(),
  hatRegister: lengthField(
    "bore of the hat that centers the rotor on the hub's register",
    "positive",
  ).optional(),
  boltPattern: boltPatternField("holes of the rotor's hat, such as 5x5").optional(),
  caliper: block(
    "the caliper with its bracket as a box, in seat axes: origin at the middle of the rotor's seat on the hub, x forward, y outboard along the pin, z up across it",
    {
      min: pointField("corner with the least x, y and z"),
      max: pointField("corner with the greatest x, y and z"),
    },
  ).optional(),
  bracketHoles: list(
    "holes that the caliper's bracket is bolted to, in seat axes",
    pointField("center of one hole where it meets the bracket"),
    { most: MAX_HOLES },
  ).optional(),
  bracketThread: threadField("thread in the bracket holes, such as 1/2-20").optional(),
  leastRim: lengthField("least rim diameter the brake is made for", "positive").optional(),
};

/** The brake of an order, as typed. */
export const brakeField = block(
  "the brake the knuckle is made for; writes hardware.rotor and hardware.caliper",
  {
    item: textField("name of a brake in the catalog; numbers given here go before its own").optional(),
    ...brakeShape,
  },
);

type BrakeAsTyped = z.infer<typeof brakeField>;

/** mm. Refuses a caliper whose corners are the wrong way round. */
export function resolveBrake(typed: Omit<BrakeAsTyped, "item">, reading: BlockReading): OrderedBrake {
  const { caliper, bracketHoles } = typed;
  return {
    rotorDiameter: reading.sizeOr(null, typed.rotorDiameter, "rotorDiameter"),
    rotorThickness: reading.sizeOr(null, typed.rotorThickness, "rotorThickness"),
    hatOffset: reading.lengthOr(null, typed.hatOffset, "hatOffset"),
    hatRegister: reading.lengthOr(null, typed.hatRegister, "hatRegister"),
    boltPattern: boltPatternOf(typed.boltPattern),
    caliper: caliper === undefined ? null : boxOf(caliper, reading.inside("caliper")),
    bracketHoles: bracketHoles?.map((hole, i) => reading.point(hole, "bracketHoles", i)) ?? null,
    bracketThread: threadOf(typed.bracketThread),
    leastRim: reading.lengthOr(null, typed.leastRim, "leastRim"),
  };
}

/** The same with its catalog name. */
export function resolveChosenBrake(typed: BrakeAsTyped = {}, reading: BlockReading): Chosen<OrderedBrake> {
  return { ...resolveBrake(typed, reading), item: typed.item ?? null };
}

function boxOf(
  typed: NonNullable<BrakeAsTyped["caliper"]>,
  reading: BlockReading,
): { readonly min: Point; readonly max: Point } {
  const min = reading.point(typed.min, "min");
  const max = reading.point(typed.max, "max");
  for (const axis of [0, 1, 2] as const) {
    if (min[axis] < max[axis]) continue;
    reading.issue(["max", axis], typed.max[axis], `must be more than min[${axis}]`);
  }
  return { min, max };
}
