import { boundCell, type CellBound } from "../../gaps/cells/cellBound.ts";
import { CELL, CELL_ROW } from "../../gaps/cells/cells.ts";
import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { SpringOrShockPair } from "../model/pairs.ts";
import { lowerMountTo } from "../model/springOrShock.ts";
import { rodCellTo, rodMotionTo, scaledMotionTo } from "./rodMotion.ts";

// Scratch: what `lookAtSpringOrShock` saw last, and that of a piece.
const cell = new Float64Array(CELL_ROW);
const mount = new Float64Array(3);
const body = new Float64Array(3);
const seen = new Float64Array(MOTION_ROW);
const piece = new Float64Array(MOTION_ROW);
/** Velocity of a lower mount on the arm, mm per radian. */
const tangent = new Float64Array(3);
const axis = new Float64Array(3);

/**
 * Looks at a spring or shock over a cell of poses, for `boundSpringOrShockPiece` to bound pieces of it.
 * @param pose, motion the middle pose, and the wheel's motion proven over the cell.
 */
export function lookAtSpringOrShock(
  { springOrShock }: SpringOrShockPair,
  pose: Float64Array,
  motion: Float64Array,
): void {
  const { bodyMount, lower } = springOrShock;
  lowerMountTo(mount, springOrShock, pose, 0);
  for (let i = 0; i < 3; i++) body[i] = bodyMount[i]!;
  if (lower.on === "lowerArm") tangentTo(tangent, lower.side);
  else rodMotionTo(seen, motion, pose, body[0]!, body[1]!, body[2]!, null);
}

/**
 * Bounds the gap of a piece of the spring or shock looked at last to first order, by `boundCell` with the motion of the
 * piece as seen from the wheel. A point at fraction s of the line to a lower mount L that runs on the arm moves by s·L̇ on
 * the truck, so seen from the wheel by the integral of −Rᵀ(v + ω × (p − c) − s·L̇): the row is the wheel's, its slide less
 * s·L̇ at the piece's middle, and off by what s, L̇ and p itself can differ. One on the knuckle is a rod fixed to the
 * knuckle whose other end stands still, as the rods of an arm.
 * @param near, far fractions of the line from the body mount, or from the lower mount where that is on the knuckle.
 */
export function boundSpringOrShockPiece(
  out: CellBound,
  { springOrShock: { lower }, ring, part }: SpringOrShockPair,
  pose: Float64Array,
  motion: Float64Array,
  near: number,
  far: number,
): void {
  const radius = part.cells[CELL.radius]!;
  if (lower.on === "lowerArm") {
    rodCellTo(cell, body, 0, mount, 0, near, far, radius);
    armPieceTo(piece, motion, lower.radius, near, far);
  } else {
    rodCellTo(cell, mount, 0, body, 0, near, far, radius);
    scaledMotionTo(piece, seen, far);
  }
  boundCell(out, ring, pose, POSE.wheelCenter, cell, 0, piece);
}

/** The motion, seen from the wheel, of a spring's or shock's piece between two fractions of the way to its mount on the arm. */
function armPieceTo(out: Float64Array, wheel: Float64Array, radius: number, near: number, far: number): void {
  for (let i = 0; i < MOTION_ROW; i++) out[i] = wheel[i]!;
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
  const radial = SIDE.lowerRadial;
  const quarter = SIDE.lowerQuarter;
  let radiusSq = 0;
  for (let i = 0; i < 3; i++) radiusSq += side[radial + i]! ** 2;
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    const cross = side[radial + j]! * side[quarter + k]! - side[radial + k]! * side[quarter + j]!;
    axis[i] = cross / radiusSq;
  }
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    out[i] =
      axis[j]! * (mount[k]! - side[SIDE.lowerFoot + k]!) - axis[k]! * (mount[j]! - side[SIDE.lowerFoot + j]!);
  }
}
