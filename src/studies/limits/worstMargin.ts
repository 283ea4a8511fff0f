import { requireFinite, requirePositive } from "../../geometry/requireFinite.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { Budget } from "../numeric/budget.ts";
import { MinHeap } from "../numeric/minHeap.ts";
import { CellState, type LimitCell } from "./limitCell.ts";

/** The least margin of a limit over a range of poses. */
export interface WorstMargin {
  /** At the pose found: mm or radians. */
  readonly margin: number;
  /** Proven: no pose in range has less, except as `atBorder` says. */
  readonly bound: number;
  readonly travel: number;
  readonly steer: number;
  /** Next to where the linkage itself runs out of reach, within a thousandth of the range, nothing is proven. */
  readonly atBorder: boolean;
}

/** A range of lower arm angle, radians, over both locks. */
export interface ArmRange {
  readonly armLow: number;
  readonly armHigh: number;
}

/** Share of the range below which a cell at the border of reach is given up. */
const BORDER_SHARE = 2 ** -10;

/** Share of such a cell within which the border is found. */
const LAST_STEP = 2 ** -16;

/** Microseconds, about. */
const TWO_LOOKS_WORK = 15;

/** Cells at most; where they do not do, `bound` says what was reached. */
const MOST_CELLS = 300_000;

/** mm or radians. Margins this near each other are the same but for rounding. */
const ALIKE = 1e-9;

/** Numbers kept of a cell: middle and half range of arm and of steer; 1 = to be halved across the arm, 0 = the steer. */
const CELL = 5;

/**
 * Searches all lower arm angles × −1 … +1 of steer for the least margin of a limit, best first: a cell of poses has no
 * less than the margin at its middle less how far that can fall in it, and cells that could be worse than the worst
 * found by more than `tolerance` are halved. @param enough the search
 * ends as soon as no pose is proven to have less than this.
 * @param budget once it is spent, `bound` says what was reached. @returns null when no pose of the range is within reach.
 * @throws RangeError for a range that is not finite, or a tolerance that is not finite and more than 0
 */
export function worstMargin(
  cell: LimitCell,
  limit: number,
  range: ArmRange,
  tolerance: number,
  enough = Number.POSITIVE_INFINITY,
  budget: Budget = Budget.endless(),
): WorstMargin | null {
  requireFinite("worstMargin", range.armLow, range.armHigh);
  requirePositive("worstMargin", tolerance);
  const heap = new MinHeap();
  const cells: number[] = [];
  const arms = range.armHigh - range.armLow;
  let best = Number.POSITIVE_INFINITY;
  let travel = 0;
  let steer = 0;
  let atBorder = false;

  const take = (margin: number, at: number): void => {
    // What the steering does not change is told straight ahead, whatever the rounding.
    if (!(margin < best - ALIKE)) return;
    best = margin;
    travel = cell.place.travel;
    steer = at;
  };
  /** Of a small cell: the last pose on the way from one of its corners that stands to each that does not. */
  const takeAtBorder = (arm: number, armHalf: number, at: number, steerHalf: number): void => {
    const corners = [-1, 1].flatMap((a) =>
      [-1, 1].map((s) => [arm + a * armHalf, at + s * steerHalf] as const),
    );
    const stands = ([a, s]: readonly [number, number]) => cell.put(a, s) === PoseStatus.Ok;
    const from = corners.find(stands);
    if (from === undefined) return;
    for (const corner of corners) {
      let last = 0;
      for (let step = 1; step > LAST_STEP; step *= 0.5) {
        const part = last + step;
        const pose = [
          from[0] + part * (corner[0] - from[0]),
          from[1] + part * (corner[1] - from[1]),
        ] as const;
        if (part > 1 || !stands(pose)) continue;
        last = part;
        take(cell.margin(limit), pose[1]);
      }
    }
  };
  const look = (arm: number, armHalf: number, at: number, steerHalf: number): void => {
    const state = cell.look(arm, armHalf, at, steerHalf);
    if (state === CellState.Empty) return;
    let key = Number.NEGATIVE_INFINITY;
    // Across the input that narrows the bound more; while nothing is bounded, across the longer one.
    let acrossArm = armHalf / arms >= 0.5 * steerHalf;
    if (state === CellState.Bounded || cell.boundAtBorder()) {
      const margin = cell.margin(limit);
      // At the border of reach it is no pose's, though it bounds them all.
      if (state === CellState.Bounded) take(margin, at);
      const spread = cell.spreadOf(limit);
      const [byArm, bySteer] = [spread[0]!, spread[1]!];
      key = margin - byArm - bySteer;
      if (state !== CellState.Bounded)
        acrossArm = steerHalf <= BORDER_SHARE || (cell.loosest === "arm" && armHalf > BORDER_SHARE * arms);
      else if (Number.isFinite(key)) acrossArm = byArm >= bySteer;
    }
    if (state !== CellState.Bounded) {
      if (cell.put(arm, at) === PoseStatus.Ok) take(cell.margin(limit), at);
      if (armHalf <= BORDER_SHARE * arms && steerHalf <= BORDER_SHARE) {
        atBorder = true;
        takeAtBorder(arm, armHalf, at, steerHalf);
        return;
      }
    }
    heap.push(key, cells.length / CELL);
    cells.push(arm, armHalf, at, steerHalf, acrossArm ? 1 : 0);
  };

  // The corners and the middle first: there the worst is most often, and they prune what is far from it.
  for (const arm of [range.armLow, range.armHigh, 0.5 * (range.armLow + range.armHigh)]) {
    for (const at of [0, -1, 1]) {
      if (cell.put(arm, at) !== PoseStatus.Ok) continue;
      take(cell.margin(limit), at);
    }
  }
  look(0.5 * (range.armLow + range.armHigh), 0.5 * arms, 0, 1);
  while (
    heap.size > 0 &&
    heap.leastKey() < Math.min(best - tolerance, enough) &&
    cells.length < MOST_CELLS * CELL &&
    !budget.isSpent(TWO_LOOKS_WORK)
  ) {
    const at = heap.pop() * CELL;
    const [arm, armHalf, middle, steerHalf] = [cells[at]!, cells[at + 1]!, cells[at + 2]!, cells[at + 3]!];
    if (cells[at + 4] === 1) {
      look(arm - 0.5 * armHalf, 0.5 * armHalf, middle, steerHalf);
      look(arm + 0.5 * armHalf, 0.5 * armHalf, middle, steerHalf);
    } else {
      look(arm, armHalf, middle - 0.5 * steerHalf, 0.5 * steerHalf);
      look(arm, armHalf, middle + 0.5 * steerHalf, 0.5 * steerHalf);
    }
  }
  if (!Number.isFinite(best)) return null;
  return { margin: best, bound: Math.min(best - ALIKE, heap.leastKey()), travel, steer, atBorder };
}
