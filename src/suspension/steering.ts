import { addScaled, cross, dot, length, mirrorY, normalize, scale, sub, type Vec3 } from "../geometry/vec.ts";
import type { SteeringInput, TurningArmInput } from "./inputs.ts";
import { PoseStatus } from "./poseStatus.ts";

/**
 * Where the inner tie rod ends go as the driver steers. Each side's end is given in that side's
 * left-hand frame (the right one mirrored), so that both can be fed to the same pose kernel.
 */
export interface Steering {
  readonly type: "rack" | "pitman";
  /** Inner ends at rest, left-hand frame of each side. */
  readonly restLeft: Vec3;
  readonly restRight: Vec3;
  /** +1 when a left turn moves the inner ends toward +Y (steering arm ahead of the axis), else −1. */
  readonly sense: 1 | -1;
  /**
   * Fills `out[0..2]` with the left inner end and `out[3..5]` with the right one (mirrored), and
   * `out[6..8]`, `out[9..11]` with their change per unit of `steer`. @param steer −1 … +1, + = left turn.
   */
  readonly innerEndsTo: (out: Float64Array, steer: number) => PoseStatus;
}

/** Numbers that `innerEndsTo` fills. */
export const INNER_ENDS_ROW = 12;

/** A turning arm as a circle: end(β) = foot + cos β·radial + sin β·quarter. */
interface Circle {
  readonly foot: Vec3;
  readonly radial: Vec3;
  readonly quarter: Vec3;
}

function circleOf(arm: TurningArmInput): Circle {
  const toEnd = sub(arm.end, arm.pivot);
  const foot = addScaled(arm.pivot, arm.axis, dot(toEnd, arm.axis));
  const radial = sub(arm.end, foot);
  return { foot, radial, quarter: cross(arm.axis, radial) };
}

/**
 * Makes the steering of a truck. @param armAhead whether the knuckle's steering arm is ahead of the
 * steering axis (x > 0 in the knuckle frame): it decides which way the inner ends go in a left turn.
 * @returns null when the pitman arm's end cannot move sideways (its first motion has no Y), or the
 * idler stands in line with the center link.
 */
export function steeringOf(input: SteeringInput, armAhead: boolean): Steering | null {
  const sense = armAhead ? 1 : -1;
  return input.type === "rack" ? rackOf(input, sense) : pitmanOf(input, sense);
}

function rackOf(input: Extract<SteeringInput, { type: "rack" }>, sense: 1 | -1): Steering {
  const [x, y, z] = input.innerEnd;
  const perSteer = sense * input.stroke;
  return {
    type: "rack",
    restLeft: input.innerEnd,
    restRight: input.innerEnd,
    sense,
    innerEndsTo(out, steer) {
      out[0] = x;
      out[1] = y + perSteer * steer;
      out[2] = z;
      // The right end moves the same way on the truck, so the other way in its mirrored frame.
      out[3] = x;
      out[4] = y - perSteer * steer;
      out[5] = z;
      out.fill(0, 6, INNER_ENDS_ROW);
      out[7] = perSteer;
      out[10] = -perSteer;
      return PoseStatus.Ok;
    },
  };
}

/** Below this share of the arm's length the first sideways motion is taken as none. */
const LEAST_SIDEWAYS_SHARE = 1e-6;

function pitmanOf(input: Extract<SteeringInput, { type: "pitman" }>, sense: 1 | -1): Steering | null {
  const pitman = circleOf(input.pitman);
  const idler = circleOf(input.idler);
  const sideways = pitman.quarter[1];
  if (!(Math.abs(sideways) > LEAST_SIDEWAYS_SHARE * length(pitman.quarter))) return null;
  const swing = Math.sign(sideways) * sense * input.swing;
  const link = sub(input.idler.end, input.pitman.end);
  const linkLengthSq = dot(link, link);
  const restLine = normalize(link);
  const radiusSq = dot(idler.radial, idler.radial);
  const atRest = dot(idler.quarter, sub(input.pitman.end, idler.foot));
  if (!(Math.abs(atRest) > LEAST_SIDEWAYS_SHARE * Math.sqrt(linkLengthSq * radiusSq))) return null;
  // Branch of the measured linkage, as for the upper arm in `poseRowTo`.
  const root = -Math.sign(atRest);
  const leftArm = sub(input.innerEnd, input.pitman.end);
  const rightArm = sub(input.innerEndRight, input.pitman.end);

  return {
    type: "pitman",
    restLeft: input.innerEnd,
    restRight: mirrorY(input.innerEndRight),
    sense,
    innerEndsTo(out, steer) {
      const beta = swing * steer;
      const cos = Math.cos(beta);
      const sin = Math.sin(beta);
      const end = addScaled(addScaled(pitman.foot, pitman.radial, cos), pitman.quarter, sin);
      const endRate = addScaled(scale(pitman.radial, -sin * swing), pitman.quarter, cos * swing);
      const toEnd = sub(end, idler.foot);
      const a = dot(idler.radial, toEnd);
      const b = dot(idler.quarter, toEnd);
      const c = 0.5 * (dot(toEnd, toEnd) + radiusSq - linkLengthSq);
      const normSq = a * a + b * b;
      const hSq = normSq - c * c;
      if (!(hSq >= 0)) return PoseStatus.IdlerOutOfReach;
      const h = root * Math.sqrt(hSq);
      const cosIdler = (a * c - b * h) / normSq;
      const sinIdler = (b * c + a * h) / normSq;
      const idlerEnd = addScaled(addScaled(idler.foot, idler.radial, cosIdler), idler.quarter, sinIdler);
      const line = scale(sub(idlerEnd, end), 1 / Math.sqrt(linkLengthSq));
      // The idler's rate keeps the link's length: line·(idlerRate − endRate) = 0.
      const tangent = addScaled(scale(idler.radial, -sinIdler), idler.quarter, cosIdler);
      const idlerRate = scale(tangent, dot(line, endRate) / dot(line, tangent));
      const lineRate = scale(sub(idlerRate, endRate), 1 / Math.sqrt(linkLengthSq));
      const turn = leastTurn(restLine, line, lineRate);
      if (turn === null) return PoseStatus.IdlerOutOfReach;
      fill(out, 0, end, endRate, turn, leftArm, 1);
      fill(out, 3, end, endRate, turn, rightArm, -1);
      return PoseStatus.Ok;
    },
  };
}

type Turn = (v: Vec3) => { readonly at: Vec3; readonly rate: Vec3 };

/**
 * The least rotation that takes unit `from` to unit `to`, applied to a vector, and its rate as `to` moves
 * at `toRate`: R v = (f·t) v + w × v + w (w·v)/(1 + f·t), w = f × t (Rodrigues' formula without angles).
 * null when the two point opposite ways, where the least rotation is not unique.
 */
function leastTurn(from: Vec3, to: Vec3, toRate: Vec3): Turn | null {
  const c = dot(from, to);
  if (!(1 + c > 1e-9)) return null;
  const w = cross(from, to);
  const cRate = dot(from, toRate);
  const wRate = cross(from, toRate);
  return (v) => {
    const wv = dot(w, v);
    const share = wv / (1 + c);
    const shareRate = dot(wRate, v) / (1 + c) - (wv * cRate) / (1 + c) ** 2;
    const at = addScaled(addScaled(scale(v, c), cross(w, v), 1), w, share);
    const rate = addScaled(
      addScaled(addScaled(scale(v, cRate), cross(wRate, v), 1), wRate, share),
      w,
      shareRate,
    );
    return { at, rate };
  };
}

function fill(out: Float64Array, at: number, end: Vec3, rate: Vec3, turn: Turn, arm: Vec3, ySign: 1 | -1): void {
  const turned = turn(arm);
  for (let i = 0; i < 3; i++) {
    const sign = i === 1 ? ySign : 1;
    out[at + i] = sign * (end[i]! + turned.at[i]!);
    out[at + 6 + i] = sign * (rate[i]! + turned.rate[i]!);
  }
}
