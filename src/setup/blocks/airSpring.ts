import * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { lengthField, pointField, quantityField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { AirSpringSetup } from "../types/airTypes.ts";
import { DEFAULT_AIR_EXPONENT, DEFAULT_ATMOSPHERE } from "../types/defaults.ts";
import { airCurveField, resolveAirCurve } from "./airSpringCurve.ts";

/** The air spring, as typed. Height is mount to mount; pressures are gauge but for the atmosphere. */
export const airSpringField = block(
  "the air spring between the body and the lower arm; its height is the distance between its mounts",
  {
    bodyMount: pointField("center of the mount on the body, vehicle axes"),
    armMount: pointField("center of the mount on the lower arm, vehicle axes as measured"),
    leastHeight: lengthField("height below which it bottoms; not checked without it", "positive").optional(),
    greatestHeight: lengthField(
      "height above which it is overextended; not checked without it",
      "positive",
    ).optional(),
    leastPressure: quantityField(
      "least gauge pressure the maker allows under load; not checked without it",
      "pressure",
      "notNegative",
    ).optional(),
    greatestPressure: quantityField(
      "greatest gauge pressure the maker allows; not checked without it",
      "pressure",
    ).optional(),
    diameter: lengthField(
      "diameter at its widest, pumped up; measured against the wheel as a round body about the line between its mounts, its ends rounded beyond them; not measured without it",
      "positive",
    ).optional(),
    curve: airCurveField.optional(),
    volume: block("the air closed in at one height, with any reservoir that stays open to it", {
      height: lengthField("height of the spring there", "positive"),
      volume: quantityField("volume of the air", "volume"),
    }).optional(),
    exponent: z
      .number({ error: "must be a number from 1 to 1.4" })
      .min(1, { error: "must be a number from 1 to 1.4" })
      .max(1.4, { error: "must be a number from 1 to 1.4" })
      .meta({ description: "n of the gas law p × V^n = constant, absolute pressure; default 1.38" })
      .optional(),
    atmosphere: quantityField(
      "absolute pressure of the air outside; default that of sea level, 14.696 psi",
      "pressure",
    ).optional(),
  },
);

export type AirSpringAsTyped = z.infer<typeof airSpringField>;

/** The block in mm, N and MPa, defaults filled in; null = the setup has none. */
export function resolveAirSpring(
  typed: AirSpringAsTyped | undefined,
  reading: BlockReading,
): AirSpringSetup | null {
  if (typed === undefined) return null;
  const pressure = (value: number | string | undefined) =>
    value === undefined ? null : reading.quantity(value, "pressure");
  const leastHeight = reading.lengthOr(null, typed.leastHeight, "leastHeight");
  const greatestHeight = reading.lengthOr(null, typed.greatestHeight, "greatestHeight");
  const leastPressure = pressure(typed.leastPressure);
  const greatestPressure = pressure(typed.greatestPressure);
  if (leastHeight !== null && greatestHeight !== null && !(greatestHeight > leastHeight))
    reading.issue(["greatestHeight"], typed.greatestHeight, "must be more than leastHeight");
  if (leastPressure !== null && greatestPressure !== null && !(greatestPressure > leastPressure))
    reading.issue(["greatestPressure"], typed.greatestPressure, "must be more than leastPressure");
  const { curve, volume } = typed;
  return {
    bodyMount: reading.point(typed.bodyMount, "bodyMount"),
    armMount: reading.point(typed.armMount, "armMount"),
    leastHeight,
    greatestHeight,
    leastPressure,
    greatestPressure,
    diameter: reading.lengthOr(null, typed.diameter, "diameter"),
    curve: curve ? resolveAirCurve(curve, reading.inside("curve")) : null,
    volume: volume
      ? {
          height: reading.length(volume.height, "volume", "height"),
          volume: reading.quantity(volume.volume, "volume"),
        }
      : null,
    exponent: typed.exponent ?? DEFAULT_AIR_EXPONENT,
    atmosphere: pressure(typed.atmosphere) ?? DEFAULT_ATMOSPHERE,
  };
}
