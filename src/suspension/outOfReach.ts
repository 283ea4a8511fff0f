import { AxisReach, axisCell, axisCellTo } from "./axisCell.ts";
import type { SideModel } from "./frontEnd.ts";
import { LinkReach } from "./linkReach.ts";
import { SIDE } from "./sideRow.ts";
import { innerEndsNear, type Steering } from "./steering.ts";
import { ROUNDING_SHARE } from "./tolerances.ts";

// Leaf scratch.
const axis = axisCell();
const near = innerEndsNear();
const end: [number, number, number] = [0, 0, 0];

/** What `borderCellTo` says of a cell of poses at the border of reach. Left-hand frame. */
export interface BorderCell {
  /** Wheel center and unit axis of one pose amid those the cell may hold. */
  readonly wheel: Float64Array;
  readonly lowerBallJoint: Float64Array;
  /** The knuckle frame of that pose: x, y, z, unit vectors. */
  readonly knuckle: Float64Array;
  /** Both inner tie rod ends, as `Steering.innerEndsTo` has them, and how far they can be from there, mm. */
  readonly inner: Float64Array;
  innerOff: number;
  /** mm. How far the lower ball joint can be from there in the cell. */
  slide: number;
  /** rad. How far the wheel can be turned from there in any pose of the cell… */
  turn: number;
  /** …of which by as much about that pose's steering axis, either way, and by the rest in any way. */
  spin: number;
  /** rad. About how much of that comes from the steering's range. */
  steerTurn: number;
}

export function borderCell(): BorderCell {
  return {
    wheel: new Float64Array(6),
    lowerBallJoint: new Float64Array(3),
    knuckle: new Float64Array(9),
    inner: new Float64Array(6),
    innerOff: 0,
    slide: 0,
    turn: 0,
    spin: 0,
    steerTurn: 0,
  };
}

export const Border = { Unknown: 0, Empty: 1, Bounded: 2 } as const;
export type Border = (typeof Border)[keyof typeof Border];

/**
 * `borderCellTo` for a cell of lower arm angle × steer, which may hold the end of the steering's own reach as well:
 * `Empty` too where the steering can take none of it. Fills `inner` and `innerOff` besides.
 * @param innerAt 0 = the left side, 3 = the right. @param armHalf, steerHalf half ranges, rad and share of lock
 */
export function steeredBorderTo(
  out: BorderCell,
  side: SideModel,
  steering: Steering,
  innerAt: 0 | 3,
  arm: number,
  armHalf: number,
  steer: number,
  steerHalf: number,
): Border {
  const reach = steering.innerEndsNearTo(near, steer, steerHalf);
  if (reach !== LinkReach.Bounded) return reach === LinkReach.Empty ? Border.Empty : Border.Unknown;
  out.inner.set(near.at);
  out.innerOff = near.off;
  for (let i = 0; i < 3; i++) end[i] = near.at[innerAt + i]!;
  return borderCellTo(out, side, arm, armHalf, end, near.off);
}

/**
 * Looks at a cell of lower arm angle × steer that may hold the border of reach, of the upper arm (see `axisCellTo`)
 * or of the tie rod. The outer tie rod end runs on a circle about the steering axis, and its distance from the inner
 * end is 1-Lipschitz in both: `Empty` when that stays off the tie rod's length all over the cell, so no pose is in
 * it. Else `Bounded`: the tie rod's length asks for a cosine of the steering arm's turn off the line to the inner
 * end, between two bounds over the cell, and the wheel is turned from the middle of the two arc cosines by no more
 * than half their difference, however fast it moves there. `Unknown` when the cell is too large to say.
 * @param inner inner tie rod end at the middle; @param innerOff how far it can be from there, mm.
 */
export function borderCellTo(
  out: BorderCell,
  side: SideModel,
  armAngle: number,
  armHalf: number,
  inner: readonly [number, number, number],
  innerOff: number,
): Border {
  const reach = axisCellTo(axis, side, armAngle, armHalf);
  if (reach !== AxisReach.Bounded) return reach === AxisReach.Empty ? Border.Empty : Border.Unknown;
  const { row } = side;
  const k = axis.axis as unknown as readonly [number, number, number];
  const axisOff = axis.turn;
  const lowerOff = axis.slide;
  const [armX, armY, armZ] = [row[SIDE.steeringArm]!, row[SIDE.steeringArm + 1]!, row[SIDE.steeringArm + 2]!];
  const radius = Math.sqrt(armX * armX + armY * armY);
  const d = [0, 0, 0];
  let along = 0;
  let distanceSq = 0;
  for (let i = 0; i < 3; i++) {
    d[i] = inner[i]! - axis.lowerBallJoint[i]! - armZ * k[i]!;
    along += d[i]! * k[i]!;
    distanceSq += d[i]! * d[i]!;
  }
  const distance = Math.sqrt(distanceSq);
  const across = Math.sqrt(Math.max(0, distanceSq - along * along));
  const nearest = Math.sqrt(along * along + (across - radius) ** 2);
  const farthest = Math.sqrt(along * along + (across + radius) ** 2);
  const rod = row[SIDE.tieRodLength]!;
  const slack = innerOff + lowerOff + (Math.abs(armZ) + radius) * axisOff;
  if (nearest - slack > rod || farthest + slack < rod) return Border.Empty;

  // cos(turn off the line) = c / (radius · across), c = (radius² + distance² − rod²) / 2.
  const lineOff = innerOff + lowerOff + Math.abs(armZ) * axisOff;
  const acrossOff = lineOff + distance * axisOff;
  if (!(acrossOff < 0.5 * across && axisOff < 0.5)) return Border.Unknown;
  const c = 0.5 * (radius * radius + distanceSq - rod * rod);
  const rounding = ROUNDING_SHARE * (radius * radius + distanceSq + rod * rod);
  const cOff = lineOff * (distance + 0.5 * lineOff) + rounding;
  const narrow = radius * (across - acrossOff);
  const wide = radius * (across + acrossOff);
  const most = c + cOff >= 0 ? (c + cOff) / narrow : (c + cOff) / wide;
  const least = c - cOff >= 0 ? (c - cOff) / wide : (c - cOff) / narrow;
  const low = Math.acos(Math.min(1, Math.max(-1, most)));
  const high = Math.acos(Math.min(1, Math.max(-1, least)));
  // Angles from chords: an angle below π/2 is at most π/2 times its sine.
  const lineTurn = (0.5 * Math.PI * acrossOff) / (across - acrossOff);
  out.spin = 0.5 * (high - low);
  out.turn = out.spin + lineTurn + Math.PI * axisOff;
  out.steerTurn = acrossOff > 0 ? (out.spin + lineTurn) * (innerOff / acrossOff) : 0;
  out.slide = lowerOff;
  // The knuckle with its steering arm turned off the line to the inner end by the middle of the two.
  const turn = 0.5 * (low + high);
  const cos = Math.cos(turn);
  const sin = row[SIDE.tieRodRoot]! * Math.sin(turn);
  const line = d.map((v, i) => (v - along * k[i]!) / across);
  const [wx, wy, wz] = [row[SIDE.wheelCenter]!, row[SIDE.wheelCenter + 1]!, row[SIDE.wheelCenter + 2]!];
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const m = (i + 2) % 3;
    const beside = k[j]! * line[m]! - k[m]! * line[j]!;
    // Direction of the steering arm in the plane across the axis, and a quarter turn on.
    const arm = cos * line[i]! + sin * beside;
    const quarter = cos * beside - sin * line[i]!;
    const x = (armX * arm - armY * quarter) / radius;
    const y = (armY * arm + armX * quarter) / radius;
    out.lowerBallJoint[i] = axis.lowerBallJoint[i]!;
    out.knuckle[i] = x;
    out.knuckle[3 + i] = y;
    out.knuckle[6 + i] = k[i]!;
    out.wheel[i] = axis.lowerBallJoint[i]! + wx * x + wy * y + wz * k[i]!;
    out.wheel[3 + i] = row[SIDE.pinCos]! * y - row[SIDE.pinSin]! * k[i]!;
  }
  return Border.Bounded;
}
