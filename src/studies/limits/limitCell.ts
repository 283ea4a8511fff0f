import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import type { Side, SideModel } from "../../suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../../suspension/motionBound.ts";
import { Border, borderCell, steeredBorderTo } from "../../suspension/outOfReach.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { INNER_ENDS_ROW, type Steering } from "../../suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../../suspension/wheelRates.ts";
import type { CellMotion } from "../model/carried.ts";
import type { Model } from "../model/model.ts";
import type { FrontEndLimit, LimitPlace } from "./frontEndLimit.ts";
import { limitsOn } from "./limitsOn.ts";

// Leaf scratch.
const straight = new Float64Array(POSE_ROW);
const rates = new Float64Array(RATE_ROW);

/** What a look at a cell of poses says of the whole of it. */
export const CellState = {
  /** Every pose exists, and its motion is bounded. */
  Bounded: 0,
  /** Nothing proven: too large, or at the border of reach. */
  Unproven: 1,
  /** The linkage can take no pose of it. */
  Empty: 2,
} as const;
export type CellState = (typeof CellState)[keyof typeof CellState];

/** A cell of lower arm angle × steer of one side about a middle pose, for the margins of its limits. */
export class LimitCell implements CellMotion {
  readonly limits: readonly FrontEndLimit[];
  readonly motion = new Float64Array(MOTION_ROW);
  /** Velocity of the inner tie rod end, mm per unit of steer; bounds of it over the cell. */
  readonly inner: [number, number, number] = [0, 0, 0];
  readonly innerSpread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
  armHalf = 0;
  steerHalf = 0;
  /** Lower arm angle of the middle, radians. */
  armNow = 0;
  cosArm = 1;
  sinArm = 0;
  /** Travel, mm, at the ends of the arm's range. */
  travelLow = 0;
  travelHigh = 0;
  displaced = false;
  /** Of a displaced cell: what to halve so that the turn told falls most. */
  loosest: "arm" | "steer" = "arm";
  readonly place: LimitPlace;
  readonly side: SideModel;
  private readonly steering: Steering;
  private readonly innerAt: 0 | 3;
  private readonly ends = new Float64Array(INNER_ENDS_ROW);
  private readonly spread = new Float64Array(2);
  /** What the last look found at the border of reach, where it came to that. */
  private readonly border = borderCell();
  private atBorder: Border = Border.Unknown;

  constructor(model: Model, side: Side) {
    this.side = model.frontEnd[side];
    this.steering = model.frontEnd.steering;
    this.innerAt = side === "left" ? 0 : 3;
    this.limits = limitsOn(model, side);
    this.place = {
      side: this.side.row,
      pose: new Float64Array(POSE_ROW),
      poseAt: 0,
      otherInner: new Float64Array(3),
      travel: 0,
      steer: 0,
    };
  }

  /** Travel, mm, at a lower arm angle: straight ahead, whatever the steer. NaN out of reach. */
  travelAt(arm: number): number {
    const { row, innerAtRest, centerHeightAtRest } = this.side;
    const [x, y, z] = innerAtRest;
    const status = poseRowTo(straight, 0, row, Math.cos(arm), Math.sin(arm), x, y, z);
    return status === PoseStatus.Ok ? straight[POSE.wheelCenter + 2]! - centerHeightAtRest : Number.NaN;
  }

  /** Places the middle pose. @returns `Ok`, or what keeps the side from it. */
  put(arm: number, steer: number): PoseStatus {
    const { ends, innerAt: at, place } = this;
    this.armNow = arm;
    place.steer = steer;
    const steered = this.steering.innerEndsTo(ends, steer);
    if (steered !== PoseStatus.Ok) return steered;
    this.cosArm = Math.cos(arm);
    this.sinArm = Math.sin(arm);
    place.travel = this.travelAt(arm);
    otherInnerTo(place.otherInner, ends, 0, at);
    return poseRowTo(
      place.pose,
      0,
      this.side.row,
      this.cosArm,
      this.sinArm,
      ends[at]!,
      ends[at + 1]!,
      ends[at + 2]!,
    );
  }

  /** Places the middle and looks at the whole of the cell. */
  look(arm: number, armHalf: number, steer: number, steerHalf: number): CellState {
    // All four before anything can fail: what is asked next is asked of this cell, whatever came of it.
    this.armNow = arm;
    this.armHalf = armHalf;
    this.place.steer = steer;
    this.steerHalf = steerHalf;
    this.displaced = false;
    const { ends, innerAt: at, inner, innerSpread, side } = this;
    if (
      this.put(arm, steer) === PoseStatus.Ok &&
      this.steering.innerEndSpreadTo(innerSpread, steer, steerHalf)
    ) {
      const vx = ends[at + 6]!;
      const vy = ends[at + 7]!;
      const vz = ends[at + 8]!;
      inner[0] = vx;
      inner[1] = vy;
      inner[2] = vz;
      const { pose } = this.place;
      const { cosArm: cos, sinArm: sin } = this;
      wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, vx, vy, vz);
      this.travelLow = this.travelAt(arm - armHalf);
      this.travelHigh = this.travelAt(arm + armHalf);
      if (motionBoundTo(this.motion, side.row, pose, rates, cos, sin, armHalf, steerHalf, innerSpread, inner))
        return CellState.Bounded;
    }
    const { border, steering } = this;
    this.atBorder = steeredBorderTo(border, side, steering, at, arm, armHalf, steer, steerHalf);
    return this.atBorder === Border.Empty ? CellState.Empty : CellState.Unproven;
  }

  /**
   * Of a cell just looked at and `Unproven`: puts a pose amid those it may hold in place of the middle and tells the way
   * from there to any of them as `motion`. The lower ball joint stands where the middle has it and the frame is the
   * border's, so both are off by no more than what is told. @returns false when nothing could be said.
   */
  boundAtBorder(): boolean {
    const { armNow, armHalf, border, innerAt: at, innerSpread, motion, place, side, steerHalf } = this;
    if (!(armHalf > 0) || this.atBorder !== Border.Bounded) return false;
    const { pose } = place;
    const [x, y, z] = side.innerAtRest;
    const cos = Math.cos(armNow);
    const sin = Math.sin(armNow);
    if (poseRowTo(pose, 0, side.row, cos, sin, x, y, z) !== PoseStatus.Ok) return false;
    for (let i = 0; i < 3; i++) {
      pose[POSE.tieRodInner + i] = border.inner[at + i]!;
      pose[POSE.wheelAxis + i] = border.wheel[3 + i]!;
      pose[POSE.tieRodOuter + i] = pose[POSE.lowerBallJoint + i]!;
      for (let k = 0; k < 3; k++) {
        pose[POSE.knuckleX + 3 * k + i] = border.knuckle[3 * k + i]!;
        pose[POSE.tieRodOuter + i]! += side.row[SIDE.steeringArm + k]! * border.knuckle[3 * k + i]!;
      }
      this.inner[i] = 0;
    }
    // No speed either: all of where the inner ends can be is told as the deviation from standing still.
    innerSpread.speedMost = steerHalf > 0 ? border.innerOff / steerHalf : 0;
    innerSpread.velocityOff = innerSpread.speedMost;
    otherInnerTo(place.otherInner, border.inner, 0, at);
    place.travel = this.travelAt(armNow);
    this.travelLow = this.travelAt(armNow - armHalf);
    this.travelHigh = this.travelAt(armNow + armHalf);
    this.cosArm = cos;
    this.sinArm = sin;
    motion.fill(0);
    motion[MOTION.armTurnOff] = border.turn / armHalf;
    motion[MOTION.armTurnMost] = border.turn / armHalf;
    this.displaced = true;
    // At the end of reach the arm's range counts by its root: halved evenly, cells would be far too narrow in steer.
    this.loosest = border.turn > 2 * border.steerTurn ? "arm" : "steer";
    return true;
  }

  /** Margin of a limit at the middle. */
  margin(limit: number): number {
    return this.limits[limit]!.margin(this.place);
  }

  /** How much the margin can fall in the cell, by the arm's range and by the steering's. Of a `Bounded` cell alone. */
  spreadOf(limit: number): Float64Array {
    this.limits[limit]!.spreadTo(this.spread, this.place, this);
    return this.spread;
  }

  /** How much it can rise in the cell, likewise. */
  riseOf(limit: number): Float64Array {
    const { riseTo, spreadTo } = this.limits[limit]!;
    (riseTo ?? spreadTo)(this.spread, this.place, this);
    return this.spread;
  }
}

/** The other side's inner end in this side's frame. @param innerAt 0 = this is the left side, 3 = the right. */
export function otherInnerTo(out: Float64Array, ends: Float64Array, endsAt: number, innerAt: 0 | 3): void {
  const other = endsAt + 3 - innerAt;
  out[0] = ends[other]!;
  out[1] = -ends[other + 1]!;
  out[2] = ends[other + 2]!;
}
