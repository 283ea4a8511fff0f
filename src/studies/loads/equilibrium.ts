import { LuDecomposition, Matrix } from "ml-matrix";
import { cross, dot, length, type Numbers, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { ArmName } from "../../setup/types/loadsTypes.ts";
import { type ForceAt, plus, wrenchAbout } from "../strength/wrench.ts";
import type { LinkageAt } from "./linkageAt.ts";

/** A push on an arm along a line: where it acts and its unit direction, away from the body. */
export interface PushLine {
  readonly on: ArmName;
  readonly at: Vec3;
  readonly along: Vec3;
}

/** What holds one knuckle: forces on it by its joints, and along the line that carries the arm. Left-hand frame, N. */
export interface Support {
  readonly lowerBallJoint: Vec3;
  readonly upperBallJoint: Vec3;
  /** At the outer end, along the tie rod; toward the inner end = the rod is pulled. */
  readonly tieRod: Vec3;
  /** Push along the carrying line, N; less than 0 = it would have to pull. */
  readonly push: number;
  /** The largest force or moment left over, as a share of the load; moments by the span. */
  readonly residual: number;
}

/**
 * Statics of one side: knuckle and wheel as one body on two ball joints and a tie rod that only pulls or pushes along itself,
 * each arm free to turn about its pivot line, one of them held by a push along a line. Six equations of the knuckle and one
 * of each arm's turning for the three forces of each ball joint, the tie rod's and the push. Exact for rigid parts without
 * friction or weight of the arms.
 * @param applied forces on knuckle and wheel; @param carrier what holds the arm up; @param given pushes that are known, with their size
 * @returns null where the linkage cannot carry that way: the tie rod or the push has no lever.
 */
export function equilibriumOf(
  linkage: LinkageAt,
  applied: readonly ForceAt[],
  carrier: PushLine,
  given: readonly { readonly line: PushLine; readonly push: number }[] = [],
): Support | null {
  const { lowerBallJoint: lower, upperBallJoint: upper, tieRodOuter: outer } = linkage;
  const rod = normalize(sub(linkage.tieRodInner, outer));
  const span = length(sub(upper, lower));
  const about = wrenchAbout(lower, applied);
  const rows: number[][] = [];
  const wanted: number[] = [];
  const axes: readonly Vec3[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  for (const axis of axes) {
    rows.push([...axis, ...axis, dot(axis, rod), 0]);
    wanted.push(-dot(axis, about.force));
  }
  const rodMoment = cross(sub(outer, lower), rod);
  for (const axis of axes) {
    // Moments by the span, so that all rows are forces: axis · (r × U) = (axis × r) · U.
    const lever = scale(cross(axis, sub(upper, lower)), 1 / span);
    rows.push([0, 0, 0, ...lever, dot(axis, rodMoment) / span, 0]);
    wanted.push(-dot(axis, about.moment) / span);
  }
  for (const arm of ["lowerArm", "upperArm"] as const) {
    const { foot, axis } = linkage.pivots[arm];
    const joint = arm === "lowerArm" ? lower : upper;
    // The arm gets the joint's force turned around; its moment about the pivot line: (axis × r) · force.
    const turning = (line: PushLine) => dot(axis, cross(sub(line.at, foot), line.along)) / span;
    const lever = scale(cross(axis, sub(joint, foot)), -1 / span);
    const none = [0, 0, 0];
    const row = arm === "lowerArm" ? [...lever, ...none] : [...none, ...lever];
    rows.push([...row, 0, carrier.on === arm ? turning(carrier) : 0]);
    const known = given.reduce(
      (sum, { line, push }) => sum + (line.on === arm ? push * turning(line) : 0),
      0,
    );
    wanted.push(-known);
  }
  const solved = solve(rows, wanted);
  if (solved === null) return null;
  const [lx, ly, lz, ux, uy, uz, t, push] = solved as Numbers<8>;
  const support = {
    lowerBallJoint: [lx, ly, lz] as const,
    upperBallJoint: [ux, uy, uz] as const,
    tieRod: scale(rod, t),
    push,
  };
  const residual = leftOver(linkage, applied, support, carrier, given);
  return residual < MOST_LEFT ? { ...support, residual } : null;
}

/** Share of the load. What rounding leaves is a thousand times less; more means that the linkage is at a dead center. */
const MOST_LEFT = 1e-9;

/** Solves by LU with one step of refinement; null where the matrix is singular to rounding. */
function solve(rows: readonly number[][], wanted: readonly number[]): number[] | null {
  const matrix = new Matrix(rows as number[][]);
  const lu = new LuDecomposition(matrix);
  if (lu.isSingular()) return null;
  const right = Matrix.columnVector(wanted as number[]);
  const first = lu.solve(right);
  const better = Matrix.add(first, lu.solve(Matrix.sub(right, matrix.mmul(first))));
  const numbers = better.to1DArray();
  return numbers.every(Number.isFinite) ? numbers : null;
}

/** What is left over of all equations, worked out anew about other points than those they were set up about. */
function leftOver(
  linkage: LinkageAt,
  applied: readonly ForceAt[],
  support: Omit<Support, "residual">,
  carrier: PushLine,
  given: readonly { readonly line: PushLine; readonly push: number }[],
): number {
  const span = length(sub(linkage.upperBallJoint, linkage.lowerBallJoint));
  const forces: ForceAt[] = [
    ...applied,
    { at: linkage.lowerBallJoint, force: support.lowerBallJoint },
    { at: linkage.upperBallJoint, force: support.upperBallJoint },
    { at: linkage.tieRodOuter, force: support.tieRod },
  ];
  const knuckle = wrenchAbout(linkage.wheelCenter, forces);
  let most = Math.max(length(knuckle.force), length(knuckle.moment) / span);
  for (const arm of ["lowerArm", "upperArm"] as const) {
    const { foot, axis } = linkage.pivots[arm];
    const pushes = [{ line: carrier, push: support.push }, ...given].filter(({ line }) => line.on === arm);
    const joint: ForceAt =
      arm === "lowerArm"
        ? { at: linkage.lowerBallJoint, force: scale(support.lowerBallJoint, -1) }
        : { at: linkage.upperBallJoint, force: scale(support.upperBallJoint, -1) };
    const all = [joint, ...pushes.map(({ line, push }) => ({ at: line.at, force: scale(line.along, push) }))];
    // From another point of the pivot line.
    most = Math.max(most, Math.abs(dot(axis, wrenchAbout(plus(foot, scale(axis, span)), all).moment)) / span);
  }
  const load = Math.max(...applied.map(({ force }) => length(force)));
  return load > 0 ? most / load : most;
}
