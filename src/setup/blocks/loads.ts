import * as z from "zod";
import { block, list, oneOfBlocks } from "../fields/blockFields.ts";
import { choiceField, lengthField, pointField, quantityField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_LOAD_CASES, MAX_MULTIPLE, MIN_SEPARATION } from "../reading/limits.ts";
import { difference, norm } from "../reading/pointMath.ts";
import { DEFAULT_LOAD_CASES } from "../types/defaultLoadCases.ts";
import { DEFAULT_LOAD_PLACE, DEFAULT_SPRING_ARM, DEFAULT_WHEEL_STATE } from "../types/defaults.ts";
import type { LimitsSetup } from "../types/limitsTypes.ts";
import type { BumpStopSetup, LoadCase, LoadsSetup, PusherSetup } from "../types/loadsTypes.ts";
import { refuseRepeatedNames } from "./variants.ts";

const DIRECTIONS = ["forward", "outboard", "up"] as const;

const SHARED = {
  at: choiceField("where it meets the wheel; default contactPatch", [
    "contactPatch",
    "wheelCenter",
  ]).optional(),
  wheel: choiceField(
    "whether the wheel rolls free or is held by its brake, so that the caliper takes its torque; default rolls",
    ["rolls", "braked"],
  ).optional(),
  travel: lengthField("the only travel it happens at; left out: looked at over all travel").optional(),
  steer: z
    .number({ error: "must be a number from -1 to 1" })
    .min(-1, { error: "must be a number from -1 to 1" })
    .max(1, { error: "must be a number from -1 to 1" })
    .meta({ description: "the only steering input it happens at; left out: looked at from lock to lock" })
    .optional(),
};

const MULTIPLE_MEND = `must be a number from -${MAX_MULTIPLE} to ${MAX_MULTIPLE}`;

const multiple = (direction: string) =>
  z
    .number({ error: MULTIPLE_MEND })
    .min(-MAX_MULTIPLE, { error: MULTIPLE_MEND })
    .max(MAX_MULTIPLE, { error: MULTIPLE_MEND })
    .meta({ description: `force on the wheel, + = ${direction}, in multiples of masses.corner; default 0` })
    .optional();

const force = (direction: string) =>
  quantityField(`force on the wheel, + = ${direction}; default 0`, "load", "any").optional();

const caseField = oneOfBlocks(
  "one load on one wheel",
  "kind",
  ["multiples", "force"],
  [
    block("a load in multiples of the corner's weight", {
      kind: z.literal("multiples").meta({ description: "multiples of the corner's weight" }),
      name: textField("name of the case, unique in the block"),
      forward: multiple("forward"),
      outboard: multiple("outboard"),
      up: multiple("up"),
      ...SHARED,
    }),
    block("a load by its force", {
      kind: z.literal("force").meta({ description: "a force" }),
      name: textField("name of the case, unique in the block"),
      forward: force("forward"),
      outboard: force("outboard"),
      up: force("up"),
      ...SHARED,
    }),
  ],
);

const PUSHER = {
  on: choiceField("which arm it stands on; default lowerArm", ["lowerArm", "upperArm"]).optional(),
  bodyMount: pointField("center of the mount on the body, vehicle axes"),
  armMount: pointField("center of the mount on the arm, vehicle axes as measured"),
};

/** What the front end has to carry, as typed. */
export const loadsField = block("what the front end has to carry, and what carries it", {
  cases: list(
    "loads on one wheel; default standing, bump, cornering, braking, braking in a turn, curb strike and one-wheel landing",
    caseField,
    { least: 1, most: MAX_LOAD_CASES },
  ).optional(),
  spring: block(
    "the spring by its mounts: it pushes along the line between them; default the air spring's",
    PUSHER,
  ).optional(),
  bumpStop: block("the bump stop as something that carries; left out: the spring takes it all", {
    ...PUSHER,
    from: lengthField("travel at which it is met; default that of limits.bumpStop").optional(),
    springLoad: quantityField(
      "what the spring carries while the stop is met; default what carries the corner standing at that height",
      "load",
      "notNegative",
    ).optional(),
  }).optional(),
});

export type LoadsAsTyped = z.infer<typeof loadsField>;

/** The block in mm and N, defaults filled in; null = the setup has none. */
export function resolveLoads(
  typed: LoadsAsTyped | undefined,
  reading: BlockReading,
  limits: LimitsSetup | null,
): LoadsSetup | null {
  if (typed === undefined) return null;
  const { cases, spring, bumpStop } = typed;
  if (cases?.length === 0)
    reading.issue(["cases"], cases, "must have at least one case; leave it out for the usual ones");
  refuseRepeatedNames(cases ?? [], reading.inside("cases"));
  return {
    cases: cases?.map((one, i) => resolveCase(one, reading.inside("cases", i))) ?? DEFAULT_LOAD_CASES,
    spring: spring ? resolvePusher(spring, reading.inside("spring")) : null,
    bumpStop: bumpStop ? resolveBumpStop(bumpStop, reading.inside("bumpStop"), limits) : null,
  };
}

function resolveCase(typed: z.infer<typeof caseField>, reading: BlockReading): LoadCase {
  const [forward, outboard, up] = DIRECTIONS.map((key) => {
    const value = typed[key] ?? 0;
    return typed.kind === "force" ? reading.quantity(value, "load") : Number(value);
  }) as [number, number, number];
  if (forward === 0 && outboard === 0 && up === 0)
    reading.issue([], typed.name, "has no load; give it forward, outboard or up");
  return {
    name: typed.name,
    kind: typed.kind,
    forward,
    outboard,
    up,
    at: typed.at ?? DEFAULT_LOAD_PLACE,
    wheel: typed.wheel ?? DEFAULT_WHEEL_STATE,
    travel: reading.lengthOr(null, typed.travel, "travel"),
    steer: typed.steer ?? null,
  };
}

function resolvePusher(
  { on, ...typed }: NonNullable<LoadsAsTyped["spring"]>,
  reading: BlockReading,
): PusherSetup {
  const bodyMount = reading.point(typed.bodyMount, "bodyMount");
  const armMount = reading.point(typed.armMount, "armMount");
  if (!(norm(difference(armMount, bodyMount)) >= MIN_SEPARATION))
    reading.issue(
      ["armMount"],
      typed.armMount,
      "must be at least 1 mm from bodyMount: the line between them is its line of push",
    );
  return { on: on ?? DEFAULT_SPRING_ARM, bodyMount, armMount };
}

function resolveBumpStop(
  typed: NonNullable<LoadsAsTyped["bumpStop"]>,
  reading: BlockReading,
  limits: LimitsSetup | null,
): BumpStopSetup {
  const from = reading.lengthOr(limits?.bumpStop ?? null, typed.from, "from");
  if (from === null)
    reading.issue(
      ["from"],
      undefined,
      "required: travel at which it is met, here or as limits.bumpStop.travel",
    );
  return {
    ...resolvePusher(typed, reading),
    from: from ?? 0,
    springLoad: typed.springLoad === undefined ? null : reading.quantity(typed.springLoad, "load"),
  };
}
