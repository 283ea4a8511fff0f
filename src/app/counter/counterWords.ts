import type { CheckEntry, CheckReport } from "../../studies/check.ts";
import type { NoLimits, SteerLimits } from "../../studies/map/steerLimits.ts";
import type { Model } from "../../studies/model.ts";
import { amountWords, finestLength } from "../../studies/wording/amountWords.ts";
import { angleText } from "../../studies/wording/angleText.ts";
import { nearestSurface, partWords } from "../../studies/wording/nearestSurface.ts";
import { heightWords, isStraight, reportedPose } from "../../studies/wording/poseWords.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { firstStop } from "./firstTouch.ts";

/** Center plane to the left contact patch, mm, straight ahead; null where the wheels cannot stand. @param travel mm */
export function halfTrackAt(model: Model, travel: number): number | null {
  const pose = solvePose(model.frontEnd, travel, 0);
  return pose.ok ? Math.abs(pose.left.contactPatch[1]) : null;
}

/** A name as it stands in a sentence. */
function quoted(name: string): string {
  return `"${name}"`;
}

/** Who stands farther out, and by how much. @param halfTracks mm, of the two in order */
export function outSentence(
  names: readonly [string, string],
  halfTracks: readonly [number, number],
  format: LengthFormat,
): string {
  const farther = halfTracks[0] - halfTracks[1];
  const [one, other] = names.map(quoted);
  if (Math.abs(farther) < 0.5 * finestLength(format))
    return `The wheels of ${one} and ${other} sit equally far out.`;
  const amount = formatLength(Math.abs(farther), format);
  const [wide, narrow] = farther > 0 ? [one, other] : [other, one];
  return `The wheels of ${wide} sit ${amount} farther out per side than those of ${narrow}.`;
}

/** What stops the steering first at a height: a clause that begins with the name. */
export function steerClause(name: string, steering: SteerLimits | NoLimits, model: Model): string {
  const who = quoted(name);
  if (!steering.ok) {
    return `${who} cannot stand there: the ${steering.side} ${jointOf(steering.status)} cannot follow`;
  }
  const stop = firstStop(steering);
  if (stop.stop === "end") return `${who} steers lock to lock and nothing touches`;
  const side = stop.stop === "unproven" ? (stop.at > 0 ? "left" : "right") : stop.side;
  const pose = solvePose(model.frontEnd, steering.travel, stop.at * (1 - 1e-9));
  const angle = pose.ok ? angleText(Math.abs(pose[side].steerAngle), 0) : `${percent(stop.at)} of lock`;
  if (stop.stop === "touch") {
    const surface = pose.ok ? nearestSurface(model, pose, stop.side, stop.part) : "tire";
    const part = partWords(model, stop.side, stop.part);
    if (isStraight(stop.at)) return `the ${surface} of ${who} touches the ${part} even straight ahead`;
    return `the ${surface} of ${who} meets the ${part} at ${angle} of steer`;
  }
  if (stop.stop === "reach") {
    return `${who} steers to ${angle}, where the ${stop.side} ${stop.joint} can go no farther; nothing touches before`;
  }
  return `${who} is proven to touch nothing up to ${angle} of steer; past that nothing is proven`;
}

/** Both at one height, in one sentence. @param travel mm */
export function steerSentence(
  travel: number,
  model: Model,
  clauses: readonly string[],
  format: LengthFormat,
): string {
  return `${capitalized(heightWords(travel, model, format))}, ${clauses.join("; ")}.`;
}

/** The answer over the whole range of height and steering: a clause that begins with the name. */
export function rangeClause(name: string, report: CheckReport, model: Model, format: LengthFormat): string {
  const who = quoted(name);
  const told = worstOf(report);
  if (told === null) return `nothing is measured on ${who}`;
  const part = partWords(model, told.side, told.part);
  const surface = surfaceOf(told, model);
  const amount = amountWords(told.gap, format);
  if (report.verdict === "rubs") return `the ${surface} of ${who} rubs the ${part} by ${amount}`;
  if (report.verdict === "close") {
    const asked = formatLength(model.setup.allowance, format);
    return `the ${surface} of ${who} comes within ${amount} of the ${part}, nearer than the ${asked} asked for`;
  }
  const reach = report.limits.length > 0 ? " as far as the linkage reaches" : "";
  return `${who} clears by ${amount}${reach}, the ${part} being nearest`;
}

/** Both over the whole range, in one sentence. */
export function rangeSentence(clauses: readonly string[]): string {
  return `Over every height and steering angle, ${clauses.join("; ")}.`;
}

/** What the check's worst place is nearest to on the wheel. */
export function surfaceOf(entry: CheckEntry, model: Model): string {
  const pose = reportedPose(model, entry.travel, entry.steer);
  return pose ? nearestSurface(model, pose, entry.side, entry.part) : "tire";
}

/** The entry a report is told by: the least gap among those that make its verdict; null when nothing is measured. */
export function worstOf(report: CheckReport): CheckEntry | null {
  return report.parts.reduce<CheckEntry | null>(
    (worst, entry) =>
      entry.verdict === report.verdict && (worst === null || entry.gap < worst.gap) ? entry : worst,
    null,
  );
}

function percent(share: number): string {
  return `${Math.floor(100 * Math.abs(share))}%`;
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
