import { sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import type { ArmName } from "../../setup/types/loadsTypes.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { CarriedEnds } from "../../suspension/steering.ts";
import { armAxisOf, carriedByArm, LOWER_ARM, UPPER_ARM } from "../model/carriedByArm.ts";
import type { Jet, JetVec } from "../numeric/jet.ts";
import * as jets from "../numeric/jet.ts";
import type { PivotLine } from "./linkageAt.ts";

/** Poses of one side: the lower arm's angle (rad) and the steering input, each `half` either way of its middle. */
export interface CellOfPoses {
  readonly angle: number;
  readonly angleHalf: number;
  readonly steer: number;
  readonly steerHalf: number;
}

/** The linkage of `linkageAt` over a cell of poses: inputs are the arm's angle and the steering. Left-hand frame, mm. */
export interface LinkageJets {
  readonly lowerBallJoint: JetVec;
  readonly upperBallJoint: JetVec;
  readonly tieRodOuter: JetVec;
  /** Unit, from the outer end to the inner one. */
  readonly rod: JetVec;
  /** Unit, up. */
  readonly steeringAxis: JetVec;
  readonly wheelCenter: JetVec;
  readonly wheelAxis: JetVec;
  readonly contactPatch: JetVec;
  readonly pivots: Readonly<Record<ArmName, PivotLine>>;
  readonly onArm: (arm: ArmName, measured: Vec3) => JetVec;
}

/** A turn by its cosine and sine. */
interface Turn {
  readonly cos: Jet;
  readonly sin: Jet;
}

/**
 * The closed form of the pose kernel (`poseRow.ts`), over a cell at once. Straight ahead where `steer` and its half are 0.
 * @returns "none": no pose of the cell is within reach. Where that is not known either, all numbers are NaN.
 */
export function linkageJets(
  { left, right, steering }: FrontEnd,
  side: Side,
  cell: CellOfPoses,
): LinkageJets | "none" {
  const { row, innerAtRest } = side === "left" ? left : right;
  const at = (place: number) => vecAt(row, place);
  const lowerTurn = jets.turned(cell.angle, cell.angleHalf);
  const lower = onCircle(at(SIDE.lowerFoot), at(SIDE.lowerRadial), at(SIDE.lowerQuarter), lowerTurn);

  const span = row[SIDE.span]!;
  const [upperFoot, upperRadial, upperQuarter] = [
    at(SIDE.upperFoot),
    at(SIDE.upperRadial),
    at(SIDE.upperQuarter),
  ];
  const upperTurn = circleMeets(
    upperRadial,
    upperQuarter,
    jets.minusVec(lower, jets.still(upperFoot)),
    span,
    row[SIDE.upperRoot]!,
  );
  if (upperTurn === "none") return "none";
  const upper = onCircle(upperFoot, upperRadial, upperQuarter, upperTurn);
  const k = jets.timesVec(jets.minusVec(upper, lower), 1 / span);

  const inner =
    steering.carried === null
      ? rackEnd(innerAtRest, (side === "left" ? 1 : -1) * perSteer(steering), cell)
      : carriedEnd(steering.carried, side, cell);
  if (inner === "none") return "none";

  // The frame about the steering axis with no forward part in its outboard direction, and the knuckle's turn in it.
  const zero = jets.constant(0);
  const m = jets.root(jets.minus(jets.constant(1), jets.product(k[1], k[1])));
  const perM = jets.inverse(m);
  const r: JetVec = [jets.product(k[2], perM), zero, jets.times(jets.product(k[0], perM), -1)];
  const s: JetVec = [jets.product(k[1], r[2]), m, jets.times(jets.product(k[1], r[0]), -1)];
  const arm = at(SIDE.steeringArm);
  const tie = row[SIDE.tieRodLength]!;
  const e = jets.minusVec(jets.minusVec(inner, lower), jets.timesVec(k, arm[2]));
  const [er, es] = [jets.dotVec(e, r), jets.dotVec(e, s)];
  const turn = meets(
    jets.plus(jets.times(er, arm[0]), jets.times(es, arm[1])),
    jets.minus(jets.times(es, arm[0]), jets.times(er, arm[1])),
    jets.times(jets.plus(jets.dotVec(e, e), jets.constant(arm[0] ** 2 + arm[1] ** 2 - tie ** 2)), 0.5),
    row[SIDE.tieRodRoot]!,
  );
  if (turn === "none") return "none";
  const x = jets.plusVec(jets.productVec(r, turn.cos), jets.productVec(s, turn.sin));
  const y = jets.minusVec(jets.productVec(s, turn.cos), jets.productVec(r, turn.sin));
  const placed = (p: Vec3) =>
    jets.plusVec(
      lower,
      jets.plusVec(jets.plusVec(jets.timesVec(x, p[0]), jets.timesVec(y, p[1])), jets.timesVec(k, p[2])),
    );

  const outer = placed(arm);
  const wheelCenter = placed(at(SIDE.wheelCenter));
  const wheelAxis = jets.minusVec(jets.timesVec(y, row[SIDE.pinCos]!), jets.timesVec(k, row[SIDE.pinSin]!));
  const level = jets.root(
    jets.plus(jets.product(wheelAxis[0], wheelAxis[0]), jets.product(wheelAxis[1], wheelAxis[1])),
  );
  const loadedRadius = row[SIDE.loadedRadius]!;
  const sideways = jets.times(jets.product(wheelAxis[2], jets.inverse(level)), loadedRadius);
  const contactPatch: JetVec = [
    jets.plus(wheelCenter[0], jets.product(sideways, wheelAxis[0])),
    jets.plus(wheelCenter[1], jets.product(sideways, wheelAxis[1])),
    jets.minus(wheelCenter[2], jets.times(level, loadedRadius)),
  ];
  return {
    lowerBallJoint: lower,
    upperBallJoint: upper,
    tieRodOuter: outer,
    rod: jets.timesVec(jets.minusVec(inner, outer), 1 / tie),
    steeringAxis: k,
    wheelCenter,
    wheelAxis,
    contactPatch,
    pivots: {
      lowerArm: { foot: at(SIDE.lowerFoot), axis: armAxisOf(row, LOWER_ARM) },
      upperArm: { foot: upperFoot, axis: armAxisOf(row, UPPER_ARM) },
    },
    onArm: (name, measured) => {
      const arm = name === "lowerArm" ? LOWER_ARM : UPPER_ARM;
      const { cos, sin } = name === "lowerArm" ? lowerTurn : upperTurn;
      const [foot, radial] = [vecAt(row, arm.foot), vecAt(row, arm.radial)];
      const perSize = 1 / Math.hypot(...radial);
      const fixed = carriedByArm(row, arm, sub(measured, foot), null);
      const [c, q] = [fixed.radial * perSize, fixed.quarter * perSize];
      const along0 = fixed.axis.map((n, i) => n * fixed.along + foot[i]!) as unknown as Vec3;
      return onCircle(along0, radial, vecAt(row, arm.quarter), {
        cos: jets.minus(jets.times(cos, c), jets.times(sin, q)),
        sin: jets.plus(jets.times(sin, c), jets.times(cos, q)),
      });
    },
  };
}

function onCircle(foot: Vec3, radial: Vec3, quarter: Vec3, { cos, sin }: Turn): JetVec {
  return jets.plusVec(jets.still(foot), jets.plusVec(jets.along(radial, cos), jets.along(quarter, sin)));
}

/** mm that the left inner end moves per unit of a rack's steering. */
function perSteer({ innerEndsTo }: FrontEnd["steering"]): number {
  const ends = new Float64Array(12);
  innerEndsTo(ends, 0);
  return ends[7]!;
}

function rackEnd(rest: Vec3, rate: number, { steer, steerHalf }: CellOfPoses): JetVec {
  return [
    jets.constant(rest[0]),
    jets.alongSecond(rest[1] + rate * steer, rate * steerHalf),
    jets.constant(rest[2]),
  ];
}

/** The inner end on a center link, as `linkAt` and `leastTurn` place it. */
function carriedEnd(
  { linkage, restLine, arms }: CarriedEnds,
  side: Side,
  cell: CellOfPoses,
): JetVec | "none" {
  const { pitman, idler, swing, root: branch, linkLength } = linkage;
  const beta = jets.turned(swing * cell.steer, swing * cell.steerHalf);
  const [cos, sin] = [jets.swapped(beta.cos), jets.swapped(beta.sin)];
  const end = onCircle(pitman.foot, pitman.radial, pitman.quarter, { cos, sin });
  const idlerTurn = circleMeets(
    idler.radial,
    idler.quarter,
    jets.minusVec(end, jets.still(idler.foot)),
    linkLength,
    branch,
  );
  if (idlerTurn === "none") return "none";
  const idlerEnd = onCircle(idler.foot, idler.radial, idler.quarter, idlerTurn);
  const line = jets.timesVec(jets.minusVec(idlerEnd, end), 1 / linkLength);
  const c = jets.dotStill(line, restLine);
  const w = jets.crossVec(jets.still(restLine), line);
  const arm = arms[side];
  const share = jets.product(jets.dotStill(w, arm), jets.inverse(jets.plus(jets.constant(1), c)));
  const there = jets.plusVec(
    end,
    jets.plusVec(
      jets.plusVec(jets.along(arm, c), jets.crossVec(w, jets.still(arm))),
      jets.productVec(w, share),
    ),
  );
  return side === "left" ? there : [there[0], jets.times(there[1], -1), there[2]];
}

/** The turn at which a point on a circle about 0 is `reach` from `to`. */
function circleMeets(radial: Vec3, quarter: Vec3, to: JetVec, reach: number, branch: number): Turn | "none" {
  const sizeSq = radial[0] ** 2 + radial[1] ** 2 + radial[2] ** 2;
  const c = jets.times(jets.plus(jets.dotVec(to, to), jets.constant(sizeSq - reach ** 2)), 0.5);
  return meets(jets.dotStill(to, radial), jets.dotStill(to, quarter), c, branch);
}

/** a cos + b sin = c. */
function meets(a: Jet, b: Jet, c: Jet, branch: number): Turn | "none" {
  const normSq = jets.plus(jets.product(a, a), jets.product(b, b));
  const hSq = jets.minus(normSq, jets.product(c, c));
  if (jets.signOf(hSq) < 0) return "none";
  const h = jets.times(jets.root(hSq), branch);
  const per = jets.inverse(normSq);
  return {
    cos: jets.product(jets.minus(jets.product(a, c), jets.product(b, h)), per),
    sin: jets.product(jets.plus(jets.product(b, c), jets.product(a, h)), per),
  };
}
