import { describe, expect, it } from "vitest";
import { DEFAULT_JIG_TOLERANCES } from "../../src/setup/types/defaults.ts";
import { issuesOf, setupOf } from "./patched.ts";

const DEG = Math.PI / 180;

describe("the jig block", () => {
  it("is there by its defaults without being typed", () => {
    const { jig, asBuilt } = setupOf({});
    expect(jig).toEqual({
      halfLength: 254,
      jointHeight: 0,
      pinEnd: 76.2,
      toe: 0,
      tolerances: DEFAULT_JIG_TOLERANCES,
    });
    expect(asBuilt).toBeNull();
  });

  it("is read into mm and radians", () => {
    const { jig } = setupOf({
      jig: { halfLength: 12, jointHeight: "4 in", toe: 0.5, tolerances: { tape: "1/32", faceAngle: 0.5 } },
    });
    expect(jig).toMatchObject({ halfLength: 304.8, jointHeight: 101.6, toe: 0.5 * DEG });
    expect(jig.tolerances).toMatchObject({ tape: 0.79375, faceAngle: 0.5 * DEG, span: 1.5875 });
  });

  it("refuses a straightedge without length and a tolerance of nothing", () => {
    expect(issuesOf({ jig: { halfLength: 0 } })).toEqual(["jig.halfLength: must be more than 0"]);
    expect(issuesOf({ jig: { tolerances: { tape: -1 } } })).toEqual([
      "jig.tolerances.tape: must be more than 0",
    ]);
  });
});

describe("the asBuilt block", () => {
  it("keeps only what was read, side by side, with its defaults", () => {
    const { asBuilt } = setupOf({
      asBuilt: {
        left: { front: "6 1/8", faceAngle: 8.5, armAhead: -6 },
        right: {},
        within: { tape: "1/32" },
      },
    });
    expect(asBuilt?.left).toEqual({
      readings: { front: 155.575, faceAngle: expect.closeTo(8.5 * DEG, 12), armAhead: -152.4 },
      clampedAt: null,
    });
    expect(asBuilt?.right).toBeNull();
    expect(asBuilt?.within).toEqual({ tape: 0.79375, angle: 0.1 * DEG, height: 0.396875 });
  });

  it("with nothing read yet says nothing, so that readings can be typed one by one", () => {
    expect(setupOf({ asBuilt: {} }).asBuilt).toBeNull();
    expect(setupOf({ asBuilt: { left: {}, right: { clampedAt: 5 } } }).asBuilt).toBeNull();
  });

  it("refuses what no tape reads", () => {
    expect(issuesOf({ asBuilt: { left: { front: -6 } } })).toEqual([
      "asBuilt.left.front: must be more than 0",
    ]);
    expect(issuesOf({ asBuilt: { left: { frnt: 6 } } })[0]).toContain("front");
  });

  it("refuses an accuracy that no shop has", () => {
    expect(issuesOf({ asBuilt: { within: { tape: 1e-9 } } })[0]).toContain("asBuilt.within.tape: is finer");
    expect(issuesOf({ asBuilt: { within: { angle: 1e-6 } } })[0]).toContain("asBuilt.within.angle: is finer");
  });

  it("refuses readings that no knuckle can give together, each with what to read again", () => {
    const [tapes] = issuesOf({ asBuilt: { left: { front: 2, behind: 22.5 } } });
    expect(tapes).toContain("asBuilt.left.behind: differs from front");
    const [heights] = issuesOf({ asBuilt: { right: { faceHeight: 4, pinEndHeight: 7.5 } } });
    expect(heights).toContain("asBuilt.right.pinEndHeight: differs from faceHeight");
    const [sides] = issuesOf({ asBuilt: { left: { span: 10, lowerToArm: 4, upperToArm: 15 } } });
    expect(sides).toContain("asBuilt.left.upperToArm: makes no triangle");
  });
});
