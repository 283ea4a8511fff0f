import { describe, expect, it } from "vitest";
import type { LimitsSetup } from "../../../src/setup/types/limitsTypes.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { rollCoverage } from "../../../src/studies/floor/rollCoverage.ts";
import { rollSentences } from "../../../src/studies/wording/rollWords.ts";
import { LEVEL_ARMS, planarFrontEnd } from "../../suspension/planarWishbone.ts";
import { modelAround } from "../geometry/modelAround.ts";
import { NO_LIMITS } from "../limits/limitTruck.ts";

const DEG = Math.PI / 180;
const INCHES = { units: "in" } as const;
const MM = { units: "mm" } as const;

/** Level arms, parallel and alike: a wheel's patch stands 750 − (400 − √(400² − z²)) mm out at travel z. */
const level = planarFrontEnd(LEVEL_ARMS);

function coverageOf(range: Setup["travel"], limits: Partial<LimitsSetup> | null, rest: Partial<Setup> = {}) {
  const model = modelAround(level, {
    travel: range,
    roll: { most: 3 * DEG, curb: 50 },
    limits: limits && { ...NO_LIMITS, ...limits },
    airSpring: null,
    stances: [{ name: "road", travel: 0 }],
    ...rest,
  });
  return rollCoverage(model)!;
}

/** Travel of each wheel at 3° about travel 0: t = patch(t) tan 3°, by fixed point. */
const HALF = (() => {
  let t = 0;
  for (let i = 0; i < 40; i++) t = (750 - (400 - Math.sqrt(400 ** 2 - t * t))) * Math.tan(3 * DEG);
  return t;
})();

describe("roll and curb asked of every stance", () => {
  it("are covered where the setup's travel has both wheels", () => {
    const { covered, stances } = coverageOf({ droop: -80, bump: 80 }, null);
    expect(covered).toBe(true);
    const [right, left, leftCurb, rightCurb] = stances[0]!.cases;
    expect(right).toMatchObject({ state: "covered", stops: [], uncovered: [], until: null });
    expect(right!.travels!.right).toBeCloseTo(HALF, 9);
    expect(right!.travels!.left).toBeCloseTo(-HALF, 9);
    expect(right!.floor!.roll).toBeCloseTo(3 * DEG, 12);
    expect(left!.floor!.roll).toBeCloseTo(-3 * DEG, 12);
    expect(leftCurb!.travels).toEqual({ left: 50, right: 0 });
    expect(leftCurb!.floor!.roll).toBeLessThan(0);
    expect(rightCurb!.travels).toEqual({ left: 0, right: 50 });
  });

  it("are uncovered where nothing stops a wheel past the setup's travel, told with what to set", () => {
    const coverage = coverageOf({ droop: -80, bump: 30 }, null);
    expect(coverage.covered).toBe(false);
    const [right, , leftCurb] = coverage.stances[0]!.cases;
    expect(right).toMatchObject({ state: "uncovered", stops: [] });
    expect(right!.uncovered).toEqual([{ side: "right", from: 30, to: expect.closeTo(HALF, 9) }]);
    expect(leftCurb!.uncovered).toEqual([{ side: "left", from: 30, to: 50 }]);
    const told = rollSentences(coverage, MM);
    expect(told[0]).toMatch(/^Roll of 3\.0° either way and one wheel 50\.0 mm over a curb: not all of it/);
    expect(told[1]).toMatch(
      /^At the “road” stance, roll either way: nothing .* stops the wheel; the check leaves out travel from 30\.0 mm to 39\.\d mm of bump\.$/,
    );
    expect(told[2]).toMatch(
      /^At the “road” stance, either wheel over the curb: .* from 30\.0 mm to 50\.0 mm of bump\.$/,
    );
    expect(told.at(-1)).toMatch(/set travel\.bump to 50\.0 mm, or give/);
    expect(told).toHaveLength(4);
  });

  it("are covered again once the travel is what it says to set, in inches too", () => {
    const coverage = coverageOf({ droop: -20, bump: 30 }, null);
    const [, bump, droop] = /travel\.bump to (\S+ ?\S*) in and travel\.droop to -(\S+ ?\S*) in/.exec(
      rollSentences(coverage, INCHES).at(-1)!,
    )!;
    // 50 mm is 1 31/32 in, 39.2 mm 1 17/32: rounded outward to sixteenths.
    expect([bump, droop]).toEqual(["2", "1 9/16"]);
    expect(coverageOf({ droop: -25.4 * 1.5625, bump: 50.8 }, null).covered).toBe(true);
  });

  it("end at a bump stop inside the travel: by then the roll is what its travel gives", () => {
    const stop = 25;
    const { covered, stances } = coverageOf({ droop: -80, bump: 30 }, { bumpStop: stop });
    expect(covered).toBe(true);
    const [right, , , rightCurb] = stances[0]!.cases;
    expect(right).toMatchObject({ state: "stopped", uncovered: [] });
    expect(right!.stops).toEqual([{ side: "right", name: "bump stop", travel: expect.closeTo(stop, 3) }]);
    const patch = 750 - (400 - Math.sqrt(400 ** 2 - stop ** 2));
    expect(right!.until).toBeCloseTo(Math.atan(stop / patch), 6);
    expect(rightCurb!.until).toBeCloseTo(stop, 3);
  });

  it("are uncovered between the travel's end and a stop beyond it", () => {
    const [right] = coverageOf({ droop: -80, bump: 30 }, { bumpStop: 35 }).stances[0]!.cases;
    expect(right!.state).toBe("uncovered");
    expect(right!.uncovered).toEqual([{ side: "right", from: 30, to: expect.closeTo(35, 3) }]);
  });

  it("end at once where the stance is on its stop already", () => {
    const coverage = coverageOf(
      { droop: -80, bump: 60 },
      { bumpStop: 60 },
      { stances: [{ name: "aired out", travel: 60 }] },
    );
    expect(coverage.covered).toBe(true);
    const [right] = coverage.stances[0]!.cases;
    expect(right!.until).toBeCloseTo(0, 5);
    expect(rollSentences(coverage, INCHES)).toContain(
      "At the “aired out” stance, roll either way: stopped by the bump stop at once.",
    );
  });

  it("end where a joint cannot follow: the linkage is a stop too", () => {
    const high = { stances: [{ name: "sky", travel: 380 }] };
    const coverage = coverageOf({ droop: -399, bump: 399 }, null, high);
    const [right, , leftCurb] = coverage.stances[0]!.cases;
    expect(right).toMatchObject({ state: "stopped", travels: null, floor: null });
    expect(right!.stops).toMatchObject([{ side: "right", name: "lower ball joint" }]);
    expect(leftCurb!.stops).toMatchObject([{ side: "left", name: "lower ball joint" }]);
    expect(leftCurb!.until).toBeGreaterThan(0);
  });

  it("are not asked for without a roll block, and asked for by whoever gives a roll", () => {
    const model = modelAround(level);
    expect(rollCoverage(model)).toBeNull();
    expect(rollCoverage(model, { most: DEG, curb: null })!.stances[0]!.cases).toHaveLength(2);
  });
});
