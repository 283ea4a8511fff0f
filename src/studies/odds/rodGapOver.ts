import { CELL, CELL_ROW } from "../../gaps/cells/cells.ts";
import { GAP_ROW } from "../../gaps/partGap.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { segmentGapTo } from "../../gaps/segmentGap.ts";
import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import type { InnerEndSpread } from "../../suspension/motionBound.ts";
import { POSE } from "../../suspension/poseRow.ts";
import type { RodPair } from "../model/pairs.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW } from "../search/cellOfPoses.ts";
import { rodCellTo, rodMotionTo } from "../search/rodMotion.ts";

/** The pair keeps the gap all over the cell. */
export const KEEPS = Number.POSITIVE_INFINITY;

/** mm. A gap at a pose is exact to less. */
export const ROUNDING = 1e-5;

/** How far something may get over a cell of poses, mm: by the arm's part of it and by the steering's. */
export interface Way {
  arm: number;
  steer: number;
}

/** Fractions of a rod from its outer end: a piece up to one of them moves by that share of what the far end does. */
const PIECES = [0, 0.2, 0.35, 0.5, 0.7, 1] as const;

// Scratch: nothing here is reentrant.
const seen = new Float64Array(MOTION_ROW);
const piece = new Float64Array(CELL_ROW);
const row = new Float64Array(GAP_ROW);
const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
/** Of the rod's ends in the wheel's frame: along the axis, across it. */
const outerEnd = new Float64Array(4);
const innerEnd = new Float64Array(4);

/**
 * `KEEPS` where a rod pair keeps a gap all over a cell of poses whose motion is proven; else the least of what was looked at
 * in its middle, of which `way` then has how far it can change. Seen from the knuckle, where the solid stands still, the far
 * end of a rod moves as `rodMotionTo` has it and what is nearer the outer end by its share of that, so a piece that is
 * farther off than that keeps the gap.
 * @param pose, motion of the cell, whose row tells how the inner tie rod end moves
 */
export function rodGapOver(
  way: Way,
  { pivots, outerAt, ring, part }: RodPair,
  pose: Float64Array,
  motion: Float64Array,
  rows: Float64Array,
  cell: number,
  least: number,
): number {
  const from = cell * CELL_OF_POSES_ROW;
  const inners = pivots ?? pose;
  const firstAt = pivots === null ? POSE.tieRodInner : 0;
  const count = pivots === null ? 1 : pivots.length / 3;
  const own = pivots === null ? innerMotion(rows, from) : null;
  const radius = part.cells[CELL.radius]!;
  const box = boxOf(ring);
  let [gap, arm, steer] = [KEEPS, 0, 0];
  inWheelFrame(outerEnd, pose, pose, outerAt);
  for (let i = 0; i < count; i++) {
    const at = firstAt + 3 * i;
    rodMotionTo(seen, motion, pose, inners[at]!, inners[at + 1]!, inners[at + 2]!, own);
    const byArm = slideOf(seen, MOTION.armSlide, MOTION.armSlideOff) * motion[MOTION.armHalf]!;
    const bySteer = slideOf(seen, MOTION.steerSlide, MOTION.steerSlideOff) * motion[MOTION.steerHalf]!;
    inWheelFrame(innerEnd, pose, inners, at);
    for (let k = 1; k < PIECES.length; k++) {
      const [near, far] = [PIECES[k - 1]!, PIECES[k]!];
      const enough = least + far * (byArm + bySteer) + ROUNDING;
      if (offBox(box, near, far) - radius >= enough) continue;
      rodCellTo(piece, pose, outerAt, inners, at, near, far, radius);
      const found = segmentGapTo(row, 0, ring, pose, POSE.wheelCenter, piece, 0, enough);
      if (found >= enough) continue;
      // Where convexity does not settle it, nothing is said of the gap.
      gap = Math.min(gap, Number.isNaN(found) ? enough : found);
      arm = Math.max(arm, far * byArm);
      steer = Math.max(steer, far * bySteer);
    }
  }
  way.arm = arm;
  way.steer = steer;
  return gap;
}

/** Greatest speed of a motion's reference place over a cell, mm per unit of one input. */
export function slideOf(of: Float64Array, at: number, offAt: number): number {
  const [x, y, z] = [of[at]!, of[at + 1]!, of[at + 2]!];
  return Math.sqrt(x * x + y * y + z * z) + of[offAt]!;
}

/** How the inner tie rod end moves over a cell of poses. */
function innerMotion(rows: Float64Array, at: number) {
  const v = at + CELL_OF_POSES.innerVelocity;
  spread.speedMost = rows[at + CELL_OF_POSES.innerSpeedMost]!;
  spread.velocityOff = rows[at + CELL_OF_POSES.innerVelocityOff]!;
  return { velocity: [rows[v]!, rows[v + 1]!, rows[v + 2]!] as const, spread };
}

/** Between what x and what radii a solid's section lies, mm. */
interface SectionBox {
  readonly low: number;
  readonly high: number;
  readonly least: number;
  readonly most: number;
}

const boxes = new WeakMap<RingShape, SectionBox>();

function boxOf(ring: RingShape): SectionBox {
  const known = boxes.get(ring);
  if (known !== undefined) return known;
  const xs = ring.outline.map(([x]) => x);
  const box = {
    low: Math.min(...xs),
    high: Math.max(...xs),
    least: ring.leastRadius,
    most: ring.freeRadius,
  };
  boxes.set(ring, box);
  return box;
}

/** A point as seen from the wheel: along its axis, then what is left across. */
function inWheelFrame(out: Float64Array, pose: Float64Array, points: ArrayLike<number>, at: number): void {
  const c = POSE.wheelCenter;
  const a = POSE.wheelAxis;
  let along = 0;
  for (let i = 0; i < 3; i++) {
    out[1 + i] = points[at + i]! - pose[c + i]!;
    along += out[1 + i]! * pose[a + i]!;
  }
  out[0] = along;
  for (let i = 0; i < 3; i++) out[1 + i] = out[1 + i]! - along * pose[a + i]!;
}

/**
 * No point of a rod's piece is nearer to the box about the section than this, mm; 0 = it may reach in. Along a straight line x is
 * linear, and the radius convex: nowhere more than at one of the ends.
 */
function offBox(box: SectionBox, near: number, far: number): number {
  const xNear = outerEnd[0]! + near * (innerEnd[0]! - outerEnd[0]!);
  const xFar = outerEnd[0]! + far * (innerEnd[0]! - outerEnd[0]!);
  const across = Math.max(box.low - Math.max(xNear, xFar), Math.min(xNear, xFar) - box.high, 0);
  const inside = Math.max(0, box.least - Math.max(radiusAt(near), radiusAt(far)));
  return Math.sqrt(across * across + inside * inside);
}

function radiusAt(share: number): number {
  let square = 0;
  for (let i = 1; i < 4; i++) square += (outerEnd[i]! + share * (innerEnd[i]! - outerEnd[i]!)) ** 2;
  return Math.sqrt(square);
}
