import { describe, expect, it } from "vitest";
import { demoDocument, demoModel, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { documentInMm } from "../documentInMm.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const lip = folder.write("lip.json", demoDocument({ ...lipAlone(), hardware: null }));

describe("geometry --json", () => {
  const { code, document } = capturedJson(["geometry", lip, "--steps", "5"]);

  it("has exactly the keys it promises and as many rows as steps", () => {
    expect(code).toBe(0);
    expect(Object.keys(document)).toEqual([
      ...["units", "byTravel", "bySteer", "bumpSteer", "flatTieRod", "turningCircle"],
    ]);
    expect(document.byTravel).toHaveLength(5);
    expect(document.bySteer.map(({ steer }: { steer: number }) => steer)).toEqual([-1, -0.5, 0, 0.5, 1]);
    for (const row of document.byTravel) {
      expect(Object.keys(row)).toEqual(["travel", "rollCenter", "left", "right"]);
      expect(Object.keys(row.left)).toEqual([
        ...["camber", "camberGain", "toe", "toeGain", "instantCenter", "swingArm"],
        ...["scrubRadius", "mechanicalTrail"],
      ]);
    }
    for (const row of document.bySteer) {
      expect(Object.keys(row)).toEqual(["steer", "left", "right", "ackermann", "ratio", "jacking"]);
    }
  });

  it("agrees with `sweep`, and a roll center lies on the line of patch and instant center", () => {
    const { document: sweep } = capturedJson(["sweep", lip, "--steps", "5"]);
    document.byTravel.forEach((row: typeof document, i: number) => {
      expect(row.travel).toBeCloseTo(sweep.byTravel[i].travel, 12);
      for (const side of ["left", "right"]) {
        expect(row[side].camber).toBeCloseTo(sweep.byTravel[i][side].camber, 12);
        expect(row[side].scrubRadius).toBeCloseTo(sweep.byTravel[i][side].scrubRadius, 12);
      }
      const { halfTrack } = sweep.byTravel[i].left;
      const { instantCenter, swingArm } = row.left;
      expect(halfTrack - swingArm).toBeCloseTo(instantCenter.y, 9);
      const patchZ = row.rollCenter.z - row.rollCenter.height;
      expect((instantCenter.z - patchZ) / swingArm).toBeCloseTo(row.rollCenter.height / halfTrack, 9);
    });
  });

  it("means the same in millimeters", () => {
    const mm = folder.write("mm.json", {
      ...documentInMm(demoModel({ ...lipAlone(), hardware: null }).setup),
    });
    const { document: metric } = capturedJson(["geometry", mm, "--steps", "5"]);
    expect(metric.units).toBe("mm");
    const [inch, metre] = [document.byTravel[1], metric.byTravel[1]];
    expect(metre.rollCenter.height).toBeCloseTo(25.4 * inch.rollCenter.height, 6);
    expect(metre.left.camberGain).toBeCloseTo(inch.left.camberGain / 25.4, 9);
    expect(metric.bySteer[4].ratio.mean).toBeCloseTo(document.bySteer[4].ratio.mean / 25.4, 9);
    expect(metric.flatTieRod.inner.move).toBeCloseTo(25.4 * document.flatTieRod.inner.move, 3);
    // Written without a wheelbase: what needs one has no answer.
    expect(metric.turningCircle).toEqual({ left: null, right: null });
    expect(metric.bySteer[0].ackermann).toBeNull();
    expect(captured(["geometry", mm]).out).toMatch(/give truck\.wheelbase/);
  });
});

describe("geometry for a person", () => {
  it("begins with sentences and has both tables with units", () => {
    const { code, out } = captured(["geometry", lip, "--steps", "3"]);
    expect(code).toBe(0);
    expect(out).toMatch(/^Bump steer: toes (in|out) by up to \d\.\d\d°/m);
    expect(out).toMatch(/^Least bump steer, each side: (raise|lower) the inner tie rod end .* remains\); /m);
    expect(out).toMatch(/^Turning either way at full lock: \d+\.\d ft curb to curb/m);
    expect(out).toMatch(/^By travel, steering straight ahead, either side\n *Travel \(in\)/m);
    expect(out).toMatch(/^By steering at travel 0, \+ = left turn\n *Steer \(lock\)/m);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("goes as far as the wheels follow and says so with its exit code", () => {
    const high = folder.write(
      "high.json",
      demoDocument({ ...lipAlone(), hardware: null, travel: { bump: 16 } }),
    );
    const { code, document } = capturedJson(["geometry", high, "--steps", "3"]);
    expect(code).toBe(1);
    expect(document.byTravel[2].travel).toBeLessThan(16);
  });

  it("refuses a number of steps that is none", () => {
    expect(captured(["geometry", lip, "--steps", "1"])).toMatchObject({ code: 2 });
  });
});
