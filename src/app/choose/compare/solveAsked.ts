import {
  POSE_TARGETS,
  type PoseTarget,
  type SolveTarget,
  targetMeasure,
} from "../../../studies/solve/solveTypes.ts";
import { poseNumber } from "../../../studies/solve/targetOf.ts";
import type { WindowField } from "../../../studies/window/windowField.ts";
import { stanceAt, travelText } from "../../../studies/wording/poseWords.ts";
import { onSafeSide, type SafeWay } from "../../../studies/wording/safeSide.ts";
import { degFromRad } from "../../../units/angle.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import type { Truck } from "../../state/truck.ts";
import { typedText } from "./fieldEnds.ts";

type Of = SolveTarget["of"];

/** Steps that an end of a range is typed in, finer than one would: degrees, mm. */
const FINEST = { angle: 1e-4, length: 1e-3 } as const;

/** An end of a range as it is typed, rounded into the range: past its end the file may hold nothing. */
export function exactText(
  { kind }: WindowField,
  value: number,
  { units }: LengthFormat,
  way: SafeWay,
): string {
  const step = FINEST[kind];
  const typed = onSafeSide(kind === "angle" ? degFromRad(value) : value, step, way, 1e-9);
  return kind === "angle"
    ? String(Number(typed.toFixed(4)))
    : plainLengthText(Number(typed.toFixed(3)), units);
}

/** Whether a target is a number at a pose, so wanted at a height. */
export function isOfPose(of: Of): of is PoseTarget {
  return POSE_TARGETS.some((one) => one === of);
}

/** What is wanted. @param value mm or radians @param at mm of travel */
export function targetOf(of: Of, value: number, at: number): SolveTarget {
  if (of === "bumpSteer") return { of };
  // As measured nothing is said of a height.
  if (of === "gap" || at === 0) return { of, value };
  return { of, value, at };
}

/** Heights to choose from: as measured, by its stance's name where it has one, then the others. */
export function heightChoices({ setup }: Truck, format: LengthFormat) {
  const measured = stanceAt(0, setup);
  return [
    { name: null, text: measured === null ? "as measured" : `${measured}, as measured` },
    ...setup.stances
      .filter(({ name }) => name !== measured)
      .map(({ name, travel }) => ({ name, text: `${name}, ${travelText(travel, format)}` })),
  ];
}

/** What is wanted to begin with: what is there now, or the gap the setup keeps. */
export function startText({ model }: Truck, of: Of, at: number, format: LengthFormat): string {
  if (of === "bumpSteer") return "";
  const now = of === "gap" ? model.setup.allowance : poseNumber(model, of, at);
  if (Number.isNaN(now)) return "0";
  return typedText({ kind: targetMeasure({ of }) }, now, format);
}
