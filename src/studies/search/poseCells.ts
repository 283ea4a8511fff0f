import { MOTION_ROW } from "../../geometry/motionRow.ts";
import type { SideModel } from "../../suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../../suspension/motionBound.ts";
import { Border, borderCell, steeredBorderTo } from "../../suspension/outOfReach.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW, type Steering } from "../../suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../../suspension/wheelRates.ts";
import { Keeps, type KeptPoses } from "../limits/keptPoses.ts";
import type { OtherWheel } from "./otherWheel.ts";

/** One side's wheel and what decides where it can be. */
export interface WheelToMove {
  readonly side: SideModel;
  /** Null = the other wheel takes no pose away: this one is for itself, or that one can stand everywhere. */
  readonly other: OtherWheel | null;
  /** 0 for the left side, 3 for the right: where that side's inner end stands in an inner-ends row. */
  readonly innerAt: 0 | 3;
  readonly steering: Steering;
  /** Poses that pass a limit are left out; none = the setup has no limit that any pose passes. */
  readonly limits?: KeptPoses;
}

/**
 * A row a cell: middle and half range of arm and steer; wheel center and axis at the middle; the motion proven over
 * the cell; what `borderCellTo` said (wheel, lower ball joint, slide, turn, the steering's part of it).
 */
export const CELL_OF_POSES = {
  arm: 0,
  armHalf: 1,
  steer: 2,
  steerHalf: 3,
  wheel: 4,
  motion: 10,
  borderWheel: 10 + MOTION_ROW,
  borderJoint: 16 + MOTION_ROW,
  slide: 19 + MOTION_ROW,
  turn: 20 + MOTION_ROW,
  steerTurn: 21 + MOTION_ROW,
} as const;
export const CELL_OF_POSES_ROW = 22 + MOTION_ROW;

/** What is known of a cell of poses, as bits. */
export const Known = {
  /** The steering can take the middle. */
  Steers: 1,
  /** This side's wheel, the other side's wheel can take the middle. */
  Stands: 2,
  OtherStands: 4,
  /** The motion row holds all over the cell. */
  Moves: 8,
  /** Looked at for the border of reach; then no pose is in it, or the border's pose bounds it. */
  AtBorder: 16,
  Empty: 32,
  Bounded: 64,
  /** Looked at for the other side's reach; then the other side can take no pose of it. */
  Other: 128,
  OtherEmpty: 256,
  /** Looked at for limits; then every pose keeps them all, or every pose passes one. */
  Limits: 512,
  Kept: 1024,
  Passed: 2048,
} as const;

// Leaf scratch.
const pose = new Float64Array(POSE_ROW);
const rates = new Float64Array(RATE_ROW);
const motion = new Float64Array(MOTION_ROW);
const ends = new Float64Array(INNER_ENDS_ROW);
const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
const border = borderCell();

/**
 * Cells of lower arm angle × steer, each solved once however many pieces of a part are looked at over it: halves are
 * made when first asked for.
 */
export class PoseCells {
  rows = new Float64Array(256 * CELL_OF_POSES_ROW);
  /** `Known` bits of each cell. */
  known = new Uint16Array(256);
  count = 0;
  /** First of the two halves in arm, in steer; 0 = not made. */
  private halves = new Int32Array(512);

  constructor(private readonly wheel: WheelToMove) {}

  /** Adds a cell by its middle and half ranges. @returns its number. */
  add(arm: number, armHalf: number, steer: number, steerHalf: number): number {
    if (this.count === this.known.length) this.grow();
    const cell = this.count++;
    const at = cell * CELL_OF_POSES_ROW;
    this.rows[at] = arm;
    this.rows[at + CELL_OF_POSES.armHalf] = armHalf;
    this.rows[at + CELL_OF_POSES.steer] = steer;
    this.rows[at + CELL_OF_POSES.steerHalf] = steerHalf;
    this.known[cell] = this.solve(at, arm, armHalf, steer, steerHalf);
    return cell;
  }

  /** The first half of a cell cut across its arm range or its steer range; the second is the next number. */
  half(cell: number, across: "arm" | "steer"): number {
    const slot = 2 * cell + (across === "arm" ? 0 : 1);
    const made = this.halves[slot]!;
    if (made > 0) return made;
    const at = cell * CELL_OF_POSES_ROW;
    const arm = this.rows[at]!;
    const armHalf = this.rows[at + CELL_OF_POSES.armHalf]!;
    const steer = this.rows[at + CELL_OF_POSES.steer]!;
    const steerHalf = this.rows[at + CELL_OF_POSES.steerHalf]!;
    const a = across === "arm" ? 0.5 * armHalf : 0;
    const s = across === "steer" ? 0.5 * steerHalf : 0;
    const first = this.add(arm - a, armHalf - a, steer - s, steerHalf - s);
    const second = this.add(arm + a, armHalf - a, steer + s, steerHalf - s);
    // What holds all over a cell holds in its halves.
    const limits = this.known[cell]! & Known.Kept ? Known.Limits | Known.Kept : 0;
    this.known[first]! |= limits;
    this.known[second]! |= limits;
    this.halves[slot] = first;
    return first;
  }

  /** Looks at the border of reach in a cell, once: the bits `Empty` and `Bounded`, and the row's last numbers. */
  lookAtBorder(cell: number): number {
    if (this.known[cell]! & Known.AtBorder) return this.known[cell]!;
    const at = cell * CELL_OF_POSES_ROW;
    const state = this.borderOf(at);
    let bits: number = Known.AtBorder;
    if (state === Border.Empty) bits |= Known.Empty;
    if (state === Border.Bounded) {
      bits |= Known.Bounded;
      this.rows.set(border.wheel, at + CELL_OF_POSES.borderWheel);
      this.rows.set(border.lowerBallJoint, at + CELL_OF_POSES.borderJoint);
      this.rows[at + CELL_OF_POSES.slide] = border.slide;
      this.rows[at + CELL_OF_POSES.turn] = border.turn;
      this.rows[at + CELL_OF_POSES.steerTurn] = border.steerTurn;
    }
    this.known[cell]! |= bits;
    return this.known[cell]!;
  }

  /** Whether the other side is proven unable to take any pose of the cell. */
  isOtherEmpty(cell: number): boolean {
    if (!(this.known[cell]! & Known.Other)) {
      const { rows } = this;
      const at = cell * CELL_OF_POSES_ROW;
      const cannot = this.wheel.other?.cannotStand(
        rows[at]!,
        rows[at + CELL_OF_POSES.armHalf]!,
        rows[at + CELL_OF_POSES.steer]!,
        rows[at + CELL_OF_POSES.steerHalf]!,
      );
      this.known[cell]! |= Known.Other | (cannot ? Known.OtherEmpty : 0);
    }
    return (this.known[cell]! & Known.OtherEmpty) !== 0;
  }

  /** Looks at the limits over a cell, once: the bits `Kept` and `Passed`. */
  lookAtLimits(cell: number): number {
    if (this.known[cell]! & Known.Limits) return this.known[cell]!;
    const { limits } = this.wheel;
    const { rows } = this;
    const at = cell * CELL_OF_POSES_ROW;
    const keeps = limits?.look(
      rows[at]!,
      rows[at + CELL_OF_POSES.armHalf]!,
      rows[at + CELL_OF_POSES.steer]!,
      rows[at + CELL_OF_POSES.steerHalf]!,
    );
    const found =
      keeps === undefined || keeps === Keeps.All ? Known.Kept : keeps === Keeps.None ? Known.Passed : 0;
    this.known[cell]! |= Known.Limits | found;
    return this.known[cell]!;
  }

  /** Whether the middle of a cell, where both wheels stand, keeps every limit. */
  keepsMiddle(cell: number): boolean {
    const { limits } = this.wheel;
    if (limits === undefined || this.known[cell]! & Known.Kept) return true;
    const at = cell * CELL_OF_POSES_ROW;
    return limits.keepsAt(this.rows[at]!, this.rows[at + CELL_OF_POSES.steer]!);
  }

  private borderOf(at: number): Border {
    const { innerAt, side, steering } = this.wheel;
    const arm = this.rows[at]!;
    const armHalf = this.rows[at + CELL_OF_POSES.armHalf]!;
    const steer = this.rows[at + CELL_OF_POSES.steer]!;
    const steerHalf = this.rows[at + CELL_OF_POSES.steerHalf]!;
    return steeredBorderTo(border, side, steering, innerAt, arm, armHalf, steer, steerHalf);
  }

  /** Solves the middle and proves the motion, as far as possible. */
  private solve(at: number, arm: number, armHalf: number, steer: number, steerHalf: number): number {
    const { side, other, steering, innerAt, limits } = this.wheel;
    if (steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return 0;
    const cos = Math.cos(arm);
    const sin = Math.sin(arm);
    let known: number = Known.Steers | (limits === undefined ? Known.Limits | Known.Kept : 0);
    if (other === null || other.stands(arm, ends)) known |= Known.OtherStands;
    if (!stands(side, cos, sin, innerAt)) return known;
    known |= Known.Stands;
    for (let i = 0; i < 6; i++) this.rows[at + CELL_OF_POSES.wheel + i] = pose[POSE.wheelCenter + i]!;
    const vx = ends[innerAt + 6]!;
    const vy = ends[innerAt + 7]!;
    const vz = ends[innerAt + 8]!;
    wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, vx, vy, vz);
    if (
      steering.innerEndSpreadTo(spread, steer, steerHalf) &&
      motionBoundTo(motion, side.row, pose, rates, cos, sin, armHalf, steerHalf, spread, [vx, vy, vz])
    ) {
      known |= Known.Moves;
      this.rows.set(motion, at + CELL_OF_POSES.motion);
    }
    return known;
  }

  private grow(): void {
    const rows = new Float64Array(2 * this.rows.length);
    const known = new Uint16Array(2 * this.known.length);
    const halves = new Int32Array(2 * this.halves.length);
    rows.set(this.rows);
    known.set(this.known);
    halves.set(this.halves);
    this.rows = rows;
    this.known = known;
    this.halves = halves;
  }
}

function stands({ row }: SideModel, cos: number, sin: number, at: number): boolean {
  return poseRowTo(pose, 0, row, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!) === PoseStatus.Ok;
}
