import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import type { Model } from "../model/model.ts";
import { isEverywhere } from "../numeric/march.ts";
import { KEPT } from "./frontEndLimit.ts";
import { CellState, LimitCell } from "./limitCell.ts";

/** What is proven of a cell of poses: nothing, every limit kept at all of them, or some limit passed at all of them. */
export const Keeps = { Unknown: 0, All: 1, None: 2 } as const;
export type Keeps = (typeof Keeps)[keyof typeof Keeps];

/** A limit that some pose passes, as `limitsPassed` names it. */
export interface PassedLimit {
  readonly side: Side;
  readonly name: string;
}

/** One wheel with those of its limits that matter. */
interface Wheel {
  readonly cell: LimitCell;
  readonly limits: readonly number[];
}

/** rad. What a range of travel loses on its way through both wheels' arm angles. */
const ROUNDING = 1e-9;

/** Arm angles and steers looked at for a pose that keeps all. */
const START_ARMS = 33;
const START_STEERS = 33;

/** Where none of those does: cells looked at for one between them, and the share of the range at which one is left. */
const MOST_CELLS = 8192;
const LEAST_SHARE = 2 ** -14;

/**
 * Which poses of one side, by lower arm angle and steer, keep every limit of both wheels, the other one at the same
 * travel; or of this side's wheel alone. Holds scratch of its own: one for each search.
 */
export class KeptPoses {
  private readonly own: Wheel;
  private readonly other: Wheel | null;
  private readonly isMirrored: boolean;

  /** @param passed the limits that some pose passes: all others are taken as kept. @param alone this wheel for itself. */
  constructor(model: Model, side: Side, passed: readonly PassedLimit[], alone: boolean) {
    const wheelOf = (which: Side): Wheel => {
      const cell = new LimitCell(model, which);
      const limits = [...cell.limits.keys()].filter((i) =>
        passed.some((limit) => limit.side === which && limit.name === cell.limits[i]!.name),
      );
      return { cell, limits };
    };
    this.own = wheelOf(side);
    this.other = alone ? null : wheelOf(side === "left" ? "right" : "left");
    this.isMirrored = model.mirrored;
  }

  /** Whether both wheels can stand at a pose and keep every limit there. */
  keepsAt(arm: number, steer: number): boolean {
    return this.shareAt(arm, steer) >= 0;
  }

  /** Looks at a cell by its middle and half ranges. */
  look(arm: number, armHalf: number, steer: number, steerHalf: number): Keeps {
    const own = stateOf(this.own, arm, armHalf, steer, steerHalf);
    if (own === Keeps.None || this.other === null) return own;
    if (this.isMirrored) {
      const other = stateOf(this.other, arm, armHalf, steer, steerHalf);
      return other === Keeps.None ? other : own === other ? own : Keeps.Unknown;
    }
    // Travel rises with the arm, so the ends of the range are those of the other arm's.
    const low = this.otherArm(arm - armHalf);
    const high = this.otherArm(arm + armHalf);
    if (Number.isNaN(low + high)) return Keeps.Unknown;
    const half = 0.5 * Math.abs(high - low) + ROUNDING;
    const other = stateOf(this.other, 0.5 * (low + high), half, steer, steerHalf);
    return other === Keeps.None ? other : own === other ? own : Keeps.Unknown;
  }

  /** Whether the other wheel is proven to keep its limits at every of its own arm angles between two, rad, at one steer. */
  otherKeepsBetween(from: number, to: number, steer: number): boolean {
    const { other } = this;
    if (other === null) return true;
    return isEverywhere(from, to, (arm, half) => {
      const found = stateOf(other, arm, half, steer, 0);
      return found === Keeps.All ? "everywhere" : found === Keeps.None ? "nowhere" : "unknown";
    });
  }

  /**
   * A pose with all limits kept: of a grid and the measured pose the one that keeps them best; where none does, the first
   * found between them. Null where there is none, or none wide enough for that many cells to meet.
   * @param armLow, armHigh of this side, radians. @param lock share of full lock either way
   */
  start(armLow: number, armHigh: number, lock = 1): { readonly arm: number; readonly steer: number } | null {
    let most = -1;
    let found: { readonly arm: number; readonly steer: number } | null = null;
    const take = (arm: number, steer: number): void => {
      const share = this.shareAt(arm, steer);
      if (!(share > most)) return;
      most = share;
      found = { arm, steer };
    };
    for (let i = 0; i < START_ARMS; i++) {
      const arm = armLow + ((armHigh - armLow) * i) / (START_ARMS - 1);
      for (let j = 0; j < START_STEERS; j++) take(arm, lock * (-1 + (2 * j) / (START_STEERS - 1)));
    }
    if (armLow <= 0 && armHigh >= 0) take(0, 0);
    return found ?? this.startBetween(armLow, armHigh, lock);
  }

  /** Halves the range, leaving out what is proven to pass a limit all over, until the middle of a cell keeps all. */
  private startBetween(armLow: number, armHigh: number, lock: number): { arm: number; steer: number } | null {
    const whole = 0.5 * (armHigh - armLow);
    const cells: [number, number, number, number][] = [[armLow + whole, whole, 0, lock]];
    // Wide cells first: all that are left of one width before the next.
    for (let looked = 0; looked < cells.length && looked < MOST_CELLS; looked++) {
      const [arm, armHalf, steer, steerHalf] = cells[looked]!;
      if (this.look(arm, armHalf, steer, steerHalf) === Keeps.None) continue;
      if (this.keepsAt(arm, steer)) return { arm, steer };
      if (armHalf <= LEAST_SHARE * whole && steerHalf <= LEAST_SHARE) continue;
      const [a, s] = armHalf >= steerHalf * whole ? [0.5 * armHalf, 0] : [0, 0.5 * steerHalf];
      for (const way of [-1, 1]) cells.push([arm + way * a, armHalf - a, steer + way * s, steerHalf - s]);
    }
    return null;
  }

  /** The least share in hand of all limits at a pose, at least 0; −1 where one is passed or a wheel cannot stand. */
  private shareAt(arm: number, steer: number): number {
    const own = leastShare(this.own, arm, steer);
    if (own < 0 || this.other === null) return own;
    const otherArm = this.isMirrored ? arm : this.otherArm(arm);
    return Number.isNaN(otherArm) ? -1 : Math.min(own, leastShare(this.other, otherArm, steer));
  }

  /** The other wheel's arm angle at the travel of this one's; NaN out of reach. */
  private otherArm(arm: number): number {
    return armAngleFor(this.other!.cell.side, this.own.cell.travelAt(arm), arm);
  }
}

function leastShare({ cell, limits }: Wheel, arm: number, steer: number): number {
  if (cell.put(arm, steer) !== PoseStatus.Ok) return -1;
  let least = 1;
  for (const i of limits) {
    const margin = cell.margin(i);
    if (!(margin >= -KEPT)) return -1;
    least = Math.min(least, Math.max(0, margin / cell.limits[i]!.range));
  }
  return least;
}

function stateOf(
  { cell, limits }: Wheel,
  arm: number,
  armHalf: number,
  steer: number,
  steerHalf: number,
): Keeps {
  if (limits.length === 0) return Keeps.All;
  const state = cell.look(arm, armHalf, steer, steerHalf);
  // What the border of reach cuts off is the search's own business.
  if (state === CellState.Empty) return Keeps.Unknown;
  const isBounded = state === CellState.Bounded;
  if (!isBounded && !cell.boundAtBorder()) return Keeps.Unknown;
  let all = true;
  for (const i of limits) {
    const margin = cell.margin(i);
    const fall = cell.spreadOf(i);
    if (margin - fall[0]! - fall[1]! >= -KEPT) continue;
    all = false;
    const rise = cell.riseOf(i);
    if (margin + rise[0]! + rise[1]! < -KEPT) return Keeps.None;
  }
  return all ? Keeps.All : Keeps.Unknown;
}
