import type * as z from "zod";
import { parseThread } from "../../units/threadCallout.ts";
import { nearestWord } from "../../units/words.ts";
import { block } from "../fields/blockFields.ts";
import { angleField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { DEFAULT_TOE } from "../types/defaults.ts";
import type { AlignmentTargets, Setup, WheelTargets } from "../types/types.ts";

const LEANS = { above: -45, below: 45 };

const wheelTargets = {
  camber: angleField(
    "camber wanted, degrees, + = top leans outward; left out: not asked for",
    LEANS,
  ).optional(),
  caster: angleField(
    "caster wanted, degrees, + = steering axis leans back at the top; left out: not asked for",
    LEANS,
  ).optional(),
  toe: angleField(
    "toe wanted per wheel, degrees, + = toe-in; default the toe as bolted on",
    LEANS,
  ).optional(),
};

const targetsField = block("what alignment is to reach, for both wheels or for each by itself", {
  stance: textField("name of the stance the alignment is set at; default travel 0, as measured").optional(),
  ...wheelTargets,
  left: block("what is wanted differently of the left wheel", wheelTargets).optional(),
  right: block("what is wanted differently of the right wheel", wheelTargets).optional(),
});

/** The static alignment, as typed. */
export const alignmentField = block("static alignment, at travel 0 and steer 0", {
  toe: angleField(
    "toe per wheel as bolted on, degrees, + = toe-in, set by tie rod length; default 0",
    LEANS,
  ).optional(),
  targets: targetsField.optional(),
  sleeveThread: textField(
    "thread of the tie rods' adjusting sleeves, such as 5/8-18, right-hand at one end and left-hand at the other; left out: no turns are given",
  ).optional(),
});

export type AlignmentAsTyped = z.infer<typeof alignmentField>;
type WheelTargetsAsTyped = Pick<z.infer<typeof targetsField>, "camber" | "caster" | "toe">;

/** The alignment in radians, defaults filled in. */
export function resolveAlignment(
  typed: AlignmentAsTyped | undefined,
  reading: BlockReading,
): Setup["alignment"] {
  const toe = typed?.toe === undefined ? DEFAULT_TOE : reading.angle(typed.toe);
  const targets = typed?.targets;
  const sleeve = sleeveOf(typed?.sleeveThread, reading);
  if (targets === undefined) return { toe, targets: null, ...sleeve };
  const both = wheelTargetsOf(targets, { camber: null, caster: null, toe }, reading);
  return {
    toe,
    ...sleeve,
    targets: {
      stance: targets.stance ?? null,
      left: wheelTargetsOf(targets.left ?? {}, both, reading),
      right: wheelTargetsOf(targets.right ?? {}, both, reading),
    },
  };
}

function sleeveOf(
  typed: string | undefined,
  reading: BlockReading,
): Pick<Setup["alignment"], "sleeveThread"> {
  if (typed === undefined) return {};
  const read = parseThread(typed);
  if (read.ok) return { sleeveThread: read.thread };
  reading.issue(["sleeveThread"], typed, read.mend);
  return {};
}

function wheelTargetsOf(
  typed: WheelTargetsAsTyped,
  otherwise: WheelTargets,
  reading: BlockReading,
): WheelTargets {
  return {
    camber: typed.camber === undefined ? otherwise.camber : reading.angle(typed.camber),
    caster: typed.caster === undefined ? otherwise.caster : reading.angle(typed.caster),
    toe: typed.toe === undefined ? otherwise.toe : reading.angle(typed.toe),
  };
}

/** Adds an issue for targets at a stance the setup does not have. @param reading of the alignment block */
export function refuseUnknownStance(
  { stance }: AlignmentTargets,
  names: readonly string[],
  reading: BlockReading,
): void {
  if (stance === null || names.includes(stance)) return;
  const near = nearestWord(stance, names);
  const hint = near === null ? "" : `; did you mean ${JSON.stringify(near)}?`;
  const list =
    names.length === 0
      ? "the setup has none"
      : `there are ${names.map((name) => JSON.stringify(name)).join(", ")}`;
  reading.issue(["targets", "stance"], stance, `no such stance${hint}; ${list}`);
}
