import { MOTION_ROW } from "../../geometry/motionRow.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { FrontEnd, Side, SideModel } from "../../suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../../suspension/motionBound.ts";
import { Border, borderCell, steeredBorderTo } from "../../suspension/outOfReach.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../../suspension/wheelRates.ts";
import { isEverywhere } from "../numeric/march.ts";

/** rad. What a range of travel loses on its way through both wheels' arm angles. */
const ROUNDING = 1e-9;

/** Half the range of steer, 1, is as wide as half a radian of the arm where a cell is halved. */
const ARM_WEIGHT = 2;

/** Cells of poses looked at for a proof that the wheel can stand everywhere. */
const MOST_CELLS = 2000;

// Leaf scratch.
const pose = new Float64Array(POSE_ROW);
const ends = new Float64Array(INNER_ENDS_ROW);
const rates = new Float64Array(RATE_ROW);
const motion = new Float64Array(MOTION_ROW);
const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
const border = borderCell();

/**
 * The wheel opposite to the one a search moves, at the same travel: a pose it cannot take is no pose of the truck. Where
 * the sides are no mirror images its lower arm then stands at another angle than this one's.
 */
export class OtherWheel {
  private readonly side: SideModel;
  private readonly other: SideModel;
  private readonly innerAt: 0 | 3;

  /** @param side the one a search moves. @param isMirrored both sides are exact mirror images. */
  constructor(
    private readonly frontEnd: FrontEnd,
    side: Side,
    private readonly isMirrored: boolean,
  ) {
    this.side = frontEnd[side];
    this.other = frontEnd[side === "left" ? "right" : "left"];
    this.innerAt = side === "left" ? 3 : 0;
  }

  /** Whether it can stand. @param arm of this side, rad. @param innerEnds a row filled by `innerEndsTo`. */
  stands(arm: number, innerEnds: Float64Array): boolean {
    const angle = this.angleAt(arm);
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const at = this.innerAt;
    const { row } = this.other;
    const status = poseRowTo(pose, 0, row, cos, sin, innerEnds[at]!, innerEnds[at + 1]!, innerEnds[at + 2]!);
    // Out of reach by NaN too.
    return status === PoseStatus.Ok && Number.isFinite(angle);
  }

  /** Whether it is proven unable to take any pose of a cell of this side's arm angle (rad) × steer. */
  cannotStand(arm: number, armHalf: number, steer: number, steerHalf: number): boolean {
    const { steering } = this.frontEnd;
    // Travel rises with the arm, so the ends of the range are those of the other arm's.
    const low = this.angleAt(arm - armHalf);
    const high = this.angleAt(arm + armHalf);
    if (Number.isNaN(low + high)) return false;
    const half = this.isMirrored ? armHalf : 0.5 * Math.abs(high - low) + ROUNDING;
    const middle = this.isMirrored ? arm : 0.5 * (low + high);
    const { other, innerAt } = this;
    const found = steeredBorderTo(border, other, steering, innerAt, middle, half, steer, steerHalf);
    return found === Border.Empty;
  }

  /** Whether it is proven to stand at every steer between travels `low` and `high`, mm: then it need not be asked. */
  standsAllOver(low: number, high: number): boolean {
    const from = armAngleFor(this.other, low);
    const to = armAngleFor(this.other, high);
    if (Number.isNaN(from + to)) return false;
    const cells = [[0.5 * (from + to), 0.5 * (to - from), 0, 1]];
    for (let looked = 0; cells.length > 0; looked++) {
      if (looked === MOST_CELLS) return false;
      const [arm, armHalf, steer, steerHalf] = cells.pop() as [number, number, number, number];
      const here = this.standsIn(arm, armHalf, steer, steerHalf);
      if (here === "nowhere") return false;
      if (here === "everywhere") continue;
      const [a, s] = armHalf * ARM_WEIGHT > steerHalf ? [0.5 * armHalf, 0] : [0, 0.5 * steerHalf];
      for (const way of [-1, 1]) cells.push([arm + way * a, armHalf - a, steer + way * s, steerHalf - s]);
    }
    return true;
  }

  /** Whether it is proven to stand at every of its own arm angles between two, rad, at one steer. */
  standsBetween(from: number, to: number, steer: number): boolean {
    return isEverywhere(from, to, (arm, half) => this.standsIn(arm, half, steer, 0));
  }

  private standsIn(
    arm: number,
    armHalf: number,
    steer: number,
    steerHalf: number,
  ): "everywhere" | "nowhere" | "unknown" {
    const { steering } = this.frontEnd;
    const { row } = this.other;
    const at = this.innerAt;
    const cos = Math.cos(arm);
    const sin = Math.sin(arm);
    if (steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return "nowhere";
    if (poseRowTo(pose, 0, row, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!) !== PoseStatus.Ok)
      return "nowhere";
    if (!steering.innerEndSpreadTo(spread, steer, steerHalf)) return "unknown";
    const velocity = [ends[at + 6]!, ends[at + 7]!, ends[at + 8]!] as const;
    wheelRatesTo(rates, 0, row, pose, 0, cos, sin, ...velocity);
    return motionBoundTo(motion, row, pose, rates, cos, sin, armHalf, steerHalf, spread, velocity)
      ? "everywhere"
      : "unknown";
  }

  /** Its lower arm angle at the travel of this side's; NaN where either cannot go there straight ahead. */
  private angleAt(arm: number): number {
    if (this.isMirrored) return arm;
    const { row, innerAtRest, centerHeightAtRest } = this.side;
    const [x, y, z] = innerAtRest;
    if (poseRowTo(pose, 0, row, Math.cos(arm), Math.sin(arm), x, y, z) !== PoseStatus.Ok) return Number.NaN;
    return armAngleFor(this.other, pose[POSE.wheelCenter + 2]! - centerHeightAtRest, arm);
  }
}
