import { expect, it } from "vitest";
import { runs } from "../../runs.ts";
import { randomTrucks, spread } from "./referee/cases.ts";
import { hearing } from "./referee/hearing.ts";

// As of the examples; check and limits are cut short by a counted budget, so that open answers are told too.

const SEED = 20261;
const TRUCKS = runs(8, 100);

it(`what is told of ${TRUCKS} random trucks agrees with pose, check, map and limits`, () => {
  const complaints = randomTrucks(TRUCKS, SEED).flatMap(({ who, truck }, i) => {
    const { droop, bump } = truck.setup.travel;
    const stances = [0, 0.8 * bump, droop].map((travel) => ({ name: `at ${travel} mm`, travel }));
    return hearing(truck.model, who, {
      ...{ stances, steers: [0.5], lows: [0], samples: spread(12, i + 1) },
      looks: i % 4 === 0 ? 400 : 120,
    });
  });
  expect(complaints).toEqual([]);
});
