import fc from "fast-check";
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { describe, expect, it } from "vitest";
import type { ReadingKey } from "../../../src/setup/types/asBuiltTypes.ts";
import { DEFAULT_READING_ACCURACY as WITHIN } from "../../../src/setup/types/defaults.ts";
import { fitKnuckle, sigmaOf, UNKNOWNS } from "../../../src/studies/jig/fitKnuckle.ts";
import { type BuiltKnuckle, jigReadingsOf } from "../../../src/studies/jig/jigReadings.ts";
import { runs } from "../../runs.ts";
import { DEG, jig, knuckles, ordered } from "./jigCases.ts";
import { noisy, normals } from "./noisyReadings.ts";

const AT = ordered.pinHeight;

function values({ span, pinHeight, pinLead, pinAngle, hubFace, toe, steeringArm }: BuiltKnuckle): number[] {
  return [span, pinHeight, pinLead, pinAngle, hubFace, toe, ...steeringArm];
}

describe("the knuckle found from readings", () => {
  it("is the one that was read, to 1e-6 mm, from poor starts", () => {
    const starts = fc.record({
      built: knuckles,
      from: knuckles,
      clampedAt: fc.double({ min: 20, max: 200, noNaN: true }),
    });
    fc.assert(
      fc.property(starts, ({ built, from, clampedAt }) => {
        const readings = jigReadingsOf(built, jig, clampedAt);
        const fit = fitKnuckle(readings, clampedAt, jig, WITHIN, ordered, from);
        const off = values(fit.knuckle).map((value, i) => Math.abs(value - values(built)[i]!));
        expect(Math.max(...off)).toBeLessThan(1e-6);
        expect(fit.missing).toEqual([]);
      }),
      { seed: 411, numRuns: 60 },
    );
  });

  it("has the least sum of squares that a general-purpose fitting library finds too", () => {
    const normal = normals(7);
    for (const built of fc.sample(knuckles, { seed: 86, numRuns: 5 })) {
      const readings = noisy(jigReadingsOf(built, jig, AT), normal);
      const keys = Object.keys(readings) as ReadingKey[];
      const fit = fitKnuckle(readings, AT, jig, WITHIN, ordered, built);
      // Angles in tenths of a radian, so that the library's steps are of one size for all.
      const knuckleOf = (p: readonly number[]): BuiltKnuckle => ({
        span: p[0]!,
        pinHeight: p[1]!,
        pinLead: p[2]!,
        pinAngle: p[3]! / 100,
        hubFace: p[4]!,
        toe: p[5]! / 100,
        steeringArm: [p[6]!, p[7]!, p[8]!],
      });
      const start = values(built).map((value, i) => (i === 3 || i === 5 ? value * 100 : value));
      const other = levenbergMarquardt(
        { x: keys.map((_, i) => i), y: keys.map((key) => readings[key]! / sigmaOf(key, WITHIN)) },
        (p) => {
          const reads = jigReadingsOf(knuckleOf(p), jig, AT);
          return (i) => reads[keys[i]!] / sigmaOf(keys[i]!, WITHIN);
        },
        {
          initialValues: start,
          damping: 1e-3,
          centralDifference: true,
          gradientDifference: 1e-4,
          maxIterations: 300,
          errorTolerance: 1e-12,
          improvementThreshold: 1e-12,
        },
      );
      const found = values(knuckleOf(other.parameterValues));
      values(fit.knuckle).forEach((value, i) => {
        expect(Math.abs(value - found[i]!)).toBeLessThan(i === 3 || i === 5 ? 1e-6 : 1e-4);
      });
    }
  });

  it("has the spread and the correlations that drawing the readings over and over gives", () => {
    const built: BuiltKnuckle = { ...ordered, toe: 0.3 * DEG, pinLead: 2, pinAngle: 9 * DEG };
    const exact = jigReadingsOf(built, jig, AT);
    const told = fitKnuckle(exact, AT, jig, WITHIN, built);
    const normal = normals(20);
    const draws = runs(400, 3000);
    const all = Array.from({ length: draws }, () =>
      values(fitKnuckle(noisy(exact, normal), AT, jig, WITHIN, built, built).knuckle),
    );
    const mean = UNKNOWNS.map((_, i) => all.reduce((sum, one) => sum + one[i]!, 0) / draws);
    const covariance = (i: number, j: number) =>
      all.reduce((sum, one) => sum + (one[i]! - mean[i]!) * (one[j]! - mean[j]!), 0) / (draws - 1);
    UNKNOWNS.forEach((name, i) => {
      const sigma = told.within[name]!;
      // Of n draws a standard deviation is known to 1/√(2n), a correlation to 1/√n: four times that.
      expect(Math.sqrt(covariance(i, i)) / sigma).toBeGreaterThan(1 - 4 / Math.sqrt(2 * draws));
      expect(Math.sqrt(covariance(i, i)) / sigma).toBeLessThan(1 + 4 / Math.sqrt(2 * draws));
      expect(Math.abs(mean[i]! - values(built)[i]!)).toBeLessThan((4 * sigma) / Math.sqrt(draws));
      UNKNOWNS.forEach((other, j) => {
        const scale = sigma * told.within[other]!;
        expect(Math.abs(covariance(i, j) - told.covariance[i]![j]!) / scale).toBeLessThan(
          4 / Math.sqrt(draws),
        );
      });
    });
  });

  // By hand: two tapes of σ = 1/64 in whose half difference is L sin t: σ of t = σ/(√2 · 10 in · cos a).
  it("knows toe as well as two tapes ten inches either way can tell", () => {
    const { front, behind, faceAngle } = jigReadingsOf(ordered, jig, AT);
    const { within } = fitKnuckle({ front, behind, faceAngle }, AT, jig, WITHIN, ordered);
    expect(within.toe).toBeCloseTo(1 / 64 / (Math.SQRT2 * 10 * Math.cos(8.4 * DEG)), 9);
    expect(within.pinAngle).toBeCloseTo(0.1 * DEG, 9);
  });

  it("says what too few readings leave open, keeps that as ordered, and names what to read", () => {
    const built: BuiltKnuckle = { ...ordered, hubFace: 160, pinAngle: 9 * DEG, toe: 1 * DEG };
    const { behind: _, lead: __, ...some } = jigReadingsOf(built, jig, AT);
    const { knuckle, within, missing } = fitKnuckle(some, AT, jig, WITHIN, ordered);
    expect(missing).toEqual(["behind", "lead"]);
    expect(within).toMatchObject({ hubFace: null, toe: null, pinLead: null, armX: null });
    expect(knuckle).toMatchObject({ hubFace: ordered.hubFace, toe: 0, pinLead: 0 });
    expect(knuckle.pinAngle).toBeCloseTo(9 * DEG, 9);
    expect(knuckle.span).toBeCloseTo(ordered.span, 9);
  });

  it("finds the reading that was written wrong among those that check each other", () => {
    const readings = { ...jigReadingsOf(ordered, jig, AT) };
    const wrong = { ...readings, armUp: readings.armUp + 25.4 / 4 };
    const { residuals } = fitKnuckle(wrong, AT, jig, WITHIN, ordered);
    expect(residuals.filter(({ isSuspect }) => isSuspect).map(({ key }) => key)).toEqual(["armUp"]);
    expect(fitKnuckle(readings, AT, jig, WITHIN, ordered).residuals.some((one) => one.isSuspect)).toBe(false);
    // Nothing else tells of the lead: however wrong, no other reading contradicts it.
    const lead = fitKnuckle({ ...readings, lead: 40 }, AT, jig, WITHIN, ordered).residuals;
    expect(lead.find(({ key }) => key === "lead")?.inSigmas).toBeNull();
    expect(lead.some(({ isSuspect }) => isSuspect)).toBe(false);
  });
});
