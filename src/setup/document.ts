import * as z from "zod";
import { adjustersField } from "./blocks/adjusters.ts";
import { airSpringField } from "./blocks/airSpring.ts";
import { alignmentField } from "./blocks/alignment.ts";
import { asBuiltField } from "./blocks/asBuilt.ts";
import { buildField } from "./blocks/build.ts";
import { confirmedField, fromExampleField } from "./blocks/confirmed.ts";
import { floorField, massesField, rollField } from "./blocks/floor.ts";
import { hardwareField } from "./blocks/hardware.ts";
import { jigField } from "./blocks/jig.ts";
import { knuckleField } from "./blocks/knuckle.ts";
import { limitsField } from "./blocks/limits.ts";
import { loadsField } from "./blocks/loads.ts";
import { oddsField } from "./blocks/odds.ts";
import { orderField } from "./blocks/order/order.ts";
import { posesField } from "./blocks/poses.ts";
import { readingsField } from "./blocks/readings/readings.ts";
import { stancesField } from "./blocks/stances.ts";
import { tireField } from "./blocks/tire.ts";
import { travelField, truckField } from "./blocks/truck.ts";
import { variantsField } from "./blocks/variants.ts";
import { wheelField } from "./blocks/wheel.ts";
import { block } from "./fields/blockFields.ts";
import { choiceField, lengthField, textField } from "./fields/fields.ts";

/** The version of the setup file this program reads and writes. */
const SETUP_VERSION = 1;

/**
 * The setup file as typed: the one source of the types, the JSON Schema and the checks of single fields. A new
 * block is a file in `blocks` with its field and its `resolve…`, one line here and one in `resolveDocument.ts`.
 */
export const setupDocument = block("one truck with one knuckle, wheel and tire, and named variants of it", {
  $schema: z
    .string({ error: "must be text in double quotes" })
    .meta({ description: "the JSON Schema of this file" })
    .optional(),
  format: choiceField('what this file is: "wellsweep-setup"', ["wellsweep-setup"]),
  version: z
    .literal(SETUP_VERSION, {
      error: ({ input }) =>
        input === undefined
          ? `required: version of the format, ${SETUP_VERSION}`
          : `must be ${SETUP_VERSION}, the only version this program reads`,
    })
    .meta({ description: "version of the format" }),
  name: textField('what the setup is called; default "Untitled setup"').optional(),
  units: choiceField("unit of bare lengths in this file", ["in", "mm"]),
  truck: truckField,
  knuckle: knuckleField,
  build: buildField.optional(),
  wheel: wheelField,
  tire: tireField,
  hardware: hardwareField.optional(),
  alignment: alignmentField.optional(),
  adjusters: adjustersField.optional(),
  limits: limitsField.optional(),
  airSpring: airSpringField.optional(),
  masses: massesField.optional(),
  loads: loadsField.optional(),
  travel: travelField,
  stances: stancesField.optional(),
  poses: posesField.optional(),
  roll: rollField.optional(),
  floor: floorField.optional(),
  order: orderField.optional(),
  allowance: lengthField(
    "the gap the shop wants to keep; less counts as close; default 1/4 in",
    "notNegative",
  ).optional(),
  jig: jigField.optional(),
  odds: oddsField.optional(),
  asBuilt: asBuiltField.optional(),
  readings: readingsField.optional(),
  fromExample: fromExampleField.optional(),
  confirmed: confirmedField.optional(),
  variants: variantsField.optional(),
});

/** A setup file's JSON as typed, nothing lost. */
export type SetupDocument = z.infer<typeof setupDocument>;
