import fc from "fast-check";
import type { LimitsSetup } from "../../../src/setup/types/limitsTypes.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import type { SteeringInput } from "../../../src/suspension/inputs.ts";
import { between } from "../../reference/gapCases.ts";
import { setupCases } from "../../reference/setupCases.ts";
import { NO_LIMITS } from "./limitTruck.ts";

const DEG = Math.PI / 180;

function cone(least: number, most: number) {
  const side = fc.option(between(least * DEG, most * DEG));
  return fc.record({
    cone: between(least * DEG, most * DEG),
    inOut: side,
    foreAft: side,
    stud: fc.constant(null),
    housing: fc.constant(null),
  });
}

function rodEnd(least: number, most: number) {
  return fc.record({ misalignment: between(least * DEG, most * DEG), stud: fc.constant(null) });
}

/** Limits that most often cut something off: each there or not. */
function limitsOf({ setup }: Model): fc.Arbitrary<LimitsSetup> {
  const { travel, truck } = setup;
  const { steering } = truck;
  const full = steering.type === "rack" ? steering.stroke : steering.swing;
  // Two of three left out, so that most trucks have some and few have all.
  const some = <T>(limit: fc.Arbitrary<T>) =>
    fc.oneof({ weight: 2, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: limit });
  const [x, y, z] = truck.lowerArm.ballJoint;
  return fc.record({
    upperBallJoint: some(cone(2, 14)),
    lowerBallJoint: some(cone(2, 20)),
    outerTieRodEnd: some(rodEnd(4, 40)),
    innerTieRodEnd: some(rodEnd(25, 60)),
    bumpStop: some(between(0, 1.1 * travel.bump)),
    droopStrap: some(between(1.1 * travel.droop, 0)),
    shock: some(
      fc.record({
        bodyMount: fc.constant([x + 15, y - 70, z + 320] as const),
        lowerMount: fc.constant([-20, -40, 50] as const),
        on: fc.constant("knuckle" as const),
        compressed: between(150, 260),
        extended: between(290, 420),
        diameter: fc.constant(null),
      }),
    ),
    steeringStop: some(between(8 * DEG, 40 * DEG)),
    steeringStroke: some(between(0.2 * full, full)),
  }) as fc.Arbitrary<LimitsSetup>;
}

/** Trucks of `setupCases` with limits, and how many. */
export function limitedTrucks(kind: SteeringInput["type"]): fc.Arbitrary<Model> {
  return setupCases(kind).chain((model) =>
    limitsOf(model).map((limits): Model => {
      const setup = { ...model.setup, limits: { ...NO_LIMITS, ...limits } };
      return { ...model, setup, [fc.toStringMethod]: () => JSON.stringify(setup) } as Model;
    }),
  );
}
