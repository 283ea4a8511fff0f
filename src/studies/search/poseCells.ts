import { MOTION_ROW } from "../../geometry/motionRow.ts";
import type { SideModel } from "../../suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../../suspension/motionBound.ts";
import { Border, borderCell, steeredBorderTo } from "../../suspension/outOfReach.ts";
import { POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW, type Steering } from "../../suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../../suspension/wheelRates.ts";
import { Keeps, type KeptPoses } from "../limits/keptPoses.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "./cellOfPoses.ts";
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
  /** Cells that all searches of this wheel over one range share; none = a search makes its own. */
  readonly cells?: PoseCells;
}

/** Cells kept from one search for the next: some 40 MB. */
const MOST_KEPT = 1 << 16;

/** Cells there is room for before any is made. */
const FIRST_ROOM = 256;

/** The range of poses searched: lower arm angle, rad, and steer. */
export interface PoseRange {
  readonly armLow: number;
  readonly armHigh: number;
  readonly steerLow: number;
  readonly steerHigh: number;
}

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
  rows: Float64Array;
  /** `Known` bits of each cell. */
  known: Uint16Array;
  count = 0;
  /** First of the two halves in arm, in steer; 0 = not made. */
  private halves: Int32Array;

  /** @param before cells nobody asks about any more: these stand in their place */
  constructor(
    readonly wheel: WheelToMove,
    before?: PoseCells,
  ) {
    this.rows = before?.rows ?? new Float64Array(FIRST_ROOM * CELL_OF_POSES_ROW);
    this.known = before?.known ?? new Uint16Array(FIRST_ROOM);
    this.halves = before?.halves.fill(0, 0, 2 * before.count) ?? new Int32Array(2 * FIRST_ROOM);
  }

  /** Those that a wheel's searches share over a range, as `begin` leaves them; its own where there are none. */
  static over(wheel: WheelToMove, range: PoseRange): PoseCells {
    const cells = wheel.cells ?? new PoseCells(wheel);
    cells.begin(range);
    return cells;
  }

  /**
   * Makes cell 0 the whole of a range, always the same one. What is known from searches before stays: what is found of a
   * cell does not depend on who asked first.
   */
  private begin({ armLow, armHigh, steerLow, steerHigh }: PoseRange): void {
    if (this.count > 0 && this.count <= MOST_KEPT) return;
    this.count = 0;
    this.halves.fill(0);
    const armHalf = 0.5 * (armHigh - armLow);
    const steerHalf = 0.5 * (steerHigh - steerLow);
    this.add(armLow + armHalf, armHalf, steerLow + steerHalf, steerHalf);
  }

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
      this.rows.set(border.knuckle, at + CELL_OF_POSES.borderKnuckle);
      for (let i = 0; i < 3; i++)
        this.rows[at + CELL_OF_POSES.borderInner + i] = border.inner[this.wheel.innerAt + i]!;
      this.rows[at + CELL_OF_POSES.borderInnerOff] = border.innerOff;
      this.rows[at + CELL_OF_POSES.slide] = border.slide;
      this.rows[at + CELL_OF_POSES.turn] = border.turn;
      this.rows[at + CELL_OF_POSES.steerTurn] = border.steerTurn;
      this.rows[at + CELL_OF_POSES.spin] = border.spin;
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

  /** Whether both wheels can take the middle of a cell. */
  stands(cell: number): boolean {
    const both = Known.Stands | Known.OtherStands;
    return (this.known[cell]! & both) === both;
  }

  /** Whether the middle is a pose to be searched: both wheels can take it, and it keeps every limit. */
  isPose(cell: number): boolean {
    if (!this.stands(cell)) return false;
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
    for (let i = 0; i < POSE_ROW; i++) this.rows[at + CELL_OF_POSES.pose + i] = pose[i]!;
    const vx = ends[innerAt + 6]!;
    const vy = ends[innerAt + 7]!;
    const vz = ends[innerAt + 8]!;
    wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, vx, vy, vz);
    if (
      steering.innerEndSpreadTo(spread, steer, steerHalf) &&
      motionBoundTo(motion, side.row, pose, rates, cos, sin, armHalf, steerHalf, spread, [vx, vy, vz])
    ) {
      known |= Known.Moves;
      for (let i = 0; i < MOTION_ROW; i++) this.rows[at + CELL_OF_POSES.motion + i] = motion[i]!;
      this.rows[at + CELL_OF_POSES.innerVelocity] = vx;
      this.rows[at + CELL_OF_POSES.innerVelocity + 1] = vy;
      this.rows[at + CELL_OF_POSES.innerVelocity + 2] = vz;
      this.rows[at + CELL_OF_POSES.innerSpeedMost] = spread.speedMost;
      this.rows[at + CELL_OF_POSES.innerVelocityOff] = spread.velocityOff;
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
