import { heightWords, isStraight, steerWords, wayOf } from "../../../studies/wording/poseWords.ts";
import { farText } from "../../../studies/wording/stopTexts.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import type { PictureContent } from "./pictures.ts";
import type { TellingPose } from "./tellingPose.ts";
import type { Comparison } from "./useComparison.ts";

/** What the first picture shows. */
export function frontTitle({ first, second, travel, format }: Comparison): string {
  const truck = (first ?? second)?.truck;
  const height = truck ? `, ${heightWords(travel, truck.model, format)}` : "";
  return `From the front, wheels straight ahead${height}.`;
}

/** What the second picture shows: which wheel, how far steered, and why there. */
export function aboveTitle({ side, steer, touches }: TellingPose, comparison: Comparison): string {
  const truck = (comparison.first ?? comparison.second)?.truck;
  const pose = truck && solvePose(truck.model.frontEnd, comparison.travel, steer);
  const steered = isStraight(steer)
    ? "wheels straight ahead"
    : touches !== null
      ? `steered ${farText(touches)} to the ${wayOf(steer)}`
      : steerWords(steer, pose?.ok ? pose : null, side);
  const wheel = side === "left" ? "left wheel" : "right wheel, drawn mirrored";
  return `From above, ${wheel}, ${steered}${touches === null ? "" : ", where something first touches"}.`;
}

/** What the gaps of a picture are to; "" = it shows none. */
export function gapNote({ pictured }: PictureContent): string {
  const barred = pictured.filter(({ stands }) => !stands).map(({ letter }) => letter);
  const nothing =
    barred.length === 0 ? "" : `${barred.join(" and ")} cannot come to this pose: nothing is marked on it.`;
  return [gapText(pictured), nothing].filter((text) => text !== "").join(" ");
}

function gapText(pictured: PictureContent["pictured"]): string {
  const parts = [...new Set(pictured.flatMap(({ drawing }) => (drawing.gap ? [drawing.gap.part] : [])))];
  if (parts.length === 0) return "";
  return `The gap is to the ${parts.join(" and the ")}.`;
}
