import { boundCell, cellBound } from "../../gaps/cells/cellBound.ts";
import { CELL, CELL_ROW } from "../../gaps/cells/cells.ts";
import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { StrutPair } from "../model/pairs.ts";
import { lowerMountTo } from "../model/strut.ts";
import { legCellTo } from "./legCell.ts";
import { legMotionTo, scaledMotionTo } from "./legMotion.ts";

/** Share of a strut below which a piece of it is not halved again. */
const LEAST_PIECE = 1 / 256;

// Leaf scratch.
const found = cellBound();
const cell = new Float64Array(CELL_ROW);
const mount = new Float64Array(3);
const body = new Float64Array(3);
const seen = new Float64Array(MOTION_ROW);
const piece = new Float64Array(MOTION_ROW);
/** Velocity of a lower mount on the arm, mm per radian. */
const tangent = new Float64Array(3);
const axis = new Float64Array(3);
const open: number[] = [];

/**
 * Bounds the gap of a strut over a cell of poses to first order: it is halved into pieces, each bounded by `boundCell`
 * with the motion of the piece as seen from the wheel. A point at fraction s of a strut whose lower mount L runs on the
 * arm moves by s·L̇ on the truck, so seen from the wheel by the integral of −Rᵀ(v + ω × (p − c) − s·L̇): the row is the
 * wheel's, its slide less s·L̇ at the piece's middle, and off by what s, L̇ and p itself can differ. One on the knuckle
 * is a rod fixed to the knuckle whose other end stands still, as the legs of an arm.
 * @param pose, motion the middle pose, and the wheel's motion proven over the cell. @param enough a bound of this is as good
 * as any. @returns no gap of the strut in the cell is below this, mm.
 */
export function boundStrut(
  { strut, ring, part }: StrutPair,
  pose: Float64Array,
  motion: Float64Array,
  enough: number,
): number {
  const radius = part.cells[CELL.radius]!;
  const { lower, bodyMount } = strut;
  lowerMountTo(mount, strut, pose, 0);
  for (let i = 0; i < 3; i++) body[i] = bodyMount[i]!;
  const onArm = lower.on === "lowerArm";
  if (onArm) tangentTo(tangent, lower.side);
  else legMotionTo(seen, motion, pose, body[0]!, body[1]!, body[2]!, null);
  let least = Number.POSITIVE_INFINITY;
  open.length = 0;
  open.push(0, 1);
  while (open.length > 0) {
    const far = open.pop()!;
    const near = open.pop()!;
    if (onArm) {
      legCellTo(cell, body, 0, mount, 0, near, far, radius);
      armPieceTo(piece, motion, lower.radius, near, far);
    } else {
      legCellTo(cell, mount, 0, body, 0, near, far, radius);
      scaledMotionTo(piece, seen, far);
    }
    boundCell(found, ring, pose, POSE.wheelCenter, cell, 0, piece);
    const isWhole = found.partShare < found.armShare + found.steerShare || far - near <= LEAST_PIECE;
    if (found.bound >= enough || isWhole) {
      if (found.bound < least) least = found.bound;
      continue;
    }
    const middle = 0.5 * (near + far);
    open.push(near, middle, middle, far);
  }
  return least;
}

/** The motion, seen from the wheel, of a strut's piece between two fractions of the way to its mount on the arm. */
function armPieceTo(out: Float64Array, wheel: Float64Array, radius: number, near: number, far: number): void {
  out.set(wheel);
  const middle = 0.5 * (near + far);
  const armHalf = wheel[MOTION.armHalf]!;
  const gone = far * radius * armHalf;
  for (let i = 0; i < 3; i++) out[MOTION.armSlide + i] = out[MOTION.armSlide + i]! - middle * tangent[i]!;
  out[MOTION.armSlideOff] =
    out[MOTION.armSlideOff]! +
    0.5 * (far - near) * radius +
    far * radius * armHalf +
    wheel[MOTION.armTurnMost]! * gone;
  out[MOTION.steerSlideOff] = out[MOTION.steerSlideOff]! + wheel[MOTION.steerTurnMost]! * gone;
}

/** Velocity of `mount` as the lower arm turns: its axis × the mount from the pivot line's foot. */
function tangentTo(out: Float64Array, side: Float64Array): void {
  const at = (row: number, i: number) => side[row + (i % 3)]!;
  let radiusSq = 0;
  for (let i = 0; i < 3; i++) radiusSq += at(SIDE.lowerRadial, i) ** 2;
  for (let i = 0; i < 3; i++) {
    axis[i] =
      (at(SIDE.lowerRadial, i + 1) * at(SIDE.lowerQuarter, i + 2) -
        at(SIDE.lowerRadial, i + 2) * at(SIDE.lowerQuarter, i + 1)) /
      radiusSq;
  }
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    out[i] =
      axis[j]! * (mount[k]! - side[SIDE.lowerFoot + k]!) - axis[k]! * (mount[j]! - side[SIDE.lowerFoot + j]!);
  }
}
