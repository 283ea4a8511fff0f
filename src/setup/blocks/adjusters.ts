import * as z from "zod";
import { block, oneOfBlocks } from "../fields/blockFields.ts";
import { choiceField, lengthField, numbersField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { unitOf } from "../reading/pointMath.ts";
import {
  DEFAULT_ARM_STEP,
  DEFAULT_ECCENTRIC_DIRECTION,
  DEFAULT_SHIM_DIRECTION,
  DEFAULT_SHIM_STEP,
} from "../types/defaults.ts";
import type { Point } from "../types/truckTypes.ts";
import type { AdjustersSetup } from "../types/types.ts";

const DIRECTION = "a direction of three numbers, [x, y, z]";

const shimsField = block("shim stacks at the upper arm's front and rear pivots", {
  kind: z.literal("shims").meta({ description: "shim stacks at the upper arm's pivots" }),
  direction: numbersField(
    "which way a shim put in moves the pivot, vehicle axes, left side, any length; default inboard, [0, -1, 0]",
    DIRECTION,
  ).optional(),
  front: lengthField(
    "front stack as bolted on, when the truck was measured; default 0",
    "notNegative",
  ).optional(),
  rear: lengthField(
    "rear stack as bolted on, when the truck was measured; default 0",
    "notNegative",
  ).optional(),
  least: lengthField("thinnest stack; default 0", "notNegative").optional(),
  most: lengthField("thickest stack that still leaves full thread for the nut", "positive"),
  step: lengthField(
    "thinnest shim on the shelf, the step of a stack; default 1/32 in",
    "positive",
  ).optional(),
});

const eccentricField = block("eccentrics at both pivots of an arm", {
  kind: z.literal("eccentric").meta({ description: "eccentrics at an arm's pivots" }),
  arm: choiceField("the arm whose pivots have eccentrics", ["upper", "lower"]),
  throw: lengthField("how far an eccentric moves its pivot to either side of the middle", "positive"),
  direction: numbersField(
    "which way + moves the pivot, vehicle axes, left side, any length; default outboard, [0, 1, 0]",
    DIRECTION,
  ).optional(),
  front: lengthField("front pivot from the middle as bolted on; default 0").optional(),
  rear: lengthField("rear pivot from the middle as bolted on; default 0").optional(),
});

const adjustableArmField = block("an upper arm of adjustable length, its legs threaded", {
  kind: z.literal("adjustableUpperArm").meta({ description: "an upper arm of adjustable length" }),
  legs: choiceField("whether front and rear leg are set each by itself or only together; default each", [
    "each",
    "together",
  ]).optional(),
  shorter: lengthField("how much shorter than measured a leg can be set", "notNegative"),
  longer: lengthField("how much longer than measured a leg can be set", "notNegative"),
  step: lengthField("what the smallest usable turn changes a leg by; default 1/32 in", "positive").optional(),
});

/** What the alignment is set with besides the tie rods, as typed. */
export const adjustersField = oneOfBlocks(
  "what camber and caster are set with, the same on both sides; toe is set with the tie rods on every truck",
  "kind",
  ["shims", "eccentric", "adjustableUpperArm"],
  [shimsField, eccentricField, adjustableArmField],
);

export type AdjustersAsTyped = z.infer<typeof adjustersField>;

/** The adjusters in mm, defaults filled in; null = the setup has none. */
export function resolveAdjusters(
  typed: AdjustersAsTyped | undefined,
  reading: BlockReading,
): AdjustersSetup | null {
  if (typed === undefined) return null;
  switch (typed.kind) {
    case "shims":
      return resolveShims(typed, reading);
    case "eccentric":
      return resolveEccentric(typed, reading);
    case "adjustableUpperArm":
      return {
        kind: "adjustableUpperArm",
        legs: typed.legs ?? "each",
        shorter: reading.length(typed.shorter, "shorter"),
        longer: reading.length(typed.longer, "longer"),
        step: reading.lengthOr(DEFAULT_ARM_STEP, typed.step, "step"),
      };
  }
}

function resolveShims(typed: z.infer<typeof shimsField>, reading: BlockReading): AdjustersSetup {
  const least = reading.lengthOr(0, typed.least, "least");
  const most = reading.length(typed.most, "most");
  const step = reading.lengthOr(DEFAULT_SHIM_STEP, typed.step, "step");
  if (!(most > least)) reading.issue(["most"], typed.most, "must be more than least");
  const stack = (key: "front" | "rear") => {
    const now = reading.lengthOr(0, typed[key], key);
    if (now < least || now > most) reading.issue([key], typed[key] ?? 0, "must lie between least and most");
    return now;
  };
  const direction = directionOf(typed.direction, DEFAULT_SHIM_DIRECTION, reading);
  return { kind: "shims", direction, front: stack("front"), rear: stack("rear"), least, most, step };
}

function resolveEccentric(typed: z.infer<typeof eccentricField>, reading: BlockReading): AdjustersSetup {
  const reach = reading.length(typed.throw, "throw");
  const place = (key: "front" | "rear") => {
    const now = reading.lengthOr(0, typed[key], key);
    if (Math.abs(now) > reach)
      reading.issue([key], typed[key], "must be no farther from the middle than throw");
    return now;
  };
  const direction = directionOf(typed.direction, DEFAULT_ECCENTRIC_DIRECTION, reading);
  return {
    kind: "eccentric",
    arm: typed.arm,
    throw: reach,
    direction,
    front: place("front"),
    rear: place("rear"),
  };
}

function directionOf(typed: Point | undefined, otherwise: Point, reading: BlockReading): Point {
  const unit = unitOf(typed ?? otherwise);
  if (unit !== null) return unit;
  reading.issue(["direction"], typed, "has no direction; inboard is [0, -1, 0]");
  return otherwise;
}
