import { PoseStatus } from "./poseStatus.ts";
import { SIDE } from "./sideRow.ts";

/** Where things stand in a pose row (three numbers each, left-hand frame, mm or unit vectors). */
export const POSE = {
  lowerBallJoint: 0,
  upperBallJoint: 3,
  tieRodOuter: 6,
  tieRodInner: 9,
  /** Knuckle frame: x forward, y outboard, z up the steering axis. */
  knuckleX: 12,
  knuckleY: 15,
  knuckleZ: 18,
  wheelCenter: 21,
  /** Unit, outboard. */
  wheelAxis: 24,
  hubFace: 27,
  contactPatch: 30,
} as const;

/** Numbers in a pose row. */
export const POSE_ROW = 33;

/** The five numbers that change from pose to pose: a call that hands on numbers boxes them, an array does not. */
const given = new Float64Array(5);

/**
 * Fills one pose row in closed form: lower arm angle → lower ball joint → upper ball joint (circle and
 * sphere) → knuckle turn (tie rod length) → wheel. Left-hand frame, mm. Allocates nothing.
 *
 * Roots: each of the two quadratics has two; the one taken is the branch the measured truck stands on
 * (`upperRoot`, `tieRodRoot`), which cannot change without passing the border of reach.
 *
 * Both are solved as a·cos + b·sin = c without angles: with h² = a² + b² − c²,
 * cos = (a·c − σ·b·h)/(a² + b²), sin = (b·c + σ·a·h)/(a² + b²).
 *
 * Contact patch: ISO 8855 contact center, the point where the ground (level), the wheel plane and the
 * vertical plane through the wheel axis meet, `loadedRadius` below the wheel center in the wheel plane.
 *
 * Speed: one reciprocal serves several quotients, and numbers are stored as soon as they are final, so that
 * few wait at once; without that it takes half as long again (`npm run bench`).
 *
 * @param side constants (`SIDE`); @param cosArm, sinArm lower arm turned up from its measured place;
 * @param innerX, innerY, innerZ inner tie rod end, left-hand frame.
 * @returns `Ok`, or the joint out of reach; then `out` is left as it was.
 */
export function poseRowTo(
  out: Float64Array,
  at: number,
  side: Float64Array,
  cosArm: number,
  sinArm: number,
  innerX: number,
  innerY: number,
  innerZ: number,
): PoseStatus {
  given[0] = cosArm;
  given[1] = sinArm;
  given[2] = innerX;
  given[3] = innerY;
  given[4] = innerZ;
  return givenPoseTo(out, at, side);
}

/** `poseRowTo` of what is `given`. Too long to be inlined where it is called, so it takes no loose numbers. */
function givenPoseTo(out: Float64Array, at: number, side: Float64Array): PoseStatus {
  const cosArm = given[0]!;
  const sinArm = given[1]!;
  const innerX = given[2]!;
  const innerY = given[3]!;
  const innerZ = given[4]!;
  const lx = side[SIDE.lowerFoot]! + cosArm * side[SIDE.lowerRadial]! + sinArm * side[SIDE.lowerQuarter]!;
  const ly =
    side[SIDE.lowerFoot + 1]! + cosArm * side[SIDE.lowerRadial + 1]! + sinArm * side[SIDE.lowerQuarter + 1]!;
  const lz =
    side[SIDE.lowerFoot + 2]! + cosArm * side[SIDE.lowerRadial + 2]! + sinArm * side[SIDE.lowerQuarter + 2]!;

  // Upper ball joint: circle of the upper arm meets the sphere of radius span about the lower one.
  const span = side[SIDE.span]!;
  const fx = side[SIDE.upperFoot]!;
  const fy = side[SIDE.upperFoot + 1]!;
  const fz = side[SIDE.upperFoot + 2]!;
  const px = side[SIDE.upperRadial]!;
  const py = side[SIDE.upperRadial + 1]!;
  const pz = side[SIDE.upperRadial + 2]!;
  const qx = side[SIDE.upperQuarter]!;
  const qy = side[SIDE.upperQuarter + 1]!;
  const qz = side[SIDE.upperQuarter + 2]!;
  const dx = lx - fx;
  const dy = ly - fy;
  const dz = lz - fz;
  const upperA = px * dx + py * dy + pz * dz;
  const upperB = qx * dx + qy * dy + qz * dz;
  const upperC = 0.5 * (dx * dx + dy * dy + dz * dz + (px * px + py * py + pz * pz) - span * span);
  const upperNormSq = upperA * upperA + upperB * upperB;
  const upperHSq = upperNormSq - upperC * upperC;
  if (!(upperHSq >= 0)) return PoseStatus.UpperArmOutOfReach;
  const upperH = side[SIDE.upperRoot]! * Math.sqrt(upperHSq);
  const perUpperNormSq = 1 / upperNormSq;
  const cosUpper = (upperA * upperC - upperB * upperH) * perUpperNormSq;
  const sinUpper = (upperB * upperC + upperA * upperH) * perUpperNormSq;
  const ux = fx + cosUpper * px + sinUpper * qx;
  const uy = fy + cosUpper * py + sinUpper * qy;
  const uz = fz + cosUpper * pz + sinUpper * qz;

  // Steering axis and a frame about it with no forward component in its outboard reference direction.
  const perSpan = 1 / span;
  const kx = (ux - lx) * perSpan;
  const ky = (uy - ly) * perSpan;
  const kz = (uz - lz) * perSpan;
  const m = Math.sqrt(1 - ky * ky);
  const perM = 1 / m;
  const rx = kz * perM;
  const rz = -kx * perM;
  const sx = ky * rz;
  const sy = m;
  const sz = -ky * rx;

  // Knuckle turn: the outer tie rod end stays tieRodLength from the inner one.
  const armX = side[SIDE.steeringArm]!;
  const armY = side[SIDE.steeringArm + 1]!;
  const armZ = side[SIDE.steeringArm + 2]!;
  const tie = side[SIDE.tieRodLength]!;
  const ex = innerX - lx - armZ * kx;
  const ey = innerY - ly - armZ * ky;
  const ez = innerZ - lz - armZ * kz;
  const er = ex * rx + ez * rz;
  const es = ex * sx + ey * sy + ez * sz;
  const tieA = armX * er + armY * es;
  const tieB = armX * es - armY * er;
  const tieC = 0.5 * (armX * armX + armY * armY + (ex * ex + ey * ey + ez * ez) - tie * tie);
  const tieNormSq = tieA * tieA + tieB * tieB;
  const tieHSq = tieNormSq - tieC * tieC;
  if (!(tieHSq >= 0)) return PoseStatus.TieRodOutOfReach;
  out[at] = lx;
  out[at + 1] = ly;
  out[at + 2] = lz;
  out[at + 3] = ux;
  out[at + 4] = uy;
  out[at + 5] = uz;
  out[at + 9] = innerX;
  out[at + 10] = innerY;
  out[at + 11] = innerZ;
  out[at + 18] = kx;
  out[at + 19] = ky;
  out[at + 20] = kz;
  const tieH = side[SIDE.tieRodRoot]! * Math.sqrt(tieHSq);
  const perTieNormSq = 1 / tieNormSq;
  const cosTurn = (tieA * tieC - tieB * tieH) * perTieNormSq;
  const sinTurn = (tieB * tieC + tieA * tieH) * perTieNormSq;
  const xx = cosTurn * rx + sinTurn * sx;
  const xy = sinTurn * sy;
  const xz = cosTurn * rz + sinTurn * sz;
  const yx = cosTurn * sx - sinTurn * rx;
  const yy = cosTurn * sy;
  const yz = cosTurn * sz - sinTurn * rz;
  out[at + 6] = lx + armX * xx + armY * yx + armZ * kx;
  out[at + 7] = ly + armX * xy + armY * yy + armZ * ky;
  out[at + 8] = lz + armX * xz + armY * yz + armZ * kz;
  out[at + 12] = xx;
  out[at + 13] = xy;
  out[at + 14] = xz;
  out[at + 15] = yx;
  out[at + 16] = yy;
  out[at + 17] = yz;

  const wx = side[SIDE.wheelCenter]!;
  const wy = side[SIDE.wheelCenter + 1]!;
  const wz = side[SIDE.wheelCenter + 2]!;
  const pinCos = side[SIDE.pinCos]!;
  const pinSin = side[SIDE.pinSin]!;
  const nx = pinCos * yx - pinSin * kx;
  const ny = pinCos * yy - pinSin * ky;
  const nz = pinCos * yz - pinSin * kz;
  const cx = lx + wx * xx + wy * yx + wz * kx;
  const cy = ly + wx * xy + wy * yy + wz * ky;
  const cz = lz + wx * xz + wy * yz + wz * kz;
  const offset = side[SIDE.offset]!;
  // Down in the wheel plane: the vertical less its part along the wheel axis.
  const level = Math.sqrt(nx * nx + ny * ny);
  const loadedRadius = side[SIDE.loadedRadius]!;
  const sideways = (loadedRadius / level) * nz;

  out[at + 21] = cx;
  out[at + 22] = cy;
  out[at + 23] = cz;
  out[at + 24] = nx;
  out[at + 25] = ny;
  out[at + 26] = nz;
  out[at + 27] = cx + offset * nx;
  out[at + 28] = cy + offset * ny;
  out[at + 29] = cz + offset * nz;
  out[at + 30] = cx + sideways * nx;
  out[at + 31] = cy + sideways * ny;
  out[at + 32] = cz - loadedRadius * level;
  return PoseStatus.Ok;
}
