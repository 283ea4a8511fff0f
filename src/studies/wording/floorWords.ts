import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { FloorReport, FloorStance } from "../floor/floorReport.ts";
import { AT_END } from "../floor/rollCase.ts";
import type { Model } from "../model/model.ts";
import type { FloorClearance } from "../stances/floorPose.ts";
import { heightFacts, heightSentence } from "./heightWords.ts";
import { lengthText } from "./lengths.ts";
import { marginWords } from "./limitSentences.ts";
import { safeLength } from "./safeSide.ts";

/**
 * What is below the floor or the scrub line at each stance, in plain sentences; else how much room the lowest point has.
 * Stances outside the setup's own travel are told as such: a tape read wrong is found there.
 */
export function floorSentences({ stances }: FloorReport, model: Model, format: LengthFormat): string[] {
  const { floor, travel } = model.setup;
  const told = stances.flatMap((stance) => {
    const isOutside = stance.travel > travel.bump + AT_END || stance.travel < travel.droop - AT_END;
    const outside = `The “${stance.name}” stance, at travel ${formatLength(stance.travel, format)}, is outside the setup's own travel.`;
    const barred =
      stance.stop === null
        ? []
        : [heightSentence(heightFacts(stance.travel, stance.stop, format), model, format)];
    return [...(isOutside ? [outside] : []), ...barred, ...stanceSentences(stance, format)];
  });
  if (floor === null)
    told.push(
      "The setup has no floor block: give floor.lip, floor.frame and floor.points to have them measured.",
    );
  else if (floor.points.length === 0)
    told.push("No ground clearance: the setup names no floor.points that may drag.");
  return told;
}

function stanceSentences({ name, floor, scrub }: FloorStance, format: LengthFormat): string[] {
  const where = `At the “${name}” stance`;
  // Why it has no floor is told with what keeps the truck from it.
  if (floor === null) return [];
  const { clearances, frame } = floor;
  const below = named(clearances.filter(({ clearance }) => clearance < 0));
  const sunk = frame && Math.min(frame.left, frame.right);
  const lines = below.map(
    ([point, least]) => `${where} the ${point} is ${belowWords(least, format)} below the floor.`,
  );
  if (sunk !== null && sunk < 0)
    lines.push(`${where} the frame is ${belowWords(sunk, format)} below the floor.`);
  if (lines.length === 0 && clearances.length > 0) {
    const [lowest] = [...clearances].sort((a, b) => a.clearance - b.clearance);
    lines.push(
      `${where} the ${lowest!.name} is the lowest, ${clearanceText(lowest!.clearance, format)} above the floor.`,
    );
  }
  const dragging = named(scrub.flatMap((line) => line.dragging));
  for (const [point, least] of dragging) {
    lines.push(
      `${where} with a tire flat the ${point} hangs ${belowWords(least, format)} below the scrub line.`,
    );
  }
  return lines;
}

/** Height over the floor as it is told wherever it is, of lip, frame and what may drag, mm: no more than there is. */
export function clearanceTold(clearance: number, format: LengthFormat): number {
  return safeLength(clearance, "down", format);
}

/** The same with its unit. */
export function clearanceText(clearance: number, format: LengthFormat): string {
  return lengthText(clearanceTold(clearance, format), format);
}

/** How far below, no less than it is. @param clearance mm, below 0 */
export function belowWords(clearance: number, format: LengthFormat): string {
  return marginWords(clearance, "length", format);
}

/** Each name once, with the least of its clearances. */
function named(points: readonly FloorClearance[]): [string, number][] {
  const least = new Map<string, number>();
  for (const { name, clearance } of points)
    least.set(name, Math.min(clearance, least.get(name) ?? clearance));
  return [...least];
}
