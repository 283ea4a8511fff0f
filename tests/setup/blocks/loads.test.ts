import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { DEFAULT_LOAD_CASES } from "../../../src/setup/types/defaultLoadCases.ts";
import { NEWTONS_PER_POUND } from "../../../src/units/quantity.ts";
import { exampleDocument } from "../fixtures.ts";

const resolved = (loads: unknown, more: object = {}) =>
  resolveSetup({ ...exampleDocument(), ...more, loads }, "truck.json");
const loadsOf = (loads: unknown, more: object = {}) => {
  const result = resolved(loads, more);
  if (!result.ok) throw new Error(result.issues.map(({ key, mend }) => `${key}: ${mend}`).join("\n"));
  return result.value.loads;
};
const issuesOf = (loads: unknown) => {
  const result = resolved(loads);
  return result.ok ? [] : result.issues.map(({ file, key, mend }) => `${file} ${key}: ${mend}`);
};
const mounts = { bodyMount: [0, 18, 16], armMount: [0, 19, 9] };

describe("the loads block", () => {
  it("is not there without being typed, and without cases has the usual ones", () => {
    expect(loadsOf(undefined)).toBeNull();
    expect(loadsOf({})).toEqual({ cases: DEFAULT_LOAD_CASES, spring: null, bumpStop: null });
    expect(new Set(DEFAULT_LOAD_CASES.map(({ name }) => name)).size).toBe(7);
  });

  it("is read into N and mm, with its defaults", () => {
    const loads = loadsOf(
      {
        cases: [
          { name: "pothole", kind: "multiples", up: 3.5 },
          {
            name: "stop",
            kind: "force",
            forward: "-1200 lb",
            up: 1500,
            wheel: "braked",
            travel: 1,
            steer: 0,
          },
        ],
        spring: mounts,
        bumpStop: { ...mounts, on: "upperArm", springLoad: "1900 lb" },
      },
      { limits: { bumpStop: { travel: 3 } } },
    );
    expect(loads?.cases[0]).toMatchObject({ at: "contactPatch", wheel: "rolls", travel: null, forward: 0 });
    expect(loads?.cases[1]?.forward).toBeCloseTo(-1200 * NEWTONS_PER_POUND, 9);
    expect(loads?.cases[1]).toMatchObject({ wheel: "braked", travel: 25.4, steer: 0 });
    expect(loads?.spring?.on).toBe("lowerArm");
    expect(loads?.bumpStop).toMatchObject({ on: "upperArm", from: expect.closeTo(76.2, 9) });
  });

  it.each([
    ["no cases", { cases: [] }, "loads.cases: must have at least one case"],
    ["a case without load", { cases: [{ name: "a", kind: "multiples" }] }, "loads.cases[0]: has no load"],
    [
      "one name twice",
      {
        cases: [
          { name: "a", kind: "multiples", up: 1 },
          { name: "a", kind: "force", up: 9 },
        ],
      },
      "loads.cases[1].name: is the name of entry 0 already",
    ],
    [
      "a force as a multiple",
      { cases: [{ name: "a", kind: "multiples", up: 4000 }] },
      "loads.cases[0].up: must be a number from -100 to 100",
    ],
    [
      "a kind that is none",
      { cases: [{ name: "a", kind: "multiple", up: 1 }] },
      'loads.cases[0].kind: must be "multiples" or "force"; did you mean "multiples"?',
    ],
    [
      "a spring without a line",
      { spring: { bodyMount: [0, 18, 16], armMount: [0, 18, 16] } },
      "loads.spring.armMount: must be at least 1 mm from bodyMount",
    ],
    ["a stop met nowhere", { bumpStop: mounts }, "loads.bumpStop.from: required: travel at which it is met"],
    [
      "steer past lock",
      { cases: [{ name: "a", kind: "multiples", up: 1, steer: 2 }] },
      "loads.cases[0].steer: must be a number from -1 to 1",
    ],
  ])("tells of %s with file, key and mend", (_, loads, told) => {
    expect(issuesOf(loads)[0]).toContain(`truck.json ${told}`);
  });
});
