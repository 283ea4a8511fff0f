import { cross, dot, length, normalize, sub, type Vec3 } from "../geometry/vec.ts";
import type { FrontEndInput } from "./inputs.ts";
import { POSE, POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { type Reach, reachOf } from "./reach.ts";
import { armCircleOf, SIDE, SIDE_ROW } from "./sideRow.ts";
import { type Steering, steeringOf } from "./steering.ts";
import { DEAD_CENTER_SHARE } from "./tolerances.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "./wheelRates.ts";

export type Side = "left" | "right";

/** One side, ready for the pose kernel. Left-hand frame (the right side mirrored). */
export interface SideModel {
  readonly row: Float64Array;
  /** Inner tie rod end at rest. */
  readonly innerAtRest: Vec3;
  /** Wheel center height at travel 0, steer 0, mm above the floor. */
  readonly centerHeightAtRest: number;
  /** How far the lower arm can go, steering straight ahead. */
  readonly reach: Reach;
}

/** A truck with one knuckle, wheel and tire, assembled. Immutable. */
export interface FrontEnd {
  readonly input: FrontEndInput;
  readonly left: SideModel;
  readonly right: SideModel;
  readonly steering: Steering;
}

/** Why parts do not go together: the setup key to look at, what was found and what would do (mm in data). */
export interface AssemblyIssue {
  readonly code: "span" | "upperArm" | "lowerArm" | "toe" | "tieRod" | "steering" | "rise";
  readonly key: string;
  /** What is wrong and what would be right, without lengths (they are in `least` and `most`). */
  readonly mend: string;
  /** Smallest and largest value that closes, mm, when the key is a length. */
  readonly least?: number;
  readonly most?: number;
}

export type Assembled =
  | { readonly ok: true; readonly frontEnd: FrontEnd }
  | { readonly ok: false; readonly issue: AssemblyIssue };

/** mm. A center link no longer than this is a slip of the pen, and its direction is rounding. */
const LEAST_LINK = 1;

function fail(
  code: AssemblyIssue["code"],
  key: string,
  mend: string,
  range?: { least: number; most: number },
): Assembled {
  return { ok: false, issue: { code, key, mend, ...range } };
}

/**
 * Puts a knuckle, wheel and tire on a truck: fixes the roots and the tie rod length so that both wheels
 * have the wanted toe at travel 0, steer 0.
 */
export function assembleFrontEnd(input: FrontEndInput): Assembled {
  const lower = armCircleOf(input.lowerArm);
  const upper = armCircleOf(input.upperArm);
  const { knuckle } = input;
  if (!(lower.quarter[2] > DEAD_CENTER_SHARE * length(lower.radial))) {
    return fail(
      "lowerArm",
      "truck.lowerArm.ballJoint",
      "the lower arm hangs straight up or down and cannot lift the wheel; measure the ball joint again",
    );
  }
  const lbj = input.lowerArm.ballJoint;
  const fromFoot = sub(lbj, upper.foot);
  const a = dot(upper.radial, fromFoot);
  const b = dot(upper.quarter, fromFoot);
  if (!(Math.abs(b) > DEAD_CENTER_SHARE * dot(upper.radial, upper.radial))) {
    return fail(
      "upperArm",
      "truck.upperArm.ballJoint",
      "the upper arm points straight at the lower ball joint, so it could fold either way; measure the ball joints again",
    );
  }
  const row = new Float64Array(SIDE_ROW);
  row.set(lower.foot, SIDE.lowerFoot);
  row.set(lower.radial, SIDE.lowerRadial);
  row.set(lower.quarter, SIDE.lowerQuarter);
  row.set(upper.foot, SIDE.upperFoot);
  row.set(upper.radial, SIDE.upperRadial);
  row.set(upper.quarter, SIDE.upperQuarter);
  row[SIDE.span] = knuckle.span;
  row[SIDE.upperRoot] = -Math.sign(b);
  row.set(knuckle.steeringArm, SIDE.steeringArm);
  row[SIDE.pinCos] = Math.cos(knuckle.pinAngle);
  row[SIDE.pinSin] = Math.sin(knuckle.pinAngle);
  const reach = knuckle.hubFace - input.wheelOffset;
  row[SIDE.wheelCenter] = knuckle.pinLead;
  row[SIDE.wheelCenter + 1] = reach * Math.cos(knuckle.pinAngle);
  row[SIDE.wheelCenter + 2] = knuckle.pinHeight - reach * Math.sin(knuckle.pinAngle);
  row[SIDE.offset] = input.wheelOffset;
  row[SIDE.loadedRadius] = input.loadedRadius;

  // Span: the circle's nearest and farthest points from the measured lower ball joint.
  const radialSum = dot(fromFoot, fromFoot) + dot(upper.radial, upper.radial);
  const swing = 2 * Math.sqrt(a * a + b * b);
  const range = { least: Math.sqrt(Math.max(0, radialSum - swing)), most: Math.sqrt(radialSum + swing) };
  if (!(knuckle.span > range.least && knuckle.span < range.most)) {
    return fail("span", "knuckle.span", "the upper arm cannot meet a knuckle of this span", range);
  }

  const { steering: linkage } = input;
  if (linkage.type === "pitman" && !(length(sub(linkage.idler.end, linkage.pitman.end)) > LEAST_LINK)) {
    return fail(
      "steering",
      "truck.steering.idler.end",
      "the ends of pitman arm and idler arm stand in one place, and the center link between them has no length; measure both ends again, the idler's is on the other side of the truck",
    );
  }
  const steering = steeringOf(input.steering, knuckle.steeringArm[0] > 0);
  if (steering === null) {
    return fail(
      "steering",
      "truck.steering",
      "the pitman or idler arm stands on its dead center at rest and cannot move the center link sideways; measure pivots and ends again",
    );
  }
  const left = sideModelOf(row, steering.restLeft, input.toe);
  if (typeof left === "string") return sideIssue(left);
  const right = sideModelOf(row, steering.restRight, input.toe);
  if (typeof right === "string") return sideIssue(right);
  return { ok: true, frontEnd: { input, left, right, steering } };
}

/** What keeps one side from standing as measured. */
type SideProblem = "toe" | "tieRod" | "rise";

function sideIssue(problem: SideProblem): Assembled {
  if (problem === "rise") {
    return fail(
      "rise",
      "truck.lowerArm.ballJoint",
      "the wheel does not rise with its lower arm as measured, so the truck cannot stand on it; check the pivots and ball joints of both arms, the inner tie rod end and the wheel's backspacing",
    );
  }
  return problem === "toe"
    ? fail("toe", "alignment.toe", "no turn of the knuckle gives this toe; give a smaller angle")
    : fail(
        "tieRod",
        "knuckle.steeringArm",
        "the tie rod points straight at the steering axis and cannot steer the knuckle; check the steering arm and the inner end",
      );
}

/** Sets the knuckle to its toe with the arm as measured; the tie rod length and its branch follow. A side that does not stand there says why. */
function sideModelOf(base: Float64Array, inner: Vec3, toe: number): SideModel | SideProblem {
  const row = base.slice();
  const turn = turnForToe(row, toe);
  if (turn === null) return "toe";
  const { lbj, x, y, k } = turn;
  const arm = row.subarray(SIDE.steeringArm, SIDE.steeringArm + 3);
  const toOuter: Vec3 = [0, 1, 2].map(
    (i) => arm[0]! * x[i]! + arm[1]! * y[i]! + arm[2]! * k[i]!,
  ) as unknown as Vec3;
  const rod = sub([lbj[0] + toOuter[0], lbj[1] + toOuter[1], lbj[2] + toOuter[2]], inner);
  const rodLength = length(rod);
  // d(length²)/dθ / 2 = rod·(k × arm): its sign tells on which branch the knuckle stands.
  const lever = dot(rod, cross(k, toOuter));
  const armAcross = Math.sqrt(arm[0]! * arm[0]! + arm[1]! * arm[1]!);
  if (!(Math.abs(lever) > DEAD_CENTER_SHARE * rodLength * armAcross)) return "tieRod";
  row[SIDE.tieRodLength] = rodLength;
  // In poseRowTo d(a cos + b sin)/dθ = −root·h, and length² = const − 2(a cos + b sin).
  row[SIDE.tieRodRoot] = Math.sign(lever);
  const pose = new Float64Array(POSE_ROW);
  if (poseRowTo(pose, 0, row, 1, 0, inner[0], inner[1], inner[2]) !== PoseStatus.Ok) return "tieRod";
  const rates = new Float64Array(RATE_ROW);
  wheelRatesTo(rates, 0, row, pose, 0, 1, 0);
  // Travel is told by the wheel's rise: where it does not rise, the reach has no room either way (`reachOf`).
  if (!(rates[RATE.armSlide + 2]! > 0)) return "rise";
  const centerHeightAtRest = pose[POSE.wheelCenter + 2]!;
  let reach: Reach | null = null;
  return {
    row,
    innerAtRest: inner,
    centerHeightAtRest,
    // Found when first asked for: it takes longer than all else, and an alignment tries dozens of trucks at rest.
    get reach() {
      reach ??= reachOf(row, inner, centerHeightAtRest);
      return reach;
    },
  };
}

interface KnuckleTurn {
  readonly lbj: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly k: Vec3;
}

/** Knuckle frame at the measured lower ball joint with the wheel heading −toe (left wheel), or null. */
function turnForToe(row: Float64Array, toe: number): KnuckleTurn | null {
  const at = (i: number): Vec3 => [row[i]!, row[i + 1]!, row[i + 2]!];
  const foot = at(SIDE.lowerFoot);
  const radial = at(SIDE.lowerRadial);
  const lbj: Vec3 = [foot[0] + radial[0], foot[1] + radial[1], foot[2] + radial[2]];
  const ubj = upperJointAt(row, lbj);
  if (ubj === null) return null;
  const k = normalize(sub(ubj, lbj));
  const y0 = normalize([-k[1] * k[0], 1 - k[1] * k[1], -k[1] * k[2]]);
  const x0 = cross(y0, k);
  const heading: Vec3 = [Math.cos(toe), -Math.sin(toe), 0];
  const across: Vec3 = [Math.sin(toe), Math.cos(toe), 0];
  const pinCos = row[SIDE.pinCos]!;
  const pinSin = row[SIDE.pinSin]!;
  // Wheel axis · heading = 0 with axis = pinCos(−s·x0 + c·y0) − pinSin·k.
  const a = pinCos * dot(y0, heading);
  const b = -pinCos * dot(x0, heading);
  const c = pinSin * dot(k, heading);
  const normSq = a * a + b * b;
  const hSq = normSq - c * c;
  if (!(hSq >= 0)) return null;
  for (const root of [1, -1]) {
    const h = root * Math.sqrt(hSq);
    const cos = (a * c - b * h) / normSq;
    const sin = (b * c + a * h) / normSq;
    const x: Vec3 = [cos * x0[0] + sin * y0[0], cos * x0[1] + sin * y0[1], cos * x0[2] + sin * y0[2]];
    const y: Vec3 = [cos * y0[0] - sin * x0[0], cos * y0[1] - sin * x0[1], cos * y0[2] - sin * x0[2]];
    // Of the two turns, the one whose wheel faces outboard.
    if (pinCos * dot(y, across) - pinSin * dot(k, across) > 0) return { lbj, x, y, k };
  }
  return null;
}

function upperJointAt(row: Float64Array, lbj: Vec3): Vec3 | null {
  const at = (i: number): Vec3 => [row[i]!, row[i + 1]!, row[i + 2]!];
  const foot = at(SIDE.upperFoot);
  const radial = at(SIDE.upperRadial);
  const quarter = at(SIDE.upperQuarter);
  const d = sub(lbj, foot);
  const a = dot(radial, d);
  const b = dot(quarter, d);
  const c = 0.5 * (dot(d, d) + dot(radial, radial) - row[SIDE.span]! ** 2);
  const normSq = a * a + b * b;
  const hSq = normSq - c * c;
  if (!(hSq >= 0)) return null;
  const h = row[SIDE.upperRoot]! * Math.sqrt(hSq);
  const cos = (a * c - b * h) / normSq;
  const sin = (b * c + a * h) / normSq;
  return [0, 1, 2].map((i) => foot[i]! + cos * radial[i]! + sin * quarter[i]!) as unknown as Vec3;
}
