import type { AirSpringSetup } from "../../../src/setup/types/airTypes.ts";
import type { LimitsSetup } from "../../../src/setup/types/limitsTypes.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { KEPT } from "../../../src/studies/limits/frontEndLimit.ts";
import type { PassedLimit } from "../../../src/studies/limits/keptPoses.ts";
import { LimitCell } from "../../../src/studies/limits/limitCell.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import { assembleFrontEnd } from "../../../src/suspension/frontEnd.ts";
import type { FrontEndInput } from "../../../src/suspension/inputs.ts";
import { PoseStatus } from "../../../src/suspension/poseStatus.ts";
import { demoModel } from "../demoModel.ts";

/** Nothing limited. */
export const NO_LIMITS: LimitsSetup = {
  upperBallJoint: null,
  lowerBallJoint: null,
  outerTieRodEnd: null,
  innerTieRodEnd: null,
  bumpStop: null,
  droopStrap: null,
  shock: null,
  steeringStop: null,
  steeringStroke: null,
};

/** A model of any front end with these limits: the demo truck's setup with what decides replaced. */
export function limitModel(
  input: FrontEndInput,
  limits: Partial<LimitsSetup> | null,
  rest: Partial<Setup> = {},
): Model {
  const built = assembleFrontEnd(input);
  if (!built.ok) throw new Error(built.issue.mend);
  const demo = demoModel({ truck: { body: [] }, hardware: null });
  const setup: Setup = {
    ...demo.setup,
    ...rest,
    truck: { ...demo.setup.truck, ...input, body: [] },
    limits: limits === null ? null : { ...NO_LIMITS, ...limits },
  };
  return { ...demo, setup, frontEnd: built.frontEnd, mirrored: input.steering.type === "rack" };
}

/** An air spring with everything left out but its mounts. */
export function bareSpring(
  bodyMount: AirSpringSetup["bodyMount"],
  armMount: AirSpringSetup["armMount"],
): AirSpringSetup {
  return {
    bodyMount,
    armMount,
    leastHeight: null,
    greatestHeight: null,
    leastPressure: null,
    greatestPressure: null,
    diameter: null,
    curve: null,
    volume: null,
    exponent: 1.38,
    atmosphere: 0.101325,
  };
}

/**
 * Whether both wheels stand at a travel and steer and keep limits there, by their margins one by one; null = out of reach.
 * @param passed the limits asked for; default all
 */
export function keeperOf(model: Model, passed?: readonly PassedLimit[]) {
  const cells = { left: new LimitCell(model, "left"), right: new LimitCell(model, "right") };
  return (travel: number, steer: number): boolean | null => {
    let keeps = true;
    for (const side of ["left", "right"] as const) {
      const cell = cells[side];
      const arm = armAngleFor(cell.side, travel);
      if (Number.isNaN(arm) || cell.put(arm, steer) !== PoseStatus.Ok) return null;
      for (const [i, { name }] of cell.limits.entries()) {
        const isAsked = passed?.some((one) => one.side === side && one.name === name) ?? true;
        if (isAsked && !(cell.margin(i) >= -KEPT)) keeps = false;
      }
    }
    return keeps;
  };
}
