import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { angleField, lengthField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { LEAST_WITHIN, LEAST_WITHIN_ANGLE } from "../reading/limits.ts";
import {
  type AsBuiltSetup,
  type JigReadings,
  type JigSetup,
  type KnuckleReadings,
  READING_KEYS,
  type ReadingKey,
} from "../types/asBuiltTypes.ts";
import { DEFAULT_READING_ACCURACY } from "../types/defaults.ts";

function readingsField(side: "left" | "right") {
  return block(`what was read off the jig of the ${side} knuckle; what is left out was not read`, {
    front: lengthField(
      "tape in front: from the straightedge on the ball joint line to the one on the hub face, square to the face",
      "positive",
    ).optional(),
    behind: lengthField("tape behind: the same at the mark behind", "positive").optional(),
    faceAngle: angleField(
      "angle finder on the hub face, zeroed on the ball joint line, degrees, + = top of the face leans outboard",
      { above: -45, below: 45 },
    ).optional(),
    faceHeight: lengthField(
      "center of the pin at the hub face, up along the ball joint line from the lower center, or from the jig's table",
    ).optional(),
    pinEndHeight: lengthField("center of the pin at its outer end, read like the face height").optional(),
    lead: lengthField(
      "center of the pin at the hub face ahead of the ball joint line, along the straightedge",
    ).optional(),
    span: lengthField("lower to upper ball joint center", "positive").optional(),
    armAhead: lengthField(
      "outer tie rod end ahead of the ball joint line, along the straightedge; less than 0 is behind",
    ).optional(),
    armOut: lengthField(
      "outer tie rod end outboard of the ball joint line, square to the straightedge",
    ).optional(),
    armUp: lengthField("outer tie rod end, read like the face height").optional(),
    lowerToArm: lengthField(
      "from the lower ball joint center straight to the outer tie rod end",
      "positive",
    ).optional(),
    upperToArm: lengthField(
      "from the upper ball joint center straight to the outer tie rod end",
      "positive",
    ).optional(),
    clampedAt: lengthField(
      "where the straightedge stood when the tapes were read, up along the ball joint line, read like the face height; default pin height, as on the jig sheet",
    ).optional(),
  });
}

const withinField = block("how well the readings are known: one standard deviation", {
  tape: lengthField("a tape or a distance; default 1/64 in", "positive").optional(),
  angle: angleField("the angle finder, degrees; default 0.1", { above: 0, below: 10 }).optional(),
  height: lengthField("a height or place read with rule and square; default 1/64 in", "positive").optional(),
});

/** The knuckles as they came off the jig, as typed. */
export const asBuiltField = block("the knuckles as built: what was read off the jig", {
  left: readingsField("left").optional(),
  right: readingsField("right").optional(),
  within: withinField.optional(),
});

export type AsBuiltAsTyped = z.infer<typeof asBuiltField>;
type ReadingsAsTyped = z.infer<ReturnType<typeof readingsField>>;

/** The readings in mm and radians; null = none, or nothing read yet. Refuses readings that no knuckle can give together. */
export function resolveAsBuilt(
  typed: AsBuiltAsTyped | undefined,
  jig: JigSetup | null,
  reading: BlockReading,
): AsBuiltSetup | null {
  const left = resolveSide(typed?.left, jig, reading.inside("left"));
  const right = resolveSide(typed?.right, jig, reading.inside("right"));
  const within = reading.inside("within");
  const accuracy = {
    tape: within.lengthOr(DEFAULT_READING_ACCURACY.tape, typed?.within?.tape, "tape"),
    angle:
      typed?.within?.angle === undefined ? DEFAULT_READING_ACCURACY.angle : within.angle(typed.within.angle),
    height: within.lengthOr(DEFAULT_READING_ACCURACY.height, typed?.within?.height, "height"),
  };
  for (const [key, least] of [
    ["tape", LEAST_WITHIN],
    ["angle", LEAST_WITHIN_ANGLE],
    ["height", LEAST_WITHIN],
  ] as const)
    if (accuracy[key] < least)
      within.issue(
        [key],
        typed?.within?.[key],
        "is finer than anything a shop reads; give one standard deviation",
      );
  return left === null && right === null ? null : { left, right, within: accuracy };
}

function resolveSide(
  typed: ReadingsAsTyped | undefined,
  jig: JigSetup | null,
  reading: BlockReading,
): KnuckleReadings | null {
  if (typed === undefined) return null;
  const read = READING_KEYS.flatMap((key): [ReadingKey, number][] => {
    const value = typed[key];
    if (value === undefined) return [];
    return [[key, key === "faceAngle" ? reading.angle(value) : reading.length(value, key)]];
  });
  const readings: JigReadings = Object.fromEntries(read);
  refuseImpossible(typed, readings, jig, reading);
  const clampedAt = reading.lengthOr(null, typed.clampedAt, "clampedAt");
  return read.length === 0 ? null : { readings, clampedAt };
}

/** Readings that contradict each other whatever the knuckle is: slips of the hand that no fit can spread out. */
function refuseImpossible(
  typed: ReadingsAsTyped,
  { front, behind, faceHeight, pinEndHeight, span, lowerToArm, upperToArm }: JigReadings,
  jig: JigSetup | null,
  reading: BlockReading,
): void {
  if (jig && front !== undefined && behind !== undefined && Math.abs(behind - front) >= 2 * jig.halfLength)
    reading.issue(
      ["behind"],
      typed.behind,
      "differs from front by more than the marks are apart, which no face can; read both tapes again",
    );
  if (
    jig &&
    faceHeight !== undefined &&
    pinEndHeight !== undefined &&
    Math.abs(pinEndHeight - faceHeight) >= jig.pinEnd
  )
    reading.issue(
      ["pinEndHeight"],
      typed.pinEndHeight,
      "differs from faceHeight by more than the pin is long between them; read both heights again",
    );
  if (span === undefined || lowerToArm === undefined || upperToArm === undefined) return;
  const [short, middle, long] = [span, lowerToArm, upperToArm].sort((a, b) => a - b) as [
    number,
    number,
    number,
  ];
  if (short + middle <= long)
    reading.issue(
      ["upperToArm"],
      typed.upperToArm,
      "makes no triangle with span and lowerToArm: the longest must be less than the other two together; read all three again",
    );
}
