import { addScaled, cross, dot, scale, sub, type Vec3 } from "../geometry/vec.ts";
import type { TurningArmInput } from "./inputs.ts";

/** A turning arm as a circle: end(β) = foot + cos β·radial + sin β·quarter. */
export interface Circle {
  readonly foot: Vec3;
  readonly radial: Vec3;
  readonly quarter: Vec3;
}

/** The circle of a pitman or idler arm, β = 0 at rest. */
export function circleOf(arm: TurningArmInput): Circle {
  const toEnd = sub(arm.end, arm.pivot);
  const foot = addScaled(arm.pivot, arm.axis, dot(toEnd, arm.axis));
  const radial = sub(arm.end, foot);
  return { foot, radial, quarter: cross(arm.axis, radial) };
}

/** Pitman arm, idler arm and the center link between their ends. */
export interface Linkage {
  readonly pitman: Circle;
  readonly idler: Circle;
  /** Pitman arm angle at full left lock, rad, with the sign it turns by. */
  readonly swing: number;
  /** Which of the idler's two positions is taken: the branch of the measured linkage. */
  readonly root: number;
  readonly linkLength: number;
}

/** The center link at one steer: the pitman end and the unit line to the idler end, with rates per steer. */
export interface LinkPose {
  readonly end: Vec3;
  readonly endRate: Vec3;
  readonly line: Vec3;
  readonly lineRate: Vec3;
  /** Tangent of the idler's circle, and idler rate per steer in radians. */
  readonly tangent: Vec3;
  readonly idlerTurn: number;
}

/** Places the center link in closed form (circle of the idler, sphere of the link); null = out of reach. */
export function linkAt({ pitman, idler, swing, root, linkLength }: Linkage, steer: number): LinkPose | null {
  const beta = swing * steer;
  const cos = Math.cos(beta);
  const sin = Math.sin(beta);
  const end = addScaled(addScaled(pitman.foot, pitman.radial, cos), pitman.quarter, sin);
  const endRate = addScaled(scale(pitman.radial, -sin * swing), pitman.quarter, cos * swing);
  const toEnd = sub(end, idler.foot);
  const a = dot(idler.radial, toEnd);
  const b = dot(idler.quarter, toEnd);
  const c = 0.5 * (dot(toEnd, toEnd) + dot(idler.radial, idler.radial) - linkLength * linkLength);
  const normSq = a * a + b * b;
  const hSq = normSq - c * c;
  if (!(hSq >= 0)) return null;
  const h = root * Math.sqrt(hSq);
  const cosIdler = (a * c - b * h) / normSq;
  const sinIdler = (b * c + a * h) / normSq;
  const idlerEnd = addScaled(addScaled(idler.foot, idler.radial, cosIdler), idler.quarter, sinIdler);
  const line = scale(sub(idlerEnd, end), 1 / linkLength);
  // The idler's rate keeps the link's length: line·(idlerRate − endRate) = 0.
  const tangent = addScaled(scale(idler.radial, -sinIdler), idler.quarter, cosIdler);
  const idlerTurn = dot(line, endRate) / dot(line, tangent);
  const lineRate = scale(sub(scale(tangent, idlerTurn), endRate), 1 / linkLength);
  return { end, endRate, line, lineRate, tangent, idlerTurn };
}

/** A vector turned, and its rate. */
export type Turn = (v: Vec3) => { readonly at: Vec3; readonly rate: Vec3 };

/**
 * The least rotation that takes unit `from` to unit `to`, applied to a vector, and its rate as `to` moves
 * at `toRate`: R v = (f·t) v + w × v + w (w·v)/(1 + f·t), w = f × t (Rodrigues' formula without angles).
 * null when the two point opposite ways, where the least rotation is not unique.
 */
export function leastTurn(from: Vec3, to: Vec3, toRate: Vec3): Turn | null {
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
