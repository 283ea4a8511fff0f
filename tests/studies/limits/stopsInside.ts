import fc from "fast-check";
import type { LimitsSetup } from "../../../src/setup/types/limitsTypes.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import type { SteeringInput } from "../../../src/suspension/inputs.ts";
import { demoSetup, exampleSetup } from "../../reference/demoModel.ts";
import { between } from "../../reference/gapCases.ts";
import { hardwareSetup } from "../../reference/hardwareSetup.ts";
import { plausibleTrucks } from "../../suspension/plausibleTrucks.ts";
import { NO_LIMITS } from "./limitTruck.ts";

const DEG = Math.PI / 180;

/** What a stops-inside truck is made of beside its front end; shares of the travel or of full lock. */
const ranges = fc.record({
  swing: between(40 * DEG, 60 * DEG),
  stroke: between(50, 110),
  droop: between(-140, -60),
  bump: between(20, 140),
  bumpStop: fc.option(between(0.3, 0.95), { freq: 2 }),
  droopStrap: fc.option(between(0.3, 0.95), { freq: 2 }),
  steeringStop: fc.option(between(14 * DEG, 42 * DEG), { freq: 1 }),
  steeringStroke: fc.option(between(0.5, 1), { freq: 1 }),
});

/**
 * Trucks with nothing but their moving parts, wide travel, much steering (swings of 40 to 60 degrees) and stops that lie
 * inside of both.
 */
export function trucksWithStopsInside(kind: SteeringInput["type"]): fc.Arbitrary<Model> {
  return fc
    .tuple(plausibleTrucks(kind), ranges)
    .map(([{ input }, { swing, stroke, droop, bump, ...stops }]) => {
      const steering = input.steering.type === "rack" ? { ...input.steering, stroke } : input.steering;
      const limits: LimitsSetup = {
        ...NO_LIMITS,
        bumpStop: stops.bumpStop === null ? null : stops.bumpStop * bump,
        droopStrap: stops.droopStrap === null ? null : stops.droopStrap * droop,
        steeringStop: stops.steeringStop,
        steeringStroke:
          stops.steeringStroke === null
            ? null
            : stops.steeringStroke * (steering.type === "rack" ? stroke : swing),
      };
      const { upperArm, lowerArm, knuckle } = input;
      const turned = steering.type === "rack" ? steering : { ...steering, swing };
      return bareSetup(demoSetup(), {
        truck: { wheelbase: null, upperArm, lowerArm, steering: turned, body: [] },
        knuckle,
        limits,
        travel: { droop, bump },
      });
    })
    .map((setup) => ({ setup, made: modelOf(setup, "generated") }))
    .filter(({ made }) => made.ok)
    .map(({ setup, made }) => {
      if (!made.ok) throw new TypeError("filtered above");
      return { ...made.value, [fc.toStringMethod]: () => JSON.stringify(setup) };
    });
}

/** The smallest trucks found that told gaps past a stop: the long bed with more swing and one stop, nothing else. */
export const PAST_STOP_TRUCKS: Readonly<Record<string, () => Setup>> = {
  "swing 52°, droop strap at −30 mm": () => longBed(52 * DEG, { droopStrap: -30 }),
  "swing 55°, droop strap at −30 mm": () => longBed(55 * DEG, { droopStrap: -30 }),
  "swing 55°, bump stop at 20 mm, box at 35°": () =>
    longBed(55 * DEG, { bumpStop: 20, steeringStroke: 35 * DEG }),
};

function longBed(swing: number, limits: Partial<LimitsSetup>): Setup {
  const example = exampleSetup("long-bed-steering-box.json");
  const { steering } = example.truck;
  if (steering.type !== "pitman") throw new TypeError("the long bed has a steering box");
  return bareSetup(example, {
    truck: { ...example.truck, steering: { ...steering, swing }, body: [] },
    limits: { ...NO_LIMITS, ...limits },
    travel: { droop: -60, bump: 100 },
  });
}

/** A setup with what moves and its stops, nothing else. */
function bareSetup(setup: Setup, change: Partial<Setup>): Setup {
  const hardware = hardwareSetup({ rotor: null, caliper: null });
  const none = { adjusters: null, airSpring: null, masses: null, roll: null, floor: null };
  const alignment = { ...setup.alignment, targets: null };
  return { ...setup, hardware, ...none, alignment, stances: [], measuredStances: [], ...change };
}
