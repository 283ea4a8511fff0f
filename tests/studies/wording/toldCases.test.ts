import { describe, expect, it } from "vitest";
import { gapOverSteer } from "../../../src/app/clear/plots/gapPlots.ts";
import { truckAnswer } from "../../../src/app/show/counter/whatIf.ts";
import { drawnMapOf } from "../../../src/app/work/drawnMap.ts";
import { gapCell } from "../../../src/cli/output/textTable.ts";
import { canStand, heightStop } from "../../../src/studies/limits/heightWay.ts";
import { limitMargins } from "../../../src/studies/limits/limitsOf.ts";
import { limitsOverRange } from "../../../src/studies/limits/limitsPassed.ts";
import { lowestTravels } from "../../../src/studies/map/lowestTravels.ts";
import { steerLimits } from "../../../src/studies/map/steerLimits.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { airHeightText, airPressureText, allowedSentence } from "../../../src/studies/wording/airWords.ts";
import { rangeClause, steerClause, steeringFacts } from "../../../src/studies/wording/comparisonWords.ts";
import { cardFacts } from "../../../src/studies/wording/counterFacts.ts";
import { belowWords, clearanceText } from "../../../src/studies/wording/floorWords.ts";
import { limitRows } from "../../../src/studies/wording/limitRows.ts";
import { pictureFacts } from "../../../src/studies/wording/pictureFacts.ts";
import { poseFacts } from "../../../src/studies/wording/poseSentence.ts";
import { safeLength } from "../../../src/studies/wording/safeSide.ts";
import { steerText, turnFacts } from "../../../src/studies/wording/sheetTexts.ts";
import { lowStop, steerStop } from "../../../src/studies/wording/stopFacts.ts";
import { steerClauseOf, steerSheetText } from "../../../src/studies/wording/stopTexts.ts";
import { verdictSentence } from "../../../src/studies/wording/verdictSentence.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { exampleTruck } from "./referee/cases.ts";

// Each was once told wrongly on some screen.

const MM = { units: "mm" } as const;
const INCHES = { units: "in" } as const;

describe("a truck that rubs at every pose", () => {
  for (const [file, variant, format] of [
    ["compact-front-steer.json", "narrow hub face", MM],
    ["flatbed-long-arms.json", "steering arm as first built", INCHES],
  ] as const) {
    it(`${file}, ${variant}: says so, on every screen`, () => {
      const { truck, model } = {
        truck: exampleTruck(file, variant),
        model: exampleTruck(file, variant).model,
      };
      const report = checkClearance(model)!;
      const [steering] = steerLimits(model, [0])!;
      const facts = steeringFacts(steering!, heightStop(model, 0), model, format);
      if (!facts.stands) throw new TypeError("it stands as measured");
      expect(facts.first).toMatchObject({
        stop: "touch",
        isAlways: true,
        isNowhere: true,
        name: "tie rod end",
      });
      expect(steerClause(variant, facts, model, format)).toMatch(/rubs the tie rod end by .* whichever way/);
      expect(steerText(turnFacts(steering!, null, model, format), model, format)).toBe(
        "nowhere, the tie rod end touches at every pose",
      );
      expect(rangeClause(variant, report, model, format)).toMatch(
        /(rubs|at every pose the wheel) the tie rod end by/,
      );
      expect(verdictSentence(report, model, format)).toMatch(
        /rubs the tie rod end .* at every pose|at every pose the wheel rubs the tie rod end by/,
      );
      const [down] = lowestTravels(model, [0])!;
      if (!down?.ok) throw new TypeError("it stands straight ahead");
      expect(lowStop(down.touch, 0, model, format)).toMatchObject({ isAlways: true, isNowhere: true });
      expect(cardFacts({ ...truckAnswer(null, null), heights: [null], report }, 0, [])).toEqual({
        state: "rubs",
        mark: "rubs",
      });
      const drawn = drawnMapOf(model, Budget.endless());
      expect(drawn.gap.both.every((gap) => Number.isNaN(gap) || gap < 0)).toBe(true);
      expect(drawn.lines.both.touch).toEqual([]);
      const pose = solvePose(model.frontEnd, 0, 0);
      if (!pose.ok) throw new TypeError("it stands as measured");
      const { entry, part } = pictureFacts(model, pose, "left", null).mark!;
      expect([part, entry.gap < 0]).toEqual(["tie rod end", true]);
      expect(gapOverSteer(truck, 0).series[0]!.name).toBe("tie rod end");
    });
  }
});

describe("a truck that cannot come down to a stance", () => {
  const { model, setup } = exampleTruck("half-ton-limits.json", "spring bracket an inch lower");
  const aired = setup.stances.find(({ name }) => name === "aired out")!.travel;
  const stop = heightStop(model, aired);
  const [steering] = steerLimits(model, [aired])!;

  it("says what stops it and where, and claims nothing of steering there", () => {
    const facts = steeringFacts(steering!, stop, model, INCHES);
    expect(facts).toMatchObject({ stands: false, height: { stop: "limit", at: 1.75 * 25.4 } });
    const words = "cannot come down to “aired out”: the air spring stops it at 1 3/4 in of bump";
    expect(steerClause("low", facts, model, INCHES)).toBe(`“low” ${words}`);
    expect(steerText(turnFacts(steering!, stop, model, INCHES), model, INCHES)).toBe(words);
  });

  it("has no mark on the picture and no green card there", () => {
    const pose = solvePose(model.frontEnd, aired, 0);
    if (!pose.ok) throw new TypeError("the linkage reaches it");
    expect(canStand(model, aired, 0)).toBe(false);
    expect(pictureFacts(model, pose, "left", null)).toEqual({ stands: false, mark: null });
    const report = checkClearance(model);
    expect(report!.verdict).toBe("clear");
    expect(cardFacts({ ...truckAnswer(null, null), heights: [stop], report }, 0, [])).toEqual({
      state: "barred",
      mark: "close",
    });
  });
});

describe("a stop that is a limit", () => {
  const { model } = exampleTruck("half-ton-limits.json", null);
  const stop = steerStop({ stop: "limit", at: 0.5, side: "left", name: "steering stop" }, 0, model);

  it("is told as met, not as where proof ends", () => {
    expect(steerClauseOf('"a"', stop, INCHES)).toMatch(
      /^"a" steers to \d+°, where the steering stop is met; nothing/,
    );
    expect(steerSheetText(stop, true)).toMatch(/^to \d+° either way, where the steering stop is met$/);
  });
});

describe("the list of limits", () => {
  it("pairs the least margin with its own place and ranks by it, the margin now beside it", () => {
    const { model } = exampleTruck("half-ton-limits.json", null);
    const overall = limitsOverRange(model);
    const rows = limitRows(limitMargins(model, 0, 0), overall);
    const shares = rows.map((row) => row.overall!.margin / row.overall!.range);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    for (const { name, overall: told, now } of rows) {
      const least = Math.min(...overall.filter((one) => one.name === name).map(({ margin }) => margin));
      expect(told!.margin).toBeCloseTo(least, 6);
      const there = limitMargins(model, told!.travel, told!.steer);
      if (!there.ok) throw new TypeError("a least margin is at a pose");
      const margin = there.margins.find((one) => one.name === name && one.side === told!.side)!.margin;
      expect(margin).toBeCloseTo(told!.margin, 6);
      expect(now!.margin).toBeGreaterThanOrEqual(told!.margin - 1e-6);
    }
  });
});

describe("the nearest part of a pose", () => {
  it("is the nearest, though it rides with the wheel", () => {
    const { model } = exampleTruck("half-ton-limits.json", "spring bracket an inch lower");
    const pose = solvePose(model.frontEnd, 0, 0);
    if (!pose.ok) throw new TypeError("it stands as measured");
    const gaps = gapsAt(model, pose);
    const { nearest } = poseFacts(gaps, pose, model);
    expect(nearest!.entry.gap).toBe(Math.min(...gaps.map(({ gap }) => gap)));
    expect(nearest!.part).toBe("caliper");
  });
});

describe("numbers rounded for reading", () => {
  it("of limits fall on the safe side: what is proven to 3.2 in reads 3 3/16, and never 3 1/4", () => {
    expect(safeLength(3.24 * 25.4, "down", INCHES)).toBeCloseTo((3 + 3 / 16) * 25.4, 9);
    expect(safeLength(-3.24 * 25.4, "down", INCHES)).toBeCloseTo(-3.25 * 25.4, 9);
    expect(safeLength(3.25 * 25.4 - 1e-3, "down", INCHES)).toBeCloseTo(3.25 * 25.4, 9);
    expect(safeLength(80.19, "down", MM)).toBeCloseTo(80.1, 9);
  });

  it("of a light rub say that it rubs", () => {
    expect(gapCell(-0.3, INCHES)).toBe("rubs <1/16");
    expect(gapCell(0.3, INCHES)).toBe("<1/16");
  });

  it("of heights over the floor are never more than there is, and of what is below it never less", () => {
    expect(clearanceText(2.55 * 25.4, INCHES)).toBe("2 1/2 in");
    expect(belowWords(-0.33 * 25.4, INCHES)).toBe("3/8 in");
    expect(belowWords(-0.2, INCHES)).toBe("1/16 in");
  });

  it("of an air spring lean to the limit that is nearer, and away from one that is passed", () => {
    const { airSpring } = exampleTruck("half-ton-limits.json", null).setup;
    const spring = {
      ...airSpring!,
      leastHeight: 100,
      greatestHeight: 200,
      leastPressure: 0.1,
      greatestPressure: 0.8,
    };
    expect([104.96, 195.04, 99.96, 200.04].map((height) => airHeightText(height, spring, MM))).toEqual([
      ...["104.9 mm", "195.1 mm", "99.9 mm", "200.1 mm"],
    ]);
    expect(airPressureText(0.7997, spring, "mm")).toBe("800 kPa");
    expect(airPressureText(0.8003, spring, "mm")).toBe("801 kPa");
    expect(allowedSentence({ ...spring, leastHeight: 100.04, greatestHeight: 199.96 }, "mm", MM)).toBe(
      "The setup allows heights from 100.1 mm to 199.9 mm and pressures from 100 kPa to 800 kPa.",
    );
  });
});
