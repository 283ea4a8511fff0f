import { expect } from "vitest";
import type { Model } from "../../src/studies/model/model.ts";
import type { CheckReport } from "../../src/studies/reports/check.ts";
import { gapsAt } from "../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { type Grid, type SampledWorst, sampledWorst } from "./sampledCheck.ts";

/** The report tells of every part on every side it stands on, and its verdicts claim no more than is proven. */
export function expectHonest(model: Model, report: CheckReport) {
  expect(report.parts.map((e) => [e.side, e.part])).toEqual(model.pairs.map((p) => [p.side, p.name]));
  for (const { gap, bound, verdict } of report.parts) {
    expect(bound).toBeLessThanOrEqual(gap);
    if (verdict === "clear") expect(bound).toBeGreaterThanOrEqual(model.setup.allowance - 1e-9);
    expect(verdict === "rubs").toBe(gap < 0);
  }
}

/** Every bound is within its tolerance of the gap, so it is worth something. */
export function expectTight(report: CheckReport) {
  for (const { gap, bound, tolerance } of report.parts) expect(gap - bound).toBeLessThanOrEqual(tolerance);
}

/** Every gap is there at the pose named, by the query for one pose; a depth to its own tolerance. */
export function expectAtPose(model: Model, report: CheckReport) {
  for (const { part, side, gap, travel, steer } of report.parts) {
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) {
      throw new TypeError(
        `${side} ${part}: the ${pose.side} side cannot take travel ${travel}, steer ${steer}`,
      );
    }
    const there = gapsAt(model, pose).find((g) => g.part === part && g.side === side)!;
    expect(Math.abs(there.gap - gap)).toBeLessThan(1e-6 + 1e-4 * Math.max(0, -gap));
  }
}

/** No sampled pose is worse than any bound. Returns what sampling found, entry by entry. */
export function expectProven(model: Model, report: CheckReport, grid: Grid): SampledWorst[] {
  return report.parts.map((entry) => {
    const least = sampledWorst(model, entry, grid);
    expect(least.gap).toBeGreaterThanOrEqual(entry.bound - 1e-6);
    return least;
  });
}
