import { length } from "../../geometry/vec.ts";
import type { LoadCase } from "../../setup/types/loadsTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { evenly } from "../numeric/evenly.ts";
import type { Carriers } from "./carriers.ts";
import { type CaseAt, caseAt, caseOn } from "./caseAt.ts";
import { type LinkageAt, linkageAt } from "./linkageAt.ts";
import type { StrengthOf } from "./strengthOf.ts";

export type ForceName = "lowerBallJoint" | "upperBallJoint" | "tieRod" | "spring" | "bumpStop";

/** Where one force of one case is largest, of the poses looked at. N, mm. */
export interface WorstForce {
  readonly name: ForceName;
  readonly case: string;
  readonly side: Side;
  readonly travel: number;
  readonly steer: number;
  readonly size: number;
}

/** A case on a side where it is worst, and the sizes of its forces there. */
export interface WorstOfCase {
  readonly at: CaseAt;
  readonly sizes: Readonly<Partial<Record<ForceName, number>>>;
}

/** How finely travel and steer are looked at: forces change little from one to the next, and are mostly largest at an end. */
const TRAVELS = 13;
const STEERS = 9;

/** About what one case at one pose takes, microseconds. */
const CASE_WORK = 60;
const STRENGTH_WORK = 400;

/** Every case on both sides over the grid; one that has its own travel or steer only there. */
export function searchWorst(
  model: Model,
  carriers: Carriers,
  strength: StrengthOf | null,
  cases: readonly LoadCase[],
  budget: Budget,
): {
  readonly cases: readonly WorstOfCase[];
  readonly worst: readonly WorstForce[];
  readonly grid: { readonly travels: number; readonly steers: number };
} {
  const { low, high } = limitTravel(model);
  const travels = [...new Set([0, ...evenly(low, high, TRAVELS)])];
  const steers = [...evenly(-1, 1, STEERS)];
  const found: WorstOfCase[] = [];
  const worst: WorstForce[] = [];
  for (const one of cases) {
    const left = searchSide(model, carriers, strength, one, "left", travels, steers, budget);
    const right =
      isMirrored(model) && (one.steer ?? 0) === 0
        ? mirroredSide(model, carriers, one, left)
        : searchSide(model, carriers, strength, one, "right", travels, steers, budget);
    for (const side of [left, right]) {
      if (side.worst !== null) found.push(side.worst);
      worst.push(...side.forces);
    }
  }
  return { cases: found, worst, grid: { travels: travels.length, steers: steers.length } };
}

interface SideSearch {
  readonly worst: WorstOfCase | null;
  readonly forces: readonly WorstForce[];
}

function searchSide(
  model: Model,
  carriers: Carriers,
  strength: StrengthOf | null,
  one: LoadCase,
  side: Side,
  travels: readonly number[],
  steers: readonly number[],
  budget: Budget,
): SideSearch {
  let worst: WorstOfCase | null = null;
  let score = Number.NEGATIVE_INFINITY;
  const forces = new Map<ForceName, WorstForce>();
  for (const linkage of poses(model, one, side, travels, steers)) {
    if (budget.isSpent(strength === null ? CASE_WORK : STRENGTH_WORK) && worst !== null) break;
    const at = caseOn(model, carriers, one, side, linkage);
    if (at === null) continue;
    const sizes = forceSizes(at);
    for (const [name, size] of Object.entries(sizes) as [ForceName, number][]) {
      const { travel, steer } = linkage;
      if (size > (forces.get(name)?.size ?? 0))
        forces.set(name, { name, case: one.name, side, travel, steer, size });
    }
    const shares = strength?.at(at).stresses.map(({ shareOfYield }) => shareOfYield) ?? [];
    const is = shares.length > 0 ? Math.max(...shares) : sizes.lowerBallJoint!;
    if (is > score) {
      score = is;
      worst = { at, sizes };
    }
  }
  return { worst, forces: [...forces.values()] };
}

function* poses(
  { frontEnd }: Model,
  one: LoadCase,
  side: Side,
  travels: readonly number[],
  steers: readonly number[],
): Generator<LinkageAt> {
  for (const travel of one.travel === null ? travels : [one.travel])
    for (const steer of one.steer === null ? steers : [one.steer]) {
      const linkage = linkageAt(frontEnd, side, travel, steer);
      if (linkage !== null) yield linkage;
    }
}

/** Both sides are mirror images with the same weight: one tells of the other with the steering reversed. */
function isMirrored({ mirrored, setup: { masses } }: Model): boolean {
  return mirrored && (masses === null || masses.corner === masses.cornerRight);
}

function mirroredSide(model: Model, carriers: Carriers, one: LoadCase, left: SideSearch): SideSearch {
  const mirror = (steer: number) => -steer + 0;
  const pose = left.worst?.at.linkage;
  const at = pose ? caseAt(model, carriers, one, "right", pose.travel, mirror(pose.steer)) : null;
  return {
    worst: at && { at, sizes: forceSizes(at) },
    forces: left.forces.map((force) => ({ ...force, side: "right", steer: mirror(force.steer) })),
  };
}

/** How large the forces of a case are, N. */
export function forceSizes({
  support,
  spring,
  bumpStop,
}: CaseAt): Readonly<Partial<Record<ForceName, number>>> {
  return {
    lowerBallJoint: length(support.lowerBallJoint),
    upperBallJoint: length(support.upperBallJoint),
    tieRod: length(support.tieRod),
    spring: length(spring.force),
    ...(bumpStop === null ? {} : { bumpStop: length(bumpStop.force) }),
  };
}
