import { MOTION, MOTION_ROW } from "../geometry/motionRow.ts";
import type { SideModel } from "./frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "./motionBound.ts";
import { POSE, POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { SIDE } from "./sideRow.ts";
import { MOTION_SLACK, ROUNDING_SHARE } from "./tolerances.ts";
import { RATE_ROW, wheelRatesTo } from "./wheelRates.ts";

// Leaf scratch.
const pose = new Float64Array(POSE_ROW);
const rates = new Float64Array(RATE_ROW);
const motion = new Float64Array(MOTION_ROW);
const still: InnerEndSpread = { speedMost: 0, velocityOff: 0 };

/** Where the steering axis can be over a range of lower arm angle. Left-hand frame, mm, rad. */
export interface AxisCell {
  readonly lowerBallJoint: Float64Array;
  /** Unit, from the lower ball joint to the upper one, of the pose in the middle where there is one. */
  readonly axis: Float64Array;
  /** How far the lower ball joint can be from there. */
  slide: number;
  /** How far the axis can be turned from there. */
  turn: number;
}

export function axisCell(): AxisCell {
  return { lowerBallJoint: new Float64Array(3), axis: new Float64Array(3), slide: 0, turn: 0 };
}

export const AxisReach = { Unknown: 0, Empty: 1, Bounded: 2 } as const;
export type AxisReach = (typeof AxisReach)[keyof typeof AxisReach];

/**
 * Bounds the steering axis over a range of lower arm angle: by its proven speed, and where that has none, at the end
 * of the upper arm's reach, by the triangle of upper arm and span. `Empty`: no pose of the range closes it.
 */
export function axisCellTo(out: AxisCell, side: SideModel, armAngle: number, armHalf: number): AxisReach {
  const { row, innerAtRest } = side;
  const cos = Math.cos(armAngle);
  const sin = Math.sin(armAngle);
  if (poseRowTo(pose, 0, row, cos, sin, ...innerAtRest) === PoseStatus.Ok) {
    wheelRatesTo(rates, 0, row, pose, 0, cos, sin);
    if (motionBoundTo(motion, row, pose, rates, cos, sin, armHalf, 0, still, [0, 0, 0])) {
      for (let i = 0; i < 3; i++) {
        out.lowerBallJoint[i] = pose[POSE.lowerBallJoint + i]!;
        out.axis[i] = pose[POSE.knuckleZ + i]!;
      }
      out.slide = sizeAt(row, SIDE.lowerQuarter) * armHalf * MOTION_SLACK;
      out.turn = motion[MOTION.armTurnMost]! * armHalf;
      return AxisReach.Bounded;
    }
  }
  return axisByTriangleTo(out, row, cos, sin, armHalf);
}

/**
 * The upper ball joint runs on a circle about its arm's pivots, and D, the way there from the circle's middle to the
 * lower ball joint, sets where: cos θ = (|D|² + radius² − span²) / (2·radius·D across the pivots), θ the turn of the
 * arm off the direction of D. Over the range the lower ball joint's arc bounds both factors to first order with its
 * curvature, hence θ between two arc cosines: a square root at the end of reach, where any speed is infinite.
 */
function axisByTriangleTo(
  out: AxisCell,
  row: Float64Array,
  cos: number,
  sin: number,
  half: number,
): AxisReach {
  const radius = sizeAt(row, SIDE.upperRadial);
  const arc = sizeAt(row, SIDE.lowerRadial);
  const span = row[SIDE.span]!;
  const lower = [0, 0, 0];
  let a = 0;
  let b = 0;
  let lengthSq = 0;
  let rise = 0;
  let va = 0;
  let vb = 0;
  for (let i = 0; i < 3; i++) {
    const radial = row[SIDE.lowerRadial + i]!;
    const quarter = row[SIDE.lowerQuarter + i]!;
    lower[i] = row[SIDE.lowerFoot + i]! + cos * radial + sin * quarter;
    const d = lower[i]! - row[SIDE.upperFoot + i]!;
    const v = cos * quarter - sin * radial;
    a += (d * row[SIDE.upperRadial + i]!) / radius;
    b += (d * row[SIDE.upperQuarter + i]!) / radius;
    va += (v * row[SIDE.upperRadial + i]!) / radius;
    vb += (v * row[SIDE.upperQuarter + i]!) / radius;
    lengthSq += d * d;
    rise += d * v;
  }
  const across = Math.sqrt(a * a + b * b);
  const way = arc * half * MOTION_SLACK;
  // |D + Δ| ≤ |D| + Δ along D + Δ²/2|D|; the arc leaves its tangent by half its curvature.
  const bend = 0.5 * way * half;
  const acrossOff =
    (Math.abs(a * va + b * vb) / across) * half * MOTION_SLACK + bend + (way * way) / (2 * across);
  const c = 0.5 * (lengthSq + radius * radius - span * span);
  const rounding = ROUNDING_SHARE * (lengthSq + radius * radius + span * span);
  const cOff = Math.abs(rise) * half * MOTION_SLACK + Math.sqrt(lengthSq) * bend + 0.5 * way * way + rounding;
  if (!(acrossOff < 0.5 * across) || !(way < 0.5 * across)) return AxisReach.Unknown;
  const most = quotient(c + cOff, radius * (across - acrossOff), radius * (across + acrossOff));
  const least = -quotient(cOff - c, radius * (across - acrossOff), radius * (across + acrossOff));
  if (least > 1 || most < -1) return AxisReach.Empty;
  const low = acosOf(most);
  const high = acosOf(least);
  const middle = c / (radius * across);
  const theta = middle >= -1 && middle <= 1 ? Math.acos(middle) : 0.5 * (low + high);
  const thetaOff = high - theta > theta - low ? high - theta : theta - low;
  // Angles from their sines, all below a right angle.
  const upperOff = radius * (thetaOff + 0.5 * Math.PI * (way / across)) * MOTION_SLACK;
  const turned = row[SIDE.upperRoot]! * Math.sin(theta);
  const cosUpper = (a * Math.cos(theta) - b * turned) / across;
  const sinUpper = (b * Math.cos(theta) + a * turned) / across;
  let stretchSq = 0;
  for (let i = 0; i < 3; i++) {
    out.lowerBallJoint[i] = lower[i]!;
    out.axis[i] =
      row[SIDE.upperFoot + i]! +
      cosUpper * row[SIDE.upperRadial + i]! +
      sinUpper * row[SIDE.upperQuarter + i]! -
      lower[i]!;
    stretchSq += out.axis[i]! ** 2;
  }
  const stretch = Math.sqrt(stretchSq);
  for (let i = 0; i < 3; i++) out.axis[i] = out.axis[i]! / stretch;
  // |k − k₀| for k = (U − L)/span; the middle's own triangle may not close.
  const chord = ((upperOff + way + Math.abs(stretch - span)) / span) * MOTION_SLACK;
  if (!(chord < 1)) return AxisReach.Unknown;
  out.slide = way;
  out.turn = 2 * Math.asin(0.5 * chord);
  return AxisReach.Bounded;
}

/** The greatest value of a number over a divisor between two positive ones. */
function quotient(value: number, least: number, most: number): number {
  return value >= 0 ? value / least : value / most;
}

function acosOf(cosine: number): number {
  return Math.acos(cosine > 1 ? 1 : cosine < -1 ? -1 : cosine);
}

function sizeAt(row: Float64Array, at: number): number {
  return Math.sqrt(row[at]! ** 2 + row[at + 1]! ** 2 + row[at + 2]! ** 2);
}
