import { length, scale } from "../../geometry/vec.ts";
import type { LoadCase } from "../../setup/types/loadsTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import type { ForceAt } from "../strength/wrench.ts";
import { type AppliedLoads, appliedLoads, pushLineOf } from "./appliedLoads.ts";
import type { Carriers } from "./carriers.ts";
import { equilibriumOf, type PushLine, type Support } from "./equilibrium.ts";
import { type LinkageAt, linkageAt } from "./linkageAt.ts";

export type ForceName = "lowerBallJoint" | "upperBallJoint" | "tieRod" | "spring" | "bumpStop";

/** One case on one side at one pose, in equilibrium. Left-hand frame (the right side mirrored), N and mm. */
export interface CaseAt {
  readonly name: string;
  readonly side: Side;
  readonly linkage: LinkageAt;
  readonly applied: AppliedLoads;
  readonly support: Support;
  /** On its arm. */
  readonly spring: ForceAt;
  /** On its arm; null = not met, or none given. */
  readonly bumpStop: ForceAt | null;
}

/** A case standing still on one wheel: what the spring has to carry there is what it carries when a stop takes the rest. */
export const STANDING: LoadCase = {
  name: "standing",
  kind: "multiples",
  forward: 0,
  outboard: 0,
  up: 1,
  at: "contactPatch",
  wheel: "rolls",
  travel: null,
  steer: null,
};

/** null where the pose is out of reach or the linkage cannot carry the case there. */
export function caseAt(
  model: Model,
  carriers: Carriers,
  one: LoadCase,
  side: Side,
  travel: number,
  steer: number,
): CaseAt | null {
  const linkage = linkageAt(model.frontEnd, side, travel, steer);
  return linkage === null ? null : caseOn(model, carriers, one, side, linkage);
}

/** The same on a linkage that stands at its pose already. */
export function caseOn(
  model: Model,
  carriers: Carriers,
  one: LoadCase,
  side: Side,
  linkage: LinkageAt,
): CaseAt | null {
  const applied = appliedLoads(one, side, linkage, model.setup.masses);
  if (applied === null) return null;
  const forces = allOf(applied);
  const line = pushLineOf(carriers.spring, linkage);
  const made = (support: Support, spring: number, bumpStop: ForceAt | null): CaseAt => ({
    name: one.name,
    side,
    linkage,
    applied,
    support,
    spring: pushOf(line, spring),
    bumpStop,
  });
  const stop = carriers.bumpStop;
  if (stop !== null && linkage.travel >= stop.from) {
    const held = stop.springLoad ?? standingPush(model, carriers, side, linkage.travel);
    const stopLine = pushLineOf(stop, linkage);
    const given = held === null ? null : [{ line, push: held }];
    const support = given && equilibriumOf(linkage, forces, stopLine, given);
    // A stop cannot pull: where the spring has all of it, it is not pressed.
    if (support && support.push >= 0) return made(support, held!, pushOf(stopLine, support.push));
  }
  const support = equilibriumOf(linkage, forces, line);
  return support && made(support, support.push, null);
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

/** Every force on knuckle and wheel from outside. */
export function allOf({ wheel, unsprung }: AppliedLoads): readonly ForceAt[] {
  return unsprung === null ? [wheel] : [wheel, unsprung];
}

function pushOf(line: PushLine, push: number): ForceAt {
  return { at: line.at, force: scale(line.along, push) };
}

/** What the spring carries of the corner standing straight ahead, N; null without weights or out of reach. */
function standingPush(model: Model, carriers: Carriers, side: Side, travel: number): number | null {
  const linkage = linkageAt(model.frontEnd, side, travel, 0);
  const applied = linkage && appliedLoads(STANDING, side, linkage, model.setup.masses);
  if (!linkage || !applied) return null;
  return equilibriumOf(linkage, allOf(applied), pushLineOf(carriers.spring, linkage))?.push ?? null;
}
