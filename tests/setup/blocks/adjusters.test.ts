import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { radFromDeg } from "../../../src/units/angle.ts";
import { demoDocument } from "../../studies/demoModel.ts";

const STEP = 25.4 / 32;

function read(patch: Record<string, unknown>) {
  return resolveSetup(demoDocument({ truck: { body: [] }, hardware: null, ...patch }), "truck.json");
}

function setupOf(patch: Record<string, unknown>) {
  const result = read(patch);
  if (!result.ok) throw new Error(result.issues.map(({ key, mend }) => `${key}: ${mend}`).join("\n"));
  return result.value;
}

function issueOf(patch: Record<string, unknown>) {
  const result = read(patch);
  if (result.ok) throw new Error("was accepted");
  return result.issues.map(({ key, value, mend }) => `${key} ${value} ${mend}`).join("\n");
}

describe("adjusters", () => {
  it("are none in a setup that does not name them", () => {
    expect(setupOf({})).toMatchObject({ adjusters: null, alignment: { targets: null } });
  });

  it("of shims are in mm with defaults filled in", () => {
    expect(setupOf({ adjusters: { kind: "shims", most: "3/4", front: "1/8" } }).adjusters).toEqual({
      kind: "shims",
      direction: [0, -1, 0],
      front: 3.175,
      rear: 0,
      least: 0,
      most: 19.05,
      step: STEP,
    });
    const tilted = setupOf({ adjusters: { kind: "shims", most: 1, direction: [0, -3, 4] } }).adjusters;
    expect(tilted).toMatchObject({ direction: [0, -0.6, 0.8] });
  });

  it("of eccentrics and of adjustable arms too", () => {
    expect(setupOf({ adjusters: { kind: "eccentric", arm: "lower", throw: "10 mm" } }).adjusters).toEqual({
      kind: "eccentric",
      arm: "lower",
      throw: 10,
      direction: [0, 1, 0],
      front: 0,
      rear: 0,
    });
    const arm = { kind: "adjustableUpperArm", shorter: 1, longer: "1/2" };
    expect(setupOf({ adjusters: arm }).adjusters).toEqual({
      kind: "adjustableUpperArm",
      legs: "each",
      shorter: 25.4,
      longer: 12.7,
      step: STEP,
    });
  });

  it.each([
    [{ kind: "shim", most: 1 }, /^adjusters\.kind .*did you mean "shims"/],
    [{ kind: "shims" }, /^adjusters\.most .*required/],
    [{ kind: "shims", most: "1/4", least: "1/2" }, /adjusters\.most .*must be more than least/],
    [{ kind: "shims", most: "1/4", rear: "3/8" }, /adjusters\.rear .*between least and most/],
    [{ kind: "shims", most: 1, direction: [0, 0, 0] }, /adjusters\.direction .*has no direction/],
    [{ kind: "eccentric", arm: "lower", throw: "1/4", front: "-3/8" }, /adjusters\.front .*throw/],
    [{ kind: "eccentric", throw: 1 }, /adjusters\.arm /],
    [{ kind: "shims", most: 1, throw: 1 }, /adjusters\.throw/],
  ])("%j is refused at its key", (adjusters, mend) => {
    expect(issueOf({ adjusters })).toMatch(mend);
  });
});

describe("alignment targets", () => {
  it("are for both wheels, but for what a side has otherwise; toe is the static one where none is given", () => {
    const targets = { camber: -0.5, caster: 4, left: { caster: 3.5, toe: 0.2 }, right: {} };
    expect(setupOf({ alignment: { toe: 0.1, targets } }).alignment).toEqual({
      toe: radFromDeg(0.1),
      targets: {
        stance: null,
        left: { camber: radFromDeg(-0.5), caster: radFromDeg(3.5), toe: radFromDeg(0.2) },
        right: { camber: radFromDeg(-0.5), caster: radFromDeg(4), toe: radFromDeg(0.1) },
      },
    });
    expect(setupOf({ alignment: { targets: {} } }).alignment.targets?.left).toEqual({
      camber: null,
      caster: null,
      toe: expect.any(Number),
    });
  });

  it("name a stance of the setup, or are refused with the names there are", () => {
    expect(setupOf({ alignment: { targets: { stance: "driving" } } }).alignment.targets?.stance).toBe(
      "driving",
    );
    const issue = issueOf({ alignment: { targets: { stance: "drivin" } } });
    expect(issue).toMatch(
      /alignment\.targets\.stance "drivin" no such stance; did you mean "driving"\?; there are/,
    );
  });
});
