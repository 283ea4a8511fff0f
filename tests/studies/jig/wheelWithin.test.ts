import { describe, expect, it } from "vitest";
import type { JigReadings } from "../../../src/setup/types/asBuiltTypes.ts";
import { DEFAULT_READING_ACCURACY as WITHIN } from "../../../src/setup/types/defaults.ts";
import { bumpSteer } from "../../../src/studies/geometry/bumpSteer.ts";
import { fitKnuckle } from "../../../src/studies/jig/fitKnuckle.ts";
import { jigReadingsOf } from "../../../src/studies/jig/jigReadings.ts";
import { orderedKnuckle } from "../../../src/studies/jig/jigSheet.ts";
import { wheelNumbers } from "../../../src/studies/jig/wheelNumbers.ts";
import { type WheelWithin, wheelWithin } from "../../../src/studies/jig/wheelWithin.ts";
import { assembleFrontEnd } from "../../../src/suspension/frontEnd.ts";
import { runs } from "../../runs.ts";
import { example, truckOf } from "../loads/loadTruck.ts";
import { noisy, normals } from "./noisyReadings.ts";

const { model } = truckOf(example("ordered-knuckle.json"));
const { setup, frontEnd } = model;
const ordered = orderedKnuckle(setup);
const AT = ordered.pinHeight;
const RANGE = { droop: -80, bump: 80 };
const exact = jigReadingsOf(ordered, setup.jig, AT);
const rod = wheelNumbers(frontEnd, "left", RANGE).tieRod;

const fitOf = (readings: JigReadings) => fitKnuckle(readings, AT, setup.jig, WITHIN, ordered);

describe("how well the readings tell a wheel's numbers on the truck", () => {
  it("is the spread of many draws of noisy readings, each fitted and put on the truck", () => {
    const told = wheelWithin(frontEnd, "left", fitOf(exact), RANGE, rod);
    const normal = normals(52);
    const count = runs(400, 1200);
    const draws = Array.from({ length: count }, () => {
      const { toe: _, ...knuckle } = fitOf(noisy(exact, normal)).knuckle;
      const made = assembleFrontEnd({ ...frontEnd.input, knuckle });
      if (!made.ok) throw new Error(made.issue.mend);
      const numbers = wheelNumbers(made.frontEnd, "left", RANGE);
      return { ...numbers, bumpSteerRms: bumpSteer(made.frontEnd, "left", RANGE)!.rms };
    });
    for (const key of ["camber", "caster", "scrubRadius", "halfTrack", "tieRod", "bumpSteerRms"] as const) {
      const values = draws.map((draw) => draw[key]);
      const mean = values.reduce((sum, value) => sum + value, 0) / count;
      const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1));
      // A standard deviation of so many draws is itself known to 1 / √(2 n): four of these.
      const off = 4 / Math.sqrt(2 * count);
      if (spread < 1e-7) expect(told[key]!, key).toBeLessThan(1e-6);
      else expect(Math.abs(told[key]! / spread - 1), key).toBeLessThan(off);
    }
  });

  it("camber is as uncertain as the pin angle, half track about as the hub face", () => {
    const fit = fitOf(exact);
    const told = wheelWithin(frontEnd, "left", fit, RANGE, rod);
    expect(told.camber! / fit.within.pinAngle!).toBeCloseTo(1, 1);
    expect(told.halfTrack!).toBeGreaterThan(0.5 * fit.within.hubFace!);
    expect(told.halfTrack!).toBeLessThan(4 * fit.within.hubFace!);
  });

  it("what a dimension that nobody read moves is not told, the rest is", () => {
    const { armUp: _, upperToArm: __, lowerToArm: ___, ...few } = exact;
    const told = wheelWithin(frontEnd, "left", fitOf(few), RANGE, rod);
    expect(told.tieRod).toBeNull();
    expect(told.toeAsBolted).toBeNull();
    expect(told.bumpSteerRms).toBeNull();
    const whole = wheelWithin(frontEnd, "left", fitOf(exact), RANGE, rod);
    for (const key of ["camber", "halfTrack", "scrubRadius"] as const satisfies (keyof WheelWithin)[])
      expect(told[key]! / whole[key]!).toBeCloseTo(1, 2);
  });

  it("is alike on both sides of a mirrored truck", () => {
    const fit = fitOf(exact);
    const [left, right] = (["left", "right"] as const).map((side) =>
      wheelWithin(frontEnd, side, fit, RANGE, rod),
    );
    for (const key of Object.keys(left!) as (keyof WheelWithin)[])
      expect(right![key]! / left![key]!).toBeCloseTo(1, 5);
  });
});
