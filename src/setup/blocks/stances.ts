import type * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { angleField, lengthField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_STANCES } from "../reading/limits.ts";
import type { MeasuredStance, StanceMeasure } from "../types/floorTypes.ts";
import type { Setup, StanceSetup } from "../types/types.ts";
import { refuseRepeatedNames } from "./variants.ts";

/** Named heights, as typed. */
export const stancesField = list(
  "heights with a name; default none",
  block(
    "a height with a name, by exactly one measure",
    {
      name: textField("name of the stance, unique in the setup"),
      travel: lengthField("wheel travel at this height, + = bump").optional(),
      lowerArmAngle: angleField(
        "lower arm angle in the front view, pivot axis to ball joint against level, degrees, + = ball joint lower than the pivots",
        { above: -80, below: 80 },
      ).optional(),
      airSpringHeight: lengthField(
        "air spring height, mount to mount; needs airSpring",
        "positive",
      ).optional(),
      lipHeight: lengthField("floor to fender lip; needs floor.lip").optional(),
      frameHeight: lengthField("floor to frame; needs floor.frame").optional(),
    },
    {
      oneOf: ["travel", "lowerArmAngle", "airSpringHeight", "lipHeight", "frameHeight"].map((key) => ({
        required: [key],
      })),
    },
  ),
  { most: MAX_STANCES },
);

export type StancesAsTyped = z.infer<typeof stancesField>;

/** Every measure a stance can be given by, the plainest first. */
const MEASURES = ["travel", "lowerArmAngle", "airSpringHeight", "lipHeight", "frameHeight"] as const;

/** Blocks of the setup that a measure needs. */
export interface MeasuredThings {
  readonly airSpring: boolean;
  readonly lip: boolean;
  readonly frame: boolean;
}

/** The stances in mm and radians, those typed by travel apart from those that only the assembled truck can place. */
export function resolveStances(
  typed: StancesAsTyped,
  reading: BlockReading,
): Pick<Setup, "stances" | "measuredStances"> {
  const stances: StanceSetup[] = [];
  const measuredStances: MeasuredStance[] = [];
  for (const [index, stance] of typed.entries()) {
    if (!reading.isSound(index)) continue;
    const { name } = stance;
    const [measure, other] = MEASURES.filter((key) => stance[key] !== undefined);
    if (measure === undefined) {
      reading.issue([index, "travel"], undefined, `required: give one of ${MEASURES.join(", ")}`);
      continue;
    }
    if (other !== undefined) {
      reading.issue(
        [index, other],
        stance[other],
        `give ${measure} or ${other}, not both (in a variant, set the other to null)`,
      );
      continue;
    }
    const as = stance[measure]!;
    if (measure === "travel") stances.push({ name, travel: reading.length(as, index, "travel") });
    else {
      const value = measure === "lowerArmAngle" ? reading.angle(as) : reading.length(as, index, measure);
      measuredStances.push({ name, index, measure, value, typed: as });
    }
  }
  refuseRepeatedNames(typed, reading);
  return { stances, measuredStances };
}

/** What has to be in the setup before a stance can be read by it. */
const NEEDS: Readonly<
  Record<StanceMeasure, { readonly thing: keyof MeasuredThings; readonly mend: string } | null>
> = {
  travel: null,
  lowerArmAngle: null,
  airSpringHeight: { thing: "airSpring", mend: "needs an airSpring block with its mounts" },
  lipHeight: { thing: "lip", mend: "needs floor.lip, the point of the fender lip it is measured at" },
  frameHeight: { thing: "frame", mend: "needs floor.frame, the point of the frame it is measured at" },
};

/** Adds an issue for every stance read by something the setup does not have. @param reading of the stances */
export function refuseUnmeasurable(
  stances: readonly MeasuredStance[],
  things: MeasuredThings,
  reading: BlockReading,
): void {
  for (const { index, measure, typed } of stances) {
    const needs = NEEDS[measure];
    if (needs !== null && !things[needs.thing]) reading.issue([index, measure], typed, needs.mend);
  }
}
