import type { LoadCase } from "../../setup/types/loadsTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { type PartWeight, partWeight } from "../strength/partWeight.ts";
import { type ForceAt, mirroredForce } from "../strength/wrench.ts";
import type { Carriers } from "./carriers.ts";
import { allOf, type CaseAt, caseAt, type ForceName, forceSizes } from "./caseAt.ts";
import type { Strength, StrengthOf, Stress } from "./strengthOf.ts";
import { type LoadsGrid, searchWorst, type WorstForce, type WorstOfCase } from "./worstPoses.ts";

/** One case on one side at one pose; vehicle axes (right side y < 0), N, N·mm, mm. */
export interface LoadsCase {
  readonly name: string;
  readonly side: Side;
  readonly travel: number;
  readonly steer: number;
  /** On wheel and hub, from outside. */
  readonly applied: readonly ForceAt[];
  /** On the knuckle; of spring and bump stop on their arm. null = not met, or none given. */
  readonly on: Readonly<Record<Exclude<ForceName, "bumpStop">, ForceAt>> & {
    readonly bumpStop: ForceAt | null;
  };
  /** Largest force or moment left over, as a share of the load. */
  readonly residual: number;
  /** null = the setup has no build. */
  readonly strength: Strength | null;
}

/** The place with the largest share of yield, and when. */
export interface Governing extends Stress {
  readonly case: string;
  readonly side: Side;
  readonly travel: number;
  readonly steer: number;
}

export interface LoadsReport {
  readonly cases: readonly LoadsCase[];
  /** The pose was asked for: exact there. Else each case stands where the largest found is, which is no bound. */
  readonly isAtPose: boolean;
  /** What was looked at first, and how far the search went on from its largest; null at one pose. */
  readonly grid: LoadsGrid | null;
  /** Where each force of each case is largest, with what no pose passes; empty at one pose. */
  readonly worst: readonly WorstForce[];
  /** null = nothing has a strength to compare. */
  readonly governs: Governing | null;
  readonly weight: PartWeight | null;
  readonly noFrame: StrengthOf["noFrame"];
  readonly cutShort?: true;
}

export interface LoadsAsk {
  /** One case alone; null = all. */
  readonly name: string | null;
  /** null = where it is worst. */
  readonly pose: { readonly travel: number; readonly steer: number } | null;
}

/**
 * What joints and spring carry in each case, and what that makes of the part. Without a pose each case and side is looked at on
 * a grid of travel and steer and told where its largest share of yield is, or without strengths its largest force at the lower
 * ball joint. Exact at a pose; how large a force can be over all of them is proven, of shares the largest found are told.
 */
export function loadsReport(
  model: Model,
  carriers: Carriers,
  strength: StrengthOf | null,
  ask: LoadsAsk,
  budget: Budget,
): LoadsReport {
  const { setup } = model;
  const cases = carriers.cases.filter(({ name }) => ask.name === null || name === ask.name);
  const found: WorstOfCase[] = ask.pose
    ? cases.flatMap((one) => bothAt(model, carriers, one, ask.pose!.travel, ask.pose!.steer))
    : [];
  const searched = ask.pose ? null : searchWorst(model, carriers, strength, cases, budget);
  const told = (searched?.cases ?? found).map(({ at }) => sided(at, strength?.at(at) ?? null));
  return {
    cases: told,
    isAtPose: ask.pose !== null,
    grid: searched?.grid ?? null,
    worst: searched?.worst ?? [],
    governs: governing(told),
    weight: setup.build === null ? null : partWeight(setup.build, setup.knuckle),
    noFrame: strength?.noFrame ?? null,
    ...(budget.cut ? { cutShort: true as const } : {}),
  };
}

function bothAt(
  model: Model,
  carriers: Carriers,
  one: LoadCase,
  travel: number,
  steer: number,
): WorstOfCase[] {
  return (["left", "right"] as const).flatMap((side) => {
    const at = caseAt(model, carriers, one, side, travel, steer);
    return at === null ? [] : [{ at, sizes: forceSizes(at) }];
  });
}

function sided(found: CaseAt, strength: Strength | null): LoadsCase {
  const { name, side, linkage, support, applied, spring, bumpStop } = found;
  const put = (one: ForceAt) => (side === "left" ? one : mirroredForce(one));
  return {
    name,
    side,
    travel: linkage.travel,
    steer: linkage.steer,
    applied: allOf(applied).map(put),
    on: {
      lowerBallJoint: put({ at: linkage.lowerBallJoint, force: support.lowerBallJoint }),
      upperBallJoint: put({ at: linkage.upperBallJoint, force: support.upperBallJoint }),
      tieRod: put({ at: linkage.tieRodOuter, force: support.tieRod }),
      spring: put(spring),
      bumpStop: bumpStop && put(bumpStop),
    },
    residual: support.residual,
    strength,
  };
}

/** Each force where it is largest of all cases and sides, with what none of them passes. */
export function largestForces(worst: readonly WorstForce[]): readonly WorstForce[] {
  return [...new Set(worst.map(({ name }) => name))].map((name) => {
    const all = worst.filter((one) => one.name === name);
    const bounds = all.map(({ bound }) => bound ?? Number.POSITIVE_INFINITY);
    const bound = Math.max(...bounds);
    return {
      ...all.reduce((most, one) => (one.size > most.size ? one : most)),
      bound: Number.isFinite(bound) ? bound : null,
      isNear: all.every(({ isNear }) => isNear),
    };
  });
}

function governing(cases: readonly LoadsCase[]): Governing | null {
  let most: Governing | null = null;
  for (const { name, side, travel, steer, strength } of cases)
    for (const stress of strength?.stresses ?? [])
      if (most === null || stress.shareOfYield > most.shareOfYield)
        most = { ...stress, case: name, side, travel, steer };
  return most;
}
