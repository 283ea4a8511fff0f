import type { LoadCase } from "../../setup/types/loadsTypes.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { GRAVITY } from "../../units/quantity.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { type JetVec, mostLength } from "../numeric/jet.ts";
import { MinHeap } from "../numeric/minHeap.ts";
import type { Carriers } from "./carriers.ts";
import type { ForceName } from "./caseAt.ts";
import { type ForceJets, forceJets } from "./forceJets.ts";
import type { CellOfPoses } from "./linkageJets.ts";

/** How near a bound is brought to the largest force found: a share of that force, or of the load where that is more. */
export const BOUND_TOLERANCE = 1e-3;

/** Share added to a bound, far above what rounding can take from it. */
const ROUNDING = 1e-9;

/** Cells after which a case is left with the bounds it has. */
const MOST_CELLS = 6000;

/** Halvings after which a cell is left without a bound: a dead center or the border of reach runs through it. */
const MOST_HALVINGS = 12;

/** Parts in which a case's range of poses is looked at first, either way. */
const FIRST = 4;

/** About what one cell takes, microseconds. */
const CELL_WORK = 120;

/** Where a case may happen: travel in mm, steering, and the travel from which a stop is met. */
export interface CaseRange {
  readonly travel: readonly [low: number, high: number];
  readonly steer: readonly [low: number, high: number];
}

/** The largest size found of a force so far, and where. N, mm. */
export interface Largest {
  readonly travel: number;
  readonly steer: number;
  readonly size: number;
}

/** What is proven of a force, N. */
export interface Bound {
  /** No pose of the case's range has more; null = nothing is proven. */
  readonly bound: number | null;
  /** It is within `BOUND_TOLERANCE` of the largest found. */
  readonly isNear: boolean;
}

interface Cell extends CellOfPoses {
  readonly isStopped: boolean;
  readonly halvings: number;
  /** Most that each force is in it. */
  readonly most: ReadonlyMap<ForceName, number>;
  /** The longer way, by how the forces bend over it. */
  readonly isSteerWide: boolean;
}

/**
 * Proves how large each force of a case can be over all its poses: a bound over cells of poses, halved where it is highest until it
 * is within `BOUND_TOLERANCE` of the largest found, or the budget is spent.
 * @param found the largest known; @param better told of a pose in the middle of a cell that seems to pass them: puts it there if it does
 * @returns nothing of a force that no pose has
 */
export function boundForces(
  model: Model,
  carriers: Carriers,
  one: LoadCase,
  side: Side,
  range: CaseRange,
  found: ReadonlyMap<ForceName, Largest>,
  better: (travel: number, steer: number) => void,
  budget: Budget,
): ReadonlyMap<ForceName, Bound> {
  const least = BOUND_TOLERANCE * loadOf(model, one, side);
  const wanted = (name: ForceName) => {
    const size = found.get(name)?.size ?? 0;
    return size + Math.max(BOUND_TOLERANCE * size, least);
  };
  const excess = ({ most }: Cell) => Math.max(...[...most].map(([name, size]) => size / wanted(name)));
  const bounds = new Map<ForceName, number>();
  const cells: Cell[] = [];
  const heap = new MinHeap();
  const add = (cell: Omit<Cell, "most" | "isSteerWide">) => {
    const ways = forceJets(model, carriers, one, side, cell, cell.isStopped);
    if (ways.length === 0) return;
    if (middleOf(ways) > 1) {
      const travel = travelOf(model, side, cell.angle);
      if (travel !== null) better(travel, cell.steer);
    }
    const made = { ...cell, ...mostOf(ways, cell) };
    heap.push(-excess(made), cells.length);
    cells.push(made);
  };
  /** The largest share that a force in the middle of a cell is of what was found. */
  const middleOf = (ways: readonly ForceJets[]) =>
    Math.max(
      ...ways.flatMap((way) =>
        Object.entries(way).map(([name, force]) => {
          const size = Math.hypot(...force.map(({ mid }) => mid));
          return size / ((found.get(name as ForceName)?.size ?? 0) * (1 + ROUNDING) || least);
        }),
      ),
    );
  firstCells(model, carriers, side, range).forEach(add);
  while (heap.size > 0) {
    const cell = cells[heap.pop()]!;
    const over = excess(cell);
    const isLost = over === Number.POSITIVE_INFINITY && cell.halvings >= MOST_HALVINGS;
    const isEnough = over <= 1 || isLost || cells.length > MOST_CELLS || budget.isSpent(2 * CELL_WORK);
    if (isEnough)
      for (const [name, size] of cell.most) bounds.set(name, Math.max(bounds.get(name) ?? 0, size));
    else halves(cell).forEach(add);
  }
  return new Map(
    [...bounds].map(([name, size]) => {
      const isNear = size <= wanted(name);
      return [name, { bound: Number.isFinite(size) ? size * (1 + ROUNDING) : null, isNear }];
    }),
  );
}

/** Size of what the case puts on the wheel, N. */
function loadOf({ setup: { masses } }: Model, one: LoadCase, side: Side): number {
  const unit = one.kind === "force" ? 1 : GRAVITY * (side === "left" ? masses!.corner : masses!.cornerRight);
  return unit * Math.hypot(one.forward, one.outboard, one.up);
}

function firstCells(model: Model, { bumpStop }: Carriers, side: Side, { travel, steer }: CaseRange) {
  const stop = bumpStop?.from ?? Number.POSITIVE_INFINITY;
  const angleAt = (mm: number) => armAngleFor(model.frontEnd[side], mm);
  const [low, high] = travel;
  const stretches = [
    ...(low < stop ? [{ from: low, to: Math.min(high, stop), isStopped: false }] : []),
    ...(high >= stop ? [{ from: Math.max(low, stop), to: high, isStopped: true }] : []),
  ];
  return stretches.flatMap(({ from, to, isStopped }) =>
    parts(angleAt(from), angleAt(to)).flatMap(([angle, angleHalf]) =>
      parts(...steer).map(([middle, steerHalf]) => ({
        angle,
        angleHalf,
        steer: middle,
        steerHalf,
        isStopped,
        halvings: 0,
      })),
    ),
  );
}

/** A range in equal parts: the middle and half width of each. One that is a single value is one part. */
function parts(low: number, high: number): readonly (readonly [number, number])[] {
  if (!(high > low)) return [[low, 0]];
  const half = (high - low) / (2 * FIRST);
  return Array.from({ length: FIRST }, (_, i) => [low + (2 * i + 1) * half, half * (1 + ROUNDING)] as const);
}

function halves({ angle, angleHalf, steer, steerHalf, isStopped, halvings, isSteerWide }: Cell) {
  const same = { angle, angleHalf, steer, steerHalf, isStopped, halvings: halvings + 1 };
  return [-0.5, 0.5].map((share) =>
    isSteerWide
      ? { ...same, steer: steer + share * steerHalf, steerHalf: 0.5 * steerHalf }
      : { ...same, angle: angle + share * angleHalf, angleHalf: 0.5 * angleHalf },
  );
}

function mostOf(ways: readonly ForceJets[], { angleHalf, steerHalf }: CellOfPoses) {
  const most = new Map<ForceName, number>();
  let [byAngle, bySteer] = [0, 0];
  for (const way of ways)
    for (const [name, force] of Object.entries(way) as [ForceName, JetVec][]) {
      most.set(name, Math.max(most.get(name) ?? 0, mostLength(force)));
      for (const { uu, uuOff, vv, vvOff } of force) {
        byAngle += Math.abs(uu) + uuOff;
        bySteer += Math.abs(vv) + vvOff;
      }
    }
  // Where nothing is known yet, by their own sizes: a full lock turns a wheel by less than a radian.
  const isKnown = Number.isFinite(byAngle + bySteer);
  return { most, isSteerWide: isKnown ? bySteer > byAngle : steerHalf > angleHalf };
}

/** mm; null where the wheel cannot stand straight ahead at that arm angle. */
function travelOf({ frontEnd }: Model, side: Side, angle: number): number | null {
  const { row, innerAtRest, centerHeightAtRest } = frontEnd[side];
  const pose = new Float64Array(POSE_ROW);
  const status = poseRowTo(pose, 0, row, Math.cos(angle), Math.sin(angle), ...innerAtRest);
  return status === PoseStatus.Ok ? pose[POSE.wheelCenter + 2]! - centerHeightAtRest : null;
}
