import { GAP_ROW } from "../../gaps/partGap.ts";
import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE_ROW } from "../../suspension/poseRow.ts";
import { type BodyPair, pairGapTo, pairMotion, type RodPair } from "../model/pairs.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "../search/cellOfPoses.ts";
import { PoseCells } from "../search/poseCells.ts";
import type { SideRange } from "../search/sideRange.ts";
import type { PoseToStart } from "../search/triedPose.ts";
import { KEEPS, ROUNDING, rodGapOver, slideOf, type Way } from "./rodGapOver.ts";

/** Pairs that can be proven by one gap a cell of poses: a spring or shock is bounded piece by piece alone. */
export type WholePair = BodyPair | RodPair;

/** What was proven of some pairs of one side. */
export interface ProvenOver {
  /** A pose at which one of them misses; null = none was found. */
  readonly missed: { readonly pair: WholePair; readonly at: PoseToStart } | null;
  /** Pairs of which nothing is proven: few cells did not do. */
  readonly left: readonly WholePair[];
}

/** Cells of poses of one side after which what is still open is left. */
const MOST_CELLS = 1500;

/** Halvings after which a cell is left: some thousandth of the range each way. */
const DEEPEST = 14;

/** Cells of poses to begin with, along the arm's range and the steering's. */
const FIRST_ARMS = 14;
const FIRST_STEERS = 16;

/** Halvings after which a cell is looked at for the border of reach. */
const SMALL = 4;

// Scratch: nothing here is reentrant.
const pose = new Float64Array(POSE_ROW);
const motion = new Float64Array(MOTION_ROW);
const row = new Float64Array(GAP_ROW);

const way: Way = { arm: 0, steer: 0 };
let cells: PoseCells | undefined;

/**
 * Whether pairs of one side keep a gap over all its poses: in the middle of a cell of poses the gap of all of the part must be
 * more than what any point of the wheel can get to over the cell, as `motionBoundTo` proves it; else the cell is
 * halved. For verdicts of gaps that are not all but zero that takes far fewer cells than a search for the worst pose.
 * @param least mm: a gap less than this misses
 */
export function provenOverPoses(pairs: readonly WholePair[], range: SideRange, least: number): ProvenOver {
  cells = new PoseCells(range.wheel, cells);
  const poses = cells;
  const left = new Set<WholePair>();
  const seen = new Map(pairs.map((pair) => [pair, nothingSeen()] as const));
  // Large cells first, so that only what is near stays open at the end; each with the pairs still open there.
  const queue = firstCells(poses, range).map((cell): OpenCell => ({ cell, depth: 0, open: pairs }));
  for (const { cell, depth, open } of queue) {
    const still: WholePair[] = [];
    // Of a large cell, halves tell more than its border of reach does.
    const isSmall = !(poses.known[cell]! & Known.Moves) && depth >= SMALL;
    const known = isSmall ? poses.lookAtBorder(cell) : poses.known[cell]!;
    if (known & Known.Empty || (!(known & Known.OtherStands) && poses.isOtherEmpty(cell))) continue;
    if (poses.lookAtLimits(cell) & Known.Passed) continue;
    let cutArm = 0;
    let cutSteer = 0;
    if (known & Known.Moves) {
      load(poses, cell);
      for (const pair of open) {
        if (left.has(pair)) continue;
        const gap = gapOver(pair, seen.get(pair)!, poses, cell, least);
        if (gap === KEEPS) continue;
        if (gap < least && poses.isPose(cell)) {
          const at = cell * CELL_OF_POSES_ROW;
          const arm = poses.rows[at]!;
          return { missed: { pair, at: { arm, steer: poses.rows[at + CELL_OF_POSES.steer]! } }, left: [] };
        }
        still.push(pair);
        cutArm += way.arm;
        cutSteer += way.steer;
      }
    } else {
      still.push(...open.filter((pair) => !left.has(pair)));
      const at = cell * CELL_OF_POSES_ROW;
      cutArm = poses.rows[at + CELL_OF_POSES.armHalf]! * (range.steerHigh - range.steerLow);
      cutSteer = poses.rows[at + CELL_OF_POSES.steerHalf]! * (range.armHigh - range.armLow);
    }
    if (still.length === 0) continue;
    if (depth === DEEPEST || poses.count > MOST_CELLS) {
      for (const pair of still) left.add(pair);
      continue;
    }
    const half = poses.half(cell, cutArm > cutSteer ? "arm" : "steer");
    queue.push(
      { cell: half, depth: depth + 1, open: still },
      { cell: half + 1, depth: depth + 1, open: still },
    );
  }
  return { missed: null, left: [...left] };
}

/** A cell of poses with the pairs that are still open over it. */
interface OpenCell {
  readonly cell: number;
  readonly depth: number;
  readonly open: readonly WholePair[];
}

/** An even division of all poses: of larger cells the motion is hardly ever proven. */
function firstCells(
  poses: PoseCells,
  { armLow, armHigh, steerLow, steerHigh }: SideRange,
): readonly number[] {
  const armHalf = (0.5 * (armHigh - armLow)) / FIRST_ARMS;
  const steerHalf = (0.5 * (steerHigh - steerLow)) / FIRST_STEERS;
  const cells: number[] = [];
  for (let i = 0; i < FIRST_ARMS; i++)
    for (let k = 0; k < FIRST_STEERS; k++) {
      // Back and forth, so that one pose is near the last.
      const along = i % 2 === 0 ? k : FIRST_STEERS - 1 - k;
      const steer = steerLow + (2 * along + 1) * steerHalf;
      cells.push(poses.add(armLow + (2 * i + 1) * armHalf, armHalf, steer, steerHalf));
    }
  return cells;
}

function load({ rows }: PoseCells, cell: number): void {
  const at = cell * CELL_OF_POSES_ROW;
  for (let i = 0; i < POSE_ROW; i++) pose[i] = rows[at + CELL_OF_POSES.pose + i]!;
  for (let i = 0; i < MOTION_ROW; i++) motion[i] = rows[at + CELL_OF_POSES.motion + i]!;
}

/** A pose a pair was looked at in, and what its gap there is not below, mm. */
interface SeenPose {
  readonly pose: Float64Array;
  bound: number;
}

function nothingSeen(): SeenPose {
  return { pose: new Float64Array(POSE_ROW), bound: Number.NEGATIVE_INFINITY };
}

/** mm. By how much more than is needed a gap is looked at: it may do for the poses nearby as well. */
const AHEAD = 120;

/**
 * `KEEPS` where a pair keeps the gap all over the cell loaded; else its gap in the middle, or what of it was looked at. `way`
 * has how far it can change by either input: a ring is carried by the wheel center's move and turned about it.
 */
function gapOver(pair: WholePair, seen: SeenPose, poses: PoseCells, cell: number, least: number): number {
  if (pair.kind === "rod") return rodGapOver(way, pair, pose, motion, poses.rows, cell, least);
  const radius = pair.ring.ballRadius;
  const arm = slideOf(motion, MOTION.armSlide, MOTION.armSlideOff) + motion[MOTION.armTurnMost]! * radius;
  const steer =
    slideOf(motion, MOTION.steerSlide, MOTION.steerSlideOff) + motion[MOTION.steerTurnMost]! * radius;
  way.arm = arm * motion[MOTION.armHalf]!;
  way.steer = steer * motion[MOTION.steerHalf]!;
  const enough = least + way.arm + way.steer + ROUNDING;
  if (seen.bound - pairMotion(pair, seen.pose, 0, pose, 0) >= enough) return KEEPS;
  seen.bound = pairGapTo(row, 0, pair, pose, 0, enough + AHEAD);
  seen.pose.set(pose);
  return seen.bound >= enough ? KEEPS : seen.bound;
}
