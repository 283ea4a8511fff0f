import type { ApartPose, SolvedPose } from "../../suspension/solvePose.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { verdictOf } from "../check.ts";
import type { GapEntry } from "../gapsAt.ts";
import { limitsAtPose } from "../limits/limitsPastAt.ts";
import type { Model } from "../model.ts";
import { amountWords } from "./amountWords.ts";
import { nearestSurface, partWords } from "./nearestSurface.ts";
import { pastLimitSentence } from "./pastLimitSentence.ts";
import { heightWords, steerWords } from "./poseWords.ts";

/** What touches what at one pose, in one plain sentence: the nearest part; and in another which limits it passes. */
export function poseSentence(
  gaps: readonly GapEntry[],
  pose: SolvedPose | ApartPose,
  model: Model,
  format: LengthFormat,
): string {
  const nearest = gaps.reduce<GapEntry | null>(
    (best, e) => (best === null || e.gap < best.gap ? e : best),
    null,
  );
  const past = pastLimitSentence(limitsAtPose(model, pose), format);
  const alsoPast = past === "" ? "" : ` ${past}`;
  if (nearest === null) return `This setup has no body parts, so there is nothing to rub.${alsoPast}`;
  const { allowance } = model.setup;
  const heights =
    "travel" in pose ? heightWords(pose.travel, model, format) : apartWords(pose, model, format);
  const when = `${heights}, ${steerWords(pose.steer, pose, nearest.side)}`;
  const what = `the ${nearest.side} ${nearestSurface(model, pose, nearest.side, nearest.part)}`;
  const part = partWords(model, nearest.side, nearest.part);
  const amount = amountWords(nearest.gap, format);
  const verdict = verdictOf(nearest.gap, nearest.gap, allowance);
  const told =
    verdict === "rubs"
      ? `${what} rubs the ${part} by ${amount}`
      : verdict === "close"
        ? `${what} is ${amount} from the ${part}; you asked for ${formatLength(allowance, format)}`
        : `everything clears, the ${part} closest at ${amount} from ${what}`;
  return `${when.charAt(0).toUpperCase()}${when.slice(1)}: ${told}.${alsoPast}`;
}

/** `the left wheel at 1 in of bump, the right wheel at the measured height`. */
function apartWords({ travels }: ApartPose, model: Model, format: LengthFormat): string {
  const side = (name: "left" | "right") => `the ${name} wheel ${heightWords(travels[name], model, format)}`;
  return `${side("left")}, ${side("right")}`;
}
