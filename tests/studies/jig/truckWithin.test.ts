import { describe, expect, it } from "vitest";
import { DEFAULT_READING_ACCURACY as WITHIN } from "../../../src/setup/types/defaults.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { asBuiltTruck } from "../../../src/studies/jig/asBuiltTruck.ts";
import { type FittedKnuckle, fitKnuckle, UNKNOWNS } from "../../../src/studies/jig/fitKnuckle.ts";
import { jigReadingsOf } from "../../../src/studies/jig/jigReadings.ts";
import { orderedKnuckle } from "../../../src/studies/jig/jigSheet.ts";
import { changedKnuckle } from "../../../src/studies/jig/propagated.ts";
import { gapWithin, trackWithin } from "../../../src/studies/jig/truckWithin.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { type CheckReport, checkClearance } from "../../../src/studies/reports/check.ts";
import { assembleFrontEnd } from "../../../src/suspension/frontEnd.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { runs } from "../../runs.ts";
import { example, truckOf } from "../loads/loadTruck.ts";
import { noisy, normals } from "./noisyReadings.ts";

const { model } = truckOf(example("ordered-knuckle.json"));
const { setup } = model;
const ordered = orderedKnuckle(setup);
const AT = ordered.pinHeight;
const exact = jigReadingsOf(ordered, setup.jig, AT);
const fit = fitKnuckle(exact, AT, setup.jig, WITHIN, ordered);

const check = checkClearance(model);
const { worst } = check;
const leftAlone = (fit: FittedKnuckle, on: Setup = setup) => ({
  left: { setup: on, file: "", isAligned: false, fit },
  right: null,
});

/** Knuckles as noisy readings tell them. */
const normal = normals(29);
const drawn = Array.from({ length: runs(20, 800) }, () => {
  const { toe: _, ...knuckle } = fitKnuckle(noisy(exact, normal), AT, setup.jig, WITHIN, ordered).knuckle;
  return knuckle;
});

/** mm. What is farther off than the nearest by this does not become it, as noise moves no gap by half of it. */
const FAR = 12;

/** The nearest gap on the left of a truck with each of these knuckles. @param check its check with the knuckle as ordered */
function drawnGaps(on: Setup, { parts }: CheckReport): readonly number[] {
  const left = parts.filter(({ side }) => side === "left");
  const least = Math.min(...left.map(({ gap }) => gap));
  const near = new Set(left.filter(({ gap }) => gap < least + FAR).map(({ part }) => part));
  expect(near.size).toBeGreaterThan(1);
  return drawn.map((knuckle) => {
    const made = modelOf({ ...on, knuckle }, "");
    if (!made.ok) throw new Error(made.issues[0]?.mend);
    const pairs = made.value.pairs.filter(({ name, side }) => side === "left" && near.has(name));
    const { gap } = checkClearance({ ...made.value, pairs }).worst!;
    expect(Math.abs(gap - least)).toBeLessThan(FAR / 2);
    return gap;
  });
}

function spreadOf(values: readonly number[]): number {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  return Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1));
}

const onTruck = (fits: { left: FittedKnuckle | null; right: FittedKnuckle | null }) => {
  const { knuckle } = setup;
  const asked = { knuckles: { left: knuckle, right: knuckle }, fits, file: "" };
  const made = asBuiltTruck(model, asked, Budget.endless());
  if (!made.ok) throw new Error(made.issues[0]?.mend);
  return made;
};

describe("how well the readings tell the worst gap", () => {
  it("is what full checks of knuckles off by a little make of it", () => {
    const gapOf = (at: number, by: number) => {
      const made = modelOf({ ...setup, knuckle: changedKnuckle(setup.knuckle, UNKNOWNS[at]!, by) }, "");
      if (!made.ok) throw new Error(made.issues[0]?.mend);
      const { value } = made;
      const pairs = value.pairs.filter(({ name, side }) => name === worst!.part && side === worst!.side);
      return checkClearance({ ...value, pairs }).worst!.gap;
    };
    // Over a few millimeters the worst pose comes to lie at another place of the lip, where slopes are others.
    const slopes = UNKNOWNS.map((name, at) => {
      const step = name === "pinAngle" ? 4e-4 : 0.1;
      return name === "toe" ? 0 : (gapOf(at, step) - gapOf(at, -step)) / (2 * step);
    });
    const variance = slopes.reduce(
      (sum, a, i) => sum + slopes.reduce((row, b, k) => row + a * b * fit.covariance[i]![k]!, 0),
      0,
    );
    const told = gapWithin(leftAlone(fit), { worst, parts: [worst!] })!.sigma;
    expect(told).toBeGreaterThan(0.05);
    expect(told / Math.sqrt(variance)).toBeGreaterThan(0.95);
    expect(told / Math.sqrt(variance)).toBeLessThan(1.05);
  });

  it("is nothing where its side was not read, or too little of it", () => {
    const other = worst!.side === "left" ? "right" : "left";
    const only = onTruck({ left: null, right: null, [other]: fit });
    expect(only.within).toEqual({ track: null, worstGap: null });
    // One tape and no height of the face.
    const few = fitKnuckle({ front: exact.front }, AT, setup.jig, WITHIN, ordered);
    expect(gapWithin(leftAlone(few), check)).toBeNull();
  });

  it("is the spread of full checks of knuckles drawn as noisy readings tell them", () => {
    const told = gapWithin(leftAlone(fit), check)!;
    expect(told.other?.share ?? 0).toBeLessThan(0.01);
    const gaps = drawnGaps(setup, check);
    const spread = spreadOf(gaps);
    expect(Math.abs(told.sigma / spread - 1)).toBeLessThan(4 / Math.sqrt(2 * gaps.length));
  });

  it("is that of the nearest of all where another part may come nearest, and says so", () => {
    // The rotor's gap to the lower ball joint is brought as near as the lip.
    const { hardware } = setup;
    const joint = check.parts.find(
      ({ part, side }) => part === "rotor to lower ball joint" && side === "left",
    )!;
    const radius = hardware!.lowerBallJoint.radius + joint.gap - worst!.gap;
    const tied = {
      ...setup,
      hardware: { ...hardware!, lowerBallJoint: { ...hardware!.lowerBallJoint, radius } },
    };
    const made = modelOf(tied, "");
    if (!made.ok) throw new Error(made.issues[0]?.mend);
    const tiedCheck = checkClearance(made.value);
    const on = leftAlone(fit, tied);
    const told = gapWithin(on, tiedCheck)!;
    expect(told.other!.share).toBeGreaterThan(0.3);
    expect(told.other!.share).toBeLessThan(0.7);
    const names = [tiedCheck.worst!.part, told.other!.part];
    expect(names).toContain("rotor to lower ball joint");
    const gaps = drawnGaps(tied, tiedCheck);
    const spread = spreadOf(gaps);
    expect(Math.abs(told.sigma / spread - 1)).toBeLessThan(4 / Math.sqrt(2 * gaps.length));
    // What the nearest part alone would tell is too much.
    const alone = gapWithin(on, { worst: tiedCheck.worst, parts: [tiedCheck.worst!] })!.sigma;
    expect(told.sigma).toBeLessThan(0.95 * alone);
  });
});

describe("how well the readings tell the track", () => {
  it("is the spread of the tracks of many pairs of noisy readings", () => {
    const { track } = onTruck({ left: fit, right: fit }).within;
    const normal = normals(7);
    const halfTrack = (side: "left" | "right") => {
      const readings = noisy(exact, normal);
      const { toe: _, ...knuckle } = fitKnuckle(readings, AT, setup.jig, WITHIN, ordered).knuckle;
      const made = assembleFrontEnd({ ...model.frontEnd.input, knuckle });
      const pose = made.ok ? solvePose(made.frontEnd, 0, 0) : null;
      if (!pose?.ok) throw new Error("no such truck");
      return Math.abs(pose[side].contactPatch[1]);
    };
    const count = runs(120, 1000);
    const tracks = Array.from({ length: count }, () => halfTrack("left") + halfTrack("right"));
    expect(Math.abs(track! / spreadOf(tracks) - 1)).toBeLessThan(4 / Math.sqrt(2 * count));
  });

  it("is nothing where one side was not read", () => {
    const { left } = onTruck({ left: fit, right: fit }).effects;
    expect(trackWithin({ left: left.within, right: null })).toBeNull();
    expect(trackWithin({ left: left.within, right: left.within })).toBeCloseTo(
      Math.SQRT2 * left.within!.halfTrack!,
      9,
    );
  });
});
