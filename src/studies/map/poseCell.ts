import { GAP_TOLERANCE } from "../../gaps/cells/tolerances.ts";
import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import type { Side, SideModel } from "../../suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../../suspension/motionBound.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW, type Steering } from "../../suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../../suspension/wheelRates.ts";
import type { Model } from "../model/model.ts";
import type { Pair } from "../model/pairs.ts";
import { lowerMountPath } from "../model/springOrShock.ts";
import { Look } from "../numeric/march.ts";
import { rodMotionTo } from "../search/rodMotion.ts";
import { PairTrack } from "./pairTrack.ts";

const motion = new Float64Array(MOTION_ROW);
const rodMotion = new Float64Array(MOTION_ROW);
const rates = new Float64Array(RATE_ROW);
const ends = new Float64Array(INNER_ENDS_ROW);
const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };

/** Cells of poses of one side (lower arm angle × steer about a middle), each looked at as a whole. */
export class PoseCell {
  readonly track: PairTrack;
  /** The middle pose looked at last. */
  readonly pose = new Float64Array(POSE_ROW);
  private readonly limits: Float64Array;
  private readonly side: SideModel;
  private readonly steering: Steering;
  private readonly innerAt: 0 | 3;

  constructor(model: Model, side: Side) {
    this.track = new PairTrack(model, side);
    this.limits = new Float64Array(this.track.numbers.length);
    this.side = model.frontEnd[side];
    this.steering = model.frontEnd.steering;
    this.innerAt = side === "left" ? 0 : 3;
  }

  /** Places the pose. @returns `Ok`, or what keeps the side from it. */
  place(arm: number, steer: number): PoseStatus {
    const { side, pose, innerAt: at } = this;
    const steered = this.steering.innerEndsTo(ends, steer);
    if (steered !== PoseStatus.Ok) return steered;
    return poseRowTo(
      pose,
      0,
      side.row,
      Math.cos(arm),
      Math.sin(arm),
      ends[at]!,
      ends[at + 1]!,
      ends[at + 2]!,
    );
  }

  /** Whether every pose of the cell is proven to exist. Fills `motion`. */
  exists(arm: number, armHalf: number, steer: number, steerHalf: number): boolean {
    if (this.place(arm, steer) !== PoseStatus.Ok) return false;
    const { side, pose, innerAt: at } = this;
    if (!this.steering.innerEndSpreadTo(spread, steer, steerHalf)) return false;
    const cos = Math.cos(arm);
    const sin = Math.sin(arm);
    const vx = ends[at + 6]!;
    const vy = ends[at + 7]!;
    const vz = ends[at + 8]!;
    wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, vx, vy, vz);
    return motionBoundTo(motion, side.row, pose, rates, cos, sin, armHalf, steerHalf, spread, [vx, vy, vz]);
  }

  /**
   * Looks at a cell: `Clear` when no pair comes below `level` (mm) at any of its poses, by the gap at the middle and
   * how far the pair can move from there. Else `Unproven`, or the place in `track` of a pair not proven clear.
   */
  look(arm: number, armHalf: number, steer: number, steerHalf: number, level: number): number {
    if (!this.exists(arm, armHalf, steer, steerHalf)) return Look.Unproven;
    const { limits, track } = this;
    for (let k = 0; k < limits.length; k++) {
      const path = this.pathOf(track.pair(k));
      if (!(path < Number.POSITIVE_INFINITY)) return Look.Unproven;
      limits[k] = level + path + GAP_TOLERANCE;
    }
    const found = track.below(limits, this.pose, 0);
    return found < 0 ? Look.Clear : found;
  }

  /**
   * How much the pair's gap can differ within the cell of `motion` from its middle's, mm. A body part stands still:
   * the gap changes by no more than any point of the ring's ball moves. With S the path that the motion of the
   * point at the middle wheel center sums to and Ω the turn, the wheel center is at most P = S + ΩP away, so
   * P = S/(1 − Ω), and a point of the ball runs at most S + Ω(P + R). A rod moves as its inner end does, seen
   * from the wheel (`rodMotionTo`). A spring's or shock's lower end moves too, which adds to the ring's path.
   */
  private pathOf(pair: Pair): number {
    if (pair.kind === "rod") return this.rodPath(pair.pivots);
    const turn =
      motion[MOTION.armHalf]! * motion[MOTION.armTurnMost]! +
      motion[MOTION.steerHalf]! * motion[MOTION.steerTurnMost]!;
    if (!(turn < 1)) return Number.POSITIVE_INFINITY;
    const slide = slideOf(motion);
    const ring = slide + turn * (slide / (1 - turn) + pair.ring.ballRadius);
    return pair.kind === "springOrShock"
      ? ring + lowerMountPath(pair.springOrShock, motion, this.pose, 0)
      : ring;
  }

  private rodPath(pivots: Float64Array | null): number {
    const { pose, innerAt: at } = this;
    if (pivots === null) {
      const velocity = [ends[at + 6]!, ends[at + 7]!, ends[at + 8]!] as const;
      const inner = POSE.tieRodInner;
      rodMotionTo(rodMotion, motion, pose, pose[inner]!, pose[inner + 1]!, pose[inner + 2]!, {
        velocity,
        spread,
      });
      return slideOf(rodMotion);
    }
    let most = 0;
    for (let i = 0; i < pivots.length; i += 3) {
      rodMotionTo(rodMotion, motion, pose, pivots[i]!, pivots[i + 1]!, pivots[i + 2]!, null);
      most = Math.max(most, slideOf(rodMotion));
    }
    return most;
  }
}

/** Path, at most, of the body point that is at the reference place at the middle, by its slides alone. */
function slideOf(row: Float64Array): number {
  return (
    row[MOTION.armHalf]! * slideMost(row, MOTION.armSlide, MOTION.armSlideOff) +
    row[MOTION.steerHalf]! * slideMost(row, MOTION.steerSlide, MOTION.steerSlideOff)
  );
}

function slideMost(row: Float64Array, at: number, offAt: number): number {
  const x = row[at]!;
  const y = row[at + 1]!;
  const z = row[at + 2]!;
  return Math.sqrt(x * x + y * y + z * z) + row[offAt]!;
}
