import type { Vec3 } from "../../geometry/vec.ts";
import type { ArmName, LoadCase, PusherSetup } from "../../setup/types/loadsTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { GRAVITY } from "../../units/quantity.ts";
import type { Model } from "../model/model.ts";
import type { Jet, JetVec } from "../numeric/jet.ts";
import * as jets from "../numeric/jet.ts";
import type { Carriers } from "./carriers.ts";
import { type ForceName, STANDING } from "./caseAt.ts";
import { type CellOfPoses, type LinkageJets, linkageJets } from "./linkageJets.ts";

/** Forces of a case over a cell of poses, N; one of more than one way the stop may work there. */
export type ForceJets = Readonly<Partial<Record<ForceName, JetVec>>>;

/** What the ground puts on knuckle and wheel: force and moment about the lower ball joint. */
interface Applied {
  readonly force: Vec3;
  readonly moment: JetVec;
}

/** A push on an arm along its line: its lever about the pivot line, and its size where that is known. */
interface Push {
  readonly on: ArmName;
  readonly lever: Jet;
}

const ZERO: JetVec = jets.still([0, 0, 0]);

/**
 * The equilibrium of `caseOn` over a cell of poses, in closed form: the moment about the steering axis gives the tie rod, the rest of
 * the moment the upper ball joint across the axis, the arm that nothing carries the part along it, the other arm the push.
 * @param isStopped all poses of the cell are at or past the bump stop's travel
 * @returns the ways the case may be carried in the cell: one, or two where the stop may be pressed or not; empty = no pose in reach
 */
export function forceJets(
  model: Model,
  carriers: Carriers,
  one: LoadCase,
  side: Side,
  cell: CellOfPoses,
  isStopped: boolean,
): readonly ForceJets[] {
  const linkage = linkageJets(model.frontEnd, side, cell);
  if (linkage === "none") return [];
  const applied = appliedOn(model, one, side, linkage);
  const { spring, bumpStop: stop } = carriers;
  const line = pushOf(linkage, spring);
  const alone = (): ForceJets => {
    const { push, ...rest } = carried(linkage, applied, line, []);
    return { ...rest, spring: [push, jets.constant(0), jets.constant(0)] };
  };
  const held = isStopped && stop !== null ? heldBySpring(model, carriers, side, cell) : null;
  if (held === null) return [alone()];
  const { push, ...rest } = carried(linkage, applied, pushOf(linkage, stop!), [{ line, push: held }]);
  const pressed: ForceJets = {
    ...rest,
    spring: [held, jets.constant(0), jets.constant(0)],
    bumpStop: [push, jets.constant(0), jets.constant(0)],
  };
  const sign = jets.signOf(push);
  return sign > 0 ? [pressed] : sign < 0 ? [alone()] : [pressed, alone()];
}

/** What the spring carries while the stop is met; null = nothing is known to hold, as in `caseOn`. */
function heldBySpring(
  model: Model,
  { spring, bumpStop }: Carriers,
  side: Side,
  cell: CellOfPoses,
): Jet | null {
  if (bumpStop!.springLoad !== null) return jets.constant(bumpStop!.springLoad);
  if (model.setup.masses === null) return null;
  const standing = linkageJets(model.frontEnd, side, { ...cell, steer: 0, steerHalf: 0 });
  if (standing === "none") return null;
  return carried(standing, appliedOn(model, STANDING, side, standing), pushOf(standing, spring), []).push;
}

function appliedOn(model: Model, one: LoadCase, side: Side, linkage: LinkageJets): Applied {
  const { masses } = model.setup;
  const unit = one.kind === "force" ? 1 : GRAVITY * (side === "left" ? masses!.corner : masses!.cornerRight);
  const onWheel: Vec3 = [one.forward * unit, one.outboard * unit, one.up * unit];
  const down = one.kind === "multiples" ? -one.up * masses!.unsprung * GRAVITY : 0;
  const { lowerBallJoint, wheelCenter, wheelAxis } = linkage;
  const at = linkage[one.at];
  const unsprung = jets.crossVec(jets.minusVec(wheelCenter, lowerBallJoint), jets.still([0, 0, down]));
  const moment = jets.plusVec(
    jets.crossVec(jets.minusVec(at, lowerBallJoint), jets.still(onWheel)),
    unsprung,
  );
  const force: Vec3 = [onWheel[0], onWheel[1], onWheel[2] + down];
  if (one.wheel === "braked") return { force, moment };
  const spin = jets.dotVec(wheelAxis, jets.crossVec(jets.minusVec(at, wheelCenter), jets.still(onWheel)));
  return { force, moment: jets.minusVec(moment, jets.productVec(wheelAxis, spin)) };
}

function pushOf(linkage: LinkageJets, { on, bodyMount, armMount }: PusherSetup): Push {
  const at = linkage.onArm(on, armMount);
  const { foot, axis } = linkage.pivots[on];
  const way = jets.minusVec(at, jets.still(bodyMount));
  const perLength = jets.inverse(jets.root(jets.dotVec(way, way)));
  const moment = jets.crossVec(jets.minusVec(at, jets.still(foot)), way);
  return { on, lever: jets.product(jets.dotStill(moment, axis), perLength) };
}

function carried(
  linkage: LinkageJets,
  { force, moment }: Applied,
  carrier: Push,
  given: readonly { readonly line: Push; readonly push: Jet }[],
) {
  const { lowerBallJoint: lower, upperBallJoint: upper, tieRodOuter, rod, steeringAxis: k, pivots } = linkage;
  const rodMoment = jets.crossVec(jets.minusVec(tieRodOuter, lower), rod);
  const rodSize = jets.times(
    jets.product(jets.dotVec(k, moment), jets.inverse(jets.dotVec(k, rodMoment))),
    -1,
  );
  const rest = jets.plusVec(moment, jets.productVec(rodMoment, rodSize));
  const way = jets.minusVec(upper, lower);
  const across = jets.productVec(jets.crossVec(k, rest), jets.inverse(jets.dotVec(k, way)));
  const pulled = jets.productVec(rod, rodSize);
  const leverOf = (arm: ArmName, joint: JetVec) =>
    jets.crossVec(jets.still(pivots[arm].axis), jets.minusVec(joint, jets.still(pivots[arm].foot)));
  const levers = { lowerArm: leverOf("lowerArm", lower), upperArm: leverOf("upperArm", upper) };
  const knownOn = (arm: ArmName) =>
    given.reduce(
      (sum, { line, push }) => (line.on === arm ? jets.plus(sum, jets.product(push, line.lever)) : sum),
      jets.constant(0),
    );
  // What the arms see without the part along the steering axis: the upper joint's force, and the lower one's.
  const others = jets.minusVec(ZERO, jets.plusVec(jets.plusVec(jets.still(force), across), pulled));
  const free = carrier.on === "lowerArm" ? "upperArm" : "lowerArm";
  const [seen, sign] = free === "upperArm" ? [across, 1] : [others, -1];
  const left = jets.minus(knownOn(free), jets.dotVec(levers[free], seen));
  const lengthwise = jets.timesVec(
    jets.productVec(k, jets.product(left, jets.inverse(jets.dotVec(levers[free], k)))),
    sign,
  );
  const upperBallJoint = jets.plusVec(across, lengthwise);
  const lowerBallJoint = jets.minusVec(others, lengthwise);
  const joint = carrier.on === "lowerArm" ? lowerBallJoint : upperBallJoint;
  const turning = jets.minus(jets.dotVec(levers[carrier.on], joint), knownOn(carrier.on));
  return {
    lowerBallJoint,
    upperBallJoint,
    tieRod: pulled,
    push: jets.product(turning, jets.inverse(carrier.lever)),
  };
}
