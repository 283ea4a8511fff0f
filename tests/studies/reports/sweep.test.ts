import { describe, expect, it } from "vitest";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import {
  DEFAULT_SWEEP_ROWS,
  type ReachedRow,
  type SweepRow,
  sweepOf,
  sweepRow,
} from "../../../src/studies/reports/sweep.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { demoModel, lipAlone } from "../demoModel.ts";

const model = demoModel(lipAlone());
const sweep = sweepOf(model, 9);

function reached(row: SweepRow | undefined): ReachedRow {
  if (!row?.ok) throw new Error("row is out of reach");
  return row;
}

describe("a sweep", () => {
  it("goes evenly from full droop to full bump, straight ahead, and from lock to lock at travel 0", () => {
    const { droop, bump } = model.setup.travel;
    expect(sweep.byTravel.map((row) => row.steer)).toEqual(new Array(9).fill(0));
    expect(sweep.bySteer.map((row) => row.travel)).toEqual(new Array(9).fill(0));
    expect(sweep.byTravel[0]?.travel).toBe(droop);
    expect(sweep.byTravel[8]?.travel).toBe(bump);
    expect(sweep.bySteer.map((row) => row.steer)).toEqual([-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1]);
    sweep.byTravel.forEach((row, i) => {
      expect(row.travel).toBeCloseTo(droop + ((bump - droop) * i) / 8, 9);
    });
    expect(sweepOf(model).byTravel).toHaveLength(DEFAULT_SWEEP_ROWS);
  });

  it("has exactly the pose's own numbers and gaps in each row", () => {
    for (const row of [...sweep.byTravel, ...sweep.bySteer].map(reached)) {
      const pose = solvePose(model.frontEnd, row.travel, row.steer);
      if (!pose.ok) throw new Error("out of reach");
      for (const side of ["left", "right"] as const) {
        const { halfTrack, ...same } = row[side];
        expect(pose[side]).toMatchObject(same);
        expect(halfTrack).toBe((side === "left" ? 1 : -1) * pose[side].contactPatch[1]);
        expect(halfTrack).toBeGreaterThan(0);
      }
      expect(row.gaps).toEqual(gapsAt(model, pose));
    }
  });

  it("raises the wheel center by the travel", () => {
    const rest = reached(sweepRow(model, 0, 0)).left.wheelCenter[2];
    for (const row of sweep.byTravel.map(reached)) {
      expect(row.left.wheelCenter[2] - rest).toBeCloseTo(row.travel, 6);
    }
  });

  it("mirrors left and right: by travel alike, by steering the other way round", () => {
    for (const row of sweep.byTravel.map(reached)) {
      expect(row.right.camber).toBeCloseTo(row.left.camber, 12);
      expect(row.right.steerAngle).toBeCloseTo(-row.left.steerAngle, 12);
      expect(row.right.halfTrack).toBeCloseTo(row.left.halfTrack, 9);
    }
    sweep.bySteer.map(reached).forEach((row, i) => {
      const other = reached(sweep.bySteer[8 - i]);
      expect(other.right.camber).toBeCloseTo(row.left.camber, 12);
      expect(other.right.steerAngle).toBeCloseTo(-row.left.steerAngle, 12);
      expect(other.right.scrubRadius).toBeCloseTo(row.left.scrubRadius, 9);
    });
  });

  it("turns both wheels left for + steer", () => {
    const left = reached(sweep.bySteer[8]);
    expect(left.left.steerAngle).toBeGreaterThan(0.3);
    expect(left.right.steerAngle).toBeGreaterThan(0.3);
  });

  it("gives rows out of reach a status with the joint, never NaN", () => {
    const far = sweepOf(demoModel({ truck: { body: [] }, travel: { droop: -12, bump: 3 } }), 16);
    const out = far.byTravel.filter((row) => !row.ok);
    expect(out.length).toBeGreaterThan(0);
    expect(out.length).toBeLessThan(16);
    for (const row of out) {
      expect(row).toMatchObject({ ok: false, side: "left", along: "travel", joint: "lower ball joint" });
      expect(row.travel).toBeLessThan(row.ok ? 0 : row.startsAt);
    }
    // Where it is said to start: reachable there, not beyond.
    const [first] = out;
    if (!first || first.ok) throw new Error("no row out of reach");
    const wide = demoModel({ truck: { body: [] } });
    expect(sweepRow(wide, first.startsAt, 0).ok).toBe(true);
    expect(sweepRow(wide, first.startsAt - 0.01, 0).ok).toBe(false);
    expect(JSON.stringify(far)).not.toContain("null");
  });

  it("tells a steering limit from a travel limit", () => {
    const long = demoModel({ truck: { body: [], steering: { stroke: 7 } } });
    const rows = sweepOf(long, 9).bySteer;
    const out = rows.filter((row) => !row.ok);
    expect(out.length).toBeGreaterThan(0);
    for (const row of out) {
      expect(row).toMatchObject({ along: "steer", joint: "outer tie rod end" });
      if (!row.ok) expect(Math.abs(row.startsAt)).toBeLessThan(Math.abs(row.steer));
    }
    expect(rows[4]?.ok).toBe(true);
  });

  it.each([1, 0, -3, 2.5, Number.NaN, Number.POSITIVE_INFINITY])("refuses %d rows", (rows) => {
    expect(() => sweepOf(model, rows)).toThrow(RangeError);
  });

  it("of no travel at all still has its rows", () => {
    const still = sweepOf(demoModel({ truck: { body: [] }, travel: { droop: 0, bump: 0 } }), 3);
    expect(still.byTravel.map((row) => [row.ok, row.travel])).toEqual(new Array(3).fill([true, 0]));
  });
});
