import type { LoadCase } from "../../setup/types/loadsTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { type Box, climb, type Place } from "../numeric/climb.ts";
import { evenly } from "../numeric/evenly.ts";
import { type Bound, boundForces, type CaseRange, type Largest } from "./boundForces.ts";
import type { Carriers } from "./carriers.ts";
import { type CaseAt, caseAt, caseOn, type ForceName, forceSizes } from "./caseAt.ts";
import { linkageAt } from "./linkageAt.ts";
import type { StrengthOf } from "./strengthOf.ts";

/** Where one force of one case is largest: what was found, and what no pose passes. N, mm. */
export interface WorstForce extends Bound {
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

/** How finely travel and steer are looked at first. */
const TRAVELS = 13;
const STEERS = 9;

/** mm, share of lock. From the grid's largest the search goes on until its steps are no longer than this. */
export const FINEST_TRAVEL = 0.05;
export const FINEST_STEER = 0.001;

const NOT_PROVEN: Bound = { bound: null, isNear: false };

/** The grid's highest places from which the search goes on. */
const CLIMBS = 3;

/** mm before a bump stop is met: the spring alone carries the most it ever does there. */
const BEFORE_STOP = 1e-3;

/** About what one case at one pose takes, microseconds. */
const CASE_WORK = 60;
const STRENGTH_WORK = 400;

/** How it was searched: so many heights by so many steering inputs, then on from the largest of them. */
export interface LoadsGrid {
  readonly travels: number;
  readonly steers: number;
}

/** What a case can be largest by: one of its forces, or the largest share of yield. */
type Aim = ForceName | "share";

/**
 * Every case on both sides over a grid of heights and steering inputs, then from the grid's highest places up as far as it goes:
 * the largest found. Of each force a bound over all poses is proven beside it; of the share of yield none. A case that has its own
 * travel or steer is looked at only there.
 */
export function searchWorst(
  model: Model,
  carriers: Carriers,
  strength: StrengthOf | null,
  cases: readonly LoadCase[],
  budget: Budget,
): {
  readonly cases: readonly WorstOfCase[];
  readonly worst: readonly WorstForce[];
  readonly grid: LoadsGrid;
} {
  const { low, high } = limitTravel(model);
  const stop = carriers.bumpStop?.from;
  const atStop = stop !== undefined && stop > low && stop < high ? [stop - BEFORE_STOP, stop] : [];
  const travels = [...new Set([0, ...evenly(low, high, TRAVELS), ...atStop])].sort((a, b) => a - b);
  const steers = [...evenly(-1, 1, STEERS)];
  const found: WorstOfCase[] = [];
  const worst: WorstForce[] = [];
  for (const one of cases) {
    const search = (side: Side) =>
      searchSide({ model, carriers, strength, budget, one, side }, travels, steers);
    const left = search("left");
    const right =
      isMirrored(model) && (one.steer ?? 0) === 0
        ? mirroredSide(model, carriers, one, left)
        : search("right");
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

/** One case on one side, and what it is searched with. */
interface Subject {
  readonly model: Model;
  readonly carriers: Carriers;
  readonly strength: StrengthOf | null;
  readonly budget: Budget;
  readonly one: LoadCase;
  readonly side: Side;
}

function searchSide(
  subject: Subject,
  allTravels: readonly number[],
  allSteers: readonly number[],
): SideSearch {
  const { model, carriers, one, side } = subject;
  const travels = one.travel === null ? allTravels : [one.travel];
  const steers = one.steer === null ? allSteers : [one.steer];
  const grid = travels.map((travel) => steers.map((steer) => valuesAt(subject, travel, steer, true)));
  const box: Box = [
    [travels[0]!, travels.at(-1)!],
    [steers[0]!, steers.at(-1)!],
  ];
  const aims = new Set(grid.flat().flatMap((values) => [...values.keys()]));
  if (aims.size === 0) return atRest(subject);
  const first: Place = [(box[0][1] - box[0][0]) / (2 * TRAVELS), (box[1][1] - box[1][0]) / (2 * STEERS)];
  const largest = (aim: Aim) => {
    const value = (travel: number, steer: number) =>
      valuesAt(subject, travel, steer, aim === "share").get(aim) ?? Number.NEGATIVE_INFINITY;
    return summits(grid.map((row) => row.map((values) => values.get(aim) ?? Number.NEGATIVE_INFINITY)))
      .map(({ i, k, height }) => ({ at: [travels[i]!, steers[k]!] as const, value: height }))
      .map((from) => climb(value, from, box, first, [FINEST_TRAVEL, FINEST_STEER]))
      .reduce((a, b) => (b.value > a.value ? b : a));
  };
  const found = new Map<ForceName, Largest>();
  let worst: WorstOfCase | null = null;
  for (const aim of aims) {
    const { at, value } = largest(aim);
    const [travel, steer] = at;
    if (aim !== "share") found.set(aim, { travel, steer, size: value });
    else {
      const there = caseAt(model, carriers, one, side, travel, steer);
      worst = there && { at: there, sizes: forceSizes(there) };
    }
  }
  return { worst, forces: bounded(subject, { travel: box[0], steer: box[1] }, found) };
}

/** With what is proven of each force. A pose that passes what was found takes its place. */
function bounded(
  { model, carriers, budget, one, side }: Subject,
  range: CaseRange,
  found: Map<ForceName, Largest>,
): WorstForce[] {
  const better = (travel: number, steer: number) => {
    const at = caseAt(model, carriers, one, side, travel, steer);
    for (const [name, size] of at ? (Object.entries(forceSizes(at)) as [ForceName, number][]) : [])
      if (size > (found.get(name)?.size ?? 0)) found.set(name, { travel, steer, size });
  };
  const bounds = boundForces(model, carriers, one, side, range, found, better, budget);
  return [...found].map(([name, largest]) => ({
    name,
    case: one.name,
    side,
    ...largest,
    ...(bounds.get(name) ?? NOT_PROVEN),
  }));
}

/** Where nothing was looked at for want of time, or nothing is within reach: the case as the truck stands. */
function atRest({ model, carriers, one, side }: Subject): SideSearch {
  const [travel, steer] = [one.travel ?? 0, one.steer ?? 0];
  const at = caseAt(model, carriers, one, side, travel, steer);
  if (at === null) return { worst: null, forces: [] };
  const sizes = forceSizes(at);
  const forces = (Object.entries(sizes) as [ForceName, number][]).map(
    ([name, size]): WorstForce => ({ name, case: one.name, side, travel, steer, size, ...NOT_PROVEN }),
  );
  return { worst: { at, sizes }, forces };
}

/** The highest places of a grid, each no lower than its neighbors, highest first; at least one. */
function summits(grid: readonly (readonly number[])[]) {
  const heightAt = (i: number, k: number) => grid[i]?.[k] ?? Number.NEGATIVE_INFINITY;
  const around = [-1, 0, 1].flatMap((di) => [-1, 0, 1].map((dk) => [di, dk] as const));
  return grid
    .flatMap((row, i) => row.map((height, k) => ({ i, k, height })))
    .filter(({ i, k, height }) => around.every(([di, dk]) => heightAt(i + di, k + dk) <= height))
    .sort((a, b) => b.height - a.height)
    .slice(0, CLIMBS);
}

/** What a case comes to at a pose, by what it can be largest by; empty out of reach or past the budget. */
function valuesAt(
  { model, carriers, strength, budget, one, side }: Subject,
  travel: number,
  steer: number,
  hasShare: boolean,
): ReadonlyMap<Aim, number> {
  const isWorked = hasShare && strength !== null;
  const linkage = budget.isSpent(isWorked ? STRENGTH_WORK : CASE_WORK)
    ? null
    : linkageAt(model.frontEnd, side, travel, steer);
  const at = linkage && caseOn(model, carriers, one, side, linkage);
  if (!at) return new Map();
  const sizes = forceSizes(at);
  const values = new Map<Aim, number>(Object.entries(sizes) as [ForceName, number][]);
  // Without a part to work out, a case is worst where the lower ball joint, which carries most, is loaded most.
  if (hasShare) {
    const shares = isWorked ? strength.at(at).stresses.map(({ shareOfYield }) => shareOfYield) : [];
    values.set("share", shares.length > 0 ? Math.max(...shares) : sizes.lowerBallJoint!);
  }
  return values;
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
