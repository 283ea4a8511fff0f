import type { Vec3 } from "../../geometry/vec.ts";
import type { PoseSetup } from "../../setup/types/floorTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import { formatAngle } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { TAPE_MARK } from "../../units/lengthUnits.ts";
import type { EnvelopeRange } from "../envelope/envelopeRange.ts";
import type { Model } from "../model/model.ts";
import { amountText, amountWords, finestLength } from "./lengths.ts";
import { safeLength, safePercent, steerDecimals } from "./safeSide.ts";

/** mm. A height this near a named one is that height to somebody who steps or reads by sixteenths; the next mark is not. */
const STANCE_REACH = TAPE_MARK.in / 2 + 1e-6;

/** Share of full lock below which the wheels are straight ahead. */
const STRAIGHT = 0.0005;

/** Whether a steer input reads as straight ahead. */
export function isStraight(steer: number): boolean {
  return Math.abs(steer) < STRAIGHT;
}

/** Way of a turn, for any steer. */
export function wayOf(steer: number): Side {
  return steer > 0 ? "left" : "right";
}

/** A height: `at the “aired out” stance` within 1/32 in of a named one, else `at 3 1/2 in of bump`. @param travel mm */
export function heightWords(travel: number, model: Model, format: LengthFormat): string {
  const stance = stanceNear(travel, model);
  if (stance !== null) return `at the “${stance}” stance`;
  return Math.abs(travel) < 0.5 * finestLength(format)
    ? "at the measured height"
    : `at ${travelWords(travel, format)}`;
}

/** The height itself: `“aired out”`, `3 1/2 in of bump`. @param travel mm */
export function nameOfHeight(travel: number, model: Model, format: LengthFormat): string {
  const stance = stanceNear(travel, model);
  return stance === null ? heightWords(travel, model, format).replace(/^at /, "") : `“${stance}”`;
}

function stanceNear(travel: number, model: Model): string | null {
  const nearest = model.setup.stances.reduce<{ name: string; off: number } | null>((best, stance) => {
    const off = Math.abs(stance.travel - travel);
    return off <= STANCE_REACH && (best === null || off < best.off) ? { name: stance.name, off } : best;
  }, null);
  return nearest?.name ?? null;
}

/** `3 1/2 in of bump`. @param travel mm, not 0 */
export function travelWords(travel: number, format: LengthFormat): string {
  return `${amountWords(travel, format)} of ${travel > 0 ? "bump" : "droop"}`;
}

/** The same of an end of travel that is proven from travel 0 on: never farther than it is. @param travel mm */
export function safeTravelWords(travel: number, format: LengthFormat): string {
  const told = safeLength(travel, travel < 0 ? "up" : "down", format);
  return told === 0
    ? `less than ${travelWords(Math.sign(travel) * finestLength(format), format)}`
    : travelWords(told, format);
}

/**
 * `steered to 81% of right lock (left wheel 31°)`: as the control reads it, and beside that the angle of one side's wheel.
 * `pose` null = out of reach by a hair.
 */
export function steerWords(steer: number, pose: Pick<SolvedPose, Side> | null, side: Side): string {
  if (isStraight(steer)) return "with the wheels straight ahead";
  const share = isFull(steer) ? `full ${wayOf(steer)} lock` : lockWords(steer);
  return pose === null ? `at ${share}` : `steered to ${share} (${wheelAngle(pose, side)})`;
}

/** `left wheel 31°`: how a wheel's own angle is told beside a share of lock. */
function wheelAngle(pose: Pick<SolvedPose, Side>, side: Side): string {
  const angle = Math.abs(pose[side].steerAngle);
  return wheelAngleText(side, formatAngle(angle, steerDecimals(angle)));
}

/** The same of an angle that is text already. */
export function wheelAngleText(side: Side, angle: string): string {
  return `${side} wheel ${angle}`;
}

/** The angles of both wheels beside a share of lock: `left wheel 31°, right 28°`. */
export function bothWheelAngles(pose: Pick<SolvedPose, Side>): string {
  return `${wheelAngle(pose, "left")}, ${wheelAngle(pose, "right").replace(" wheel", "")}`;
}

/** For a picture that shows the angle itself: `steered 31° to the right`. `pose` null = out of reach by a hair. */
export function turnedWords(steer: number, pose: Pick<SolvedPose, Side> | null, side: Side): string {
  if (pose === null || isStraight(steer)) return steerWords(steer, pose, side);
  const angle = Math.abs(pose[side].steerAngle);
  return `steered ${formatAngle(angle, steerDecimals(angle))} to the ${wayOf(steer)}`;
}

/** Whether a steer input reads as full lock. */
function isFull(steer: number): boolean {
  return isStraight(1 - Math.abs(steer));
}

/** `81% of right lock`: whole percent, never more than there is. */
export function lockWords(steer: number): string {
  return `${percentText(steer)} of ${wayOf(steer)} lock`;
}

/** Whole percent of lock, rounded the same way wherever it is told. @param steer not straight ahead */
function percentText(steer: number): string {
  const percent = safePercent(steer);
  return percent === 0 ? "less than 1%" : `${percent}%`;
}

/** `straight ahead`, `at full left lock`, `at 81% of right lock`. */
export function inputWords(steer: number): string {
  if (isStraight(steer)) return "straight ahead";
  return isFull(steer) ? `at full ${wayOf(steer)} lock` : `at ${lockWords(steer)}`;
}

/**
 * The pose of a found worst gap, solved again for what the report leaves out. At the border of reach
 * rounding may put it outside by a hair: it is then taken from just inside, or null.
 */
export function reportedPose(model: Model, travel: number, steer: number): SolvedPose | null {
  const { left, right } = model.frontEnd;
  const low = Math.max(left.reach.droop.travel, right.reach.droop.travel);
  const high = Math.min(left.reach.bump.travel, right.reach.bump.travel);
  const within = Math.min(Math.max(travel, low), high);
  for (const share of [1, 1 - 1e-6]) {
    const pose = solvePose(model.frontEnd, within, steer * share);
    if (pose.ok) return pose;
  }
  return null;
}

/** mm. A height this near a named one is that height: it was picked. */
const SAME_HEIGHT = 0.01;

/** The stance whose height this is; null when it has no name. */
export function stanceAt(travel: number, setup: Setup): string | null {
  return setup.stances.find((stance) => Math.abs(stance.travel - travel) < SAME_HEIGHT)?.name ?? null;
}

/** A height as its control reads it: how far up or down from as measured. */
export function travelText(travel: number, format: LengthFormat): string {
  if (Math.abs(travel) < SAME_HEIGHT) return `0 ${format.units}`;
  return `${amountText(travel, format)} ${travel > 0 ? "bump" : "droop"}`;
}

/** The stance a driver knows: heights are told against it where the setup has it. */
const DRIVING = "driving";

/** A height of the wheel against where the truck is driven, or as measured: `wheel 1 1/2 in over driving`. */
export function heightAgainst(travel: number, setup: Setup, format: LengthFormat): string {
  const driving = setup.stances.find(({ name }) => name.toLowerCase() === DRIVING);
  const off = travel - (driving?.travel ?? 0);
  const base = driving?.name ?? "as measured";
  if (Math.abs(off) < SAME_HEIGHT) return base;
  return `wheel ${amountText(off, format)} ${off > 0 ? "over" : "under"} ${base}`;
}

/** A height as a sentence says it: its stance's name if it has one. */
export function heightText(travel: number, setup: Setup, format: LengthFormat = setup): string {
  const stance = stanceAt(travel, setup);
  const isMeasured = Math.abs(travel) < SAME_HEIGHT;
  if (stance === null) return isMeasured ? "as measured" : travelText(travel, format);
  return isMeasured ? stance : `${stance} (${travelText(travel, format)})`;
}

/** How much of full lock, as the control reads it. */
export function lockText(steer: number): string {
  if (isStraight(steer)) return "straight ahead";
  if (isFull(steer)) return `full ${wayOf(steer)} lock`;
  return `${percentText(steer)} ${wayOf(steer)} lock`;
}

/** A named pose: `left wheel 1 1/2 in bump, right wheel 0 in, straight ahead`. */
export function namedPoseText({ travels, steer }: Omit<PoseSetup, "name">, format: LengthFormat): string {
  const wheel = (side: Side) => `${side} wheel ${travelText(travels[side], format)}`;
  return `${wheel("left")}, ${wheel("right")}, ${lockText(steer)}`;
}

/** mm. Rounding of a travel as typed. */
const ROUNDING = 1e-6;

/**
 * Why a pose cannot be shown with each wheel at its own travel: the height halfway between the two is past the setup's own
 * travel; "" where it is within.
 */
export function outsideTravelSentence(
  { left, right }: PoseSetup["travels"],
  { travel: { droop, bump } }: Setup,
  format: LengthFormat,
): string {
  const middle = 0.5 * (left + right);
  if (middle >= droop - ROUNDING && middle <= bump + ROUNDING) return "";
  const end = middle > bump ? bump : droop;
  return `Halfway between its wheels this pose is at ${travelText(middle, format)}; the setup’s travel ends at ${travelText(end, format)}.`;
}

/** `over all travel, lock to lock`; `at the “aired out” stance, wheels straight ahead`. */
export function rangeWords(range: EnvelopeRange, model: Model, format: LengthFormat): string {
  const heights =
    range.travelLow < range.travelHigh ? "over all travel" : heightWords(range.travelLow, model, format);
  const steers =
    range.steerLow < range.steerHigh
      ? "lock to lock"
      : isStraight(range.steerLow)
        ? "wheels straight ahead"
        : inputWords(range.steerLow);
  return `${heights}, ${steers}`;
}

/** mm. Nearer to the axle line than this is at the axle line. */
const AT_AXLE = TAPE_MARK.in;

/** Whether a point so far ahead of the axle line is read as on it. mm. */
function isAtAxle(x: number): boolean {
  return Math.abs(x) < AT_AXLE;
}

/** The place of the fender lip that is measured to the floor: over the axle, as shops do, or wherever the setup says. */
export function lipName({ floor }: Setup): string {
  return floor?.lip && isAtAxle(floor.lip[0]) ? "fender lip over the axle" : "fender lip where measured";
}

/** Where a point is, the way someone under the truck would find it. @param floor height of the floor now, mm */
export function placeWords(point: Vec3, floor: number, format: LengthFormat): string {
  const [x, , z] = point;
  const along = isAtAxle(x)
    ? "at the axle line"
    : `${amountText(x, format)} ${x > 0 ? "ahead of" : "behind"} the axle line`;
  return `${along}, ${amountText(z - floor, format)} ${z < floor ? "below" : "above"} the floor`;
}

/** Height of the floor at a pose, mm: where the contact patches stand, halfway between the two. The body is held still. */
export function floorOf({ left, right }: Pick<SolvedPose, "left" | "right">): number {
  return 0.5 * (left.contactPatch[2] + right.contactPatch[2]);
}
