import { describe, expect, it } from "vitest";
import { poseNameMend } from "../../src/setup/blocks/poses.ts";
import { exampleDocument } from "./fixtures.ts";
import { issuesOf, setupOf } from "./patched.ts";

const DEG = Math.PI / 180;

describe("the roll block", () => {
  it("is read into radians and mm; none is none", () => {
    expect(setupOf({}).roll).toBeNull();
    expect(setupOf({ roll: { most: "2.5°", curb: "1 1/2" } }).roll).toEqual({
      most: expect.closeTo(2.5 * DEG, 15),
      curb: expect.closeTo(38.1, 12),
    });
    expect(setupOf({ roll: { most: 2 } }).roll!.curb).toBeNull();
  });

  it("refuses what cannot be, at its key", () => {
    expect(issuesOf({ roll: {} })).toEqual([
      "roll.most: required: body roll each way to be checked, degrees",
    ]);
    expect(issuesOf({ roll: { most: 0 } })[0]).toMatch(/^roll\.most: must be more than 0/);
    expect(issuesOf({ roll: { most: 2, curb: 0 } })).toEqual(["roll.curb: must be more than 0"]);
    expect(issuesOf({ roll: { most: 2, curbs: 1 } })[0]).toMatch(/did you mean "curb"/);
  });
});

describe("named poses", () => {
  it("are read into mm, straight ahead unless steered; a file without them has none", () => {
    expect(setupOf({}).poses).toEqual([]);
    const poses = [
      { name: "left on a curb", leftTravel: "1 1/2", rightTravel: "-5 mm", steer: -0.5 },
      { name: "level", leftTravel: 0, rightTravel: 0 },
    ];
    expect(setupOf({ poses }).poses).toEqual([
      { name: "left on a curb", travels: { left: expect.closeTo(38.1, 12), right: -5 }, steer: -0.5 },
      { name: "level", travels: { left: 0, right: 0 }, steer: 0 },
    ]);
  });

  it("are refused where one has the name of another, lacks a wheel or is steered past a lock", () => {
    const pose = { name: "curb", leftTravel: 1, rightTravel: 0 };
    expect(issuesOf({ poses: [pose, pose] })).toEqual([
      "poses[1].name: is the name of entry 0 already; each needs its own",
    ]);
    // A pose and a stance are asked for alike: which of them was meant nobody could tell.
    const stances = [{ name: "low", travel: 1 }, { name: "curb", lowerArmAngle: 2 }, null];
    expect(issuesOf({ poses: [{ ...pose, name: "high" }, pose], stances: stances.slice(0, 2) })).toEqual([
      "poses[1].name: is the name of a stance already; a pose needs a name of its own",
    ]);
    expect(issuesOf({ poses: [null, pose], stances })).toContain(
      "poses[1].name: is the name of a stance already; a pose needs a name of its own",
    );
    expect(poseNameMend("curb", { stances })).toMatch(/^is the name of a stance already/);
    expect(poseNameMend("curb", { poses: [pose], stances })).toMatch(/^is the name of a pose already/);
    expect(poseNameMend("high", { poses: [pose], stances })).toBeNull();
    expect(issuesOf({ poses: [{ name: "curb", leftTravel: 1 }] })[0]).toMatch(/rightTravel: required/);
    expect(issuesOf({ poses: [{ ...pose, steer: 1.2 }] })[0]).toMatch(
      /steer: must be a number from -1 to 1$/,
    );
  });
});

describe("the floor block", () => {
  it("is read into mm, the rear following unless it stays", () => {
    expect(setupOf({}).floor).toBeNull();
    expect(setupOf({ floor: {} }).floor).toEqual({ rear: "follows", lip: null, frame: null, points: [] });
    const points = [
      { name: "pan", at: [-2, 0, 7] },
      { name: "step", at: [-30, 30, "8 1/2"], side: "right" },
    ];
    const { floor } = setupOf({
      floor: { rear: "stays", lip: [0, 36, 30], frame: [0, 14, "15 1/2"], points },
    });
    expect(floor).toMatchObject({ rear: "stays", lip: [0, expect.closeTo(914.4, 9), 762] });
    expect(floor!.frame![2]).toBeCloseTo(393.7, 9);
    expect(floor!.points.map(({ name, side }) => [name, side])).toEqual([
      ["pan", "both"],
      ["step", "right"],
    ]);
  });

  it("refuses what cannot be, at its key", () => {
    const { truck } = exampleDocument();
    const { wheelbase: _, ...rest } = truck;
    const [issue] = issuesOf({ truck: rest, floor: { rear: "stays" } });
    expect(issue).toMatch(/^floor\.rear: needs truck\.wheelbase/);
    expect(issuesOf({ floor: { rear: "sinks" } })[0]).toMatch(/^floor\.rear: must be "follows" or "stays"/);
    const at = [0, 1, 2];
    const twice = {
      floor: {
        points: [
          { name: "pan", at },
          { name: "pan", at },
        ],
      },
    };
    expect(issuesOf(twice)[0]).toMatch(/^floor\.points\[1\]\.name: is the name of entry 0 already/);
    expect(issuesOf({ floor: { lip: [0, 1] } })[0]).toMatch(/^floor\.lip: must be a point/);
  });
});

describe("stances", () => {
  const floor = { lip: [0, 36, 30], frame: [0, 14, 15] };
  const airSpring = { bodyMount: [0, 18, 16], armMount: [0, 19, 9] };

  it("typed by travel are placed when read, the others are kept as typed with their place in the list", () => {
    const { stances, measuredStances } = setupOf({
      floor,
      airSpring,
      stances: [
        { name: "low", lipHeight: 26 },
        { name: "road", travel: 0 },
        { name: "arm", lowerArmAngle: "-3.5°" },
        { name: "bag", airSpringHeight: 7 },
        { name: "rail", frameHeight: "12 mm" },
      ],
    });
    expect(stances).toEqual([{ name: "road", travel: 0 }]);
    expect(measuredStances).toEqual([
      { name: "low", index: 0, measure: "lipHeight", value: expect.closeTo(660.4, 9), typed: 26 },
      {
        name: "arm",
        index: 2,
        measure: "lowerArmAngle",
        value: expect.closeTo(-3.5 * DEG, 15),
        typed: "-3.5°",
      },
      { name: "bag", index: 3, measure: "airSpringHeight", value: expect.closeTo(177.8, 9), typed: 7 },
      { name: "rail", index: 4, measure: "frameHeight", value: 12, typed: "12 mm" },
    ]);
  });

  it("can be what an alignment is set at, however they are typed", () => {
    const alignment = { targets: { stance: "low", camber: -0.5 } };
    expect(issuesOf({ floor, alignment, stances: [{ name: "low", lipHeight: 26 }] })).toEqual([]);
    expect(issuesOf({ floor, alignment, stances: [{ name: "lows", lipHeight: 26 }] })[0]).toMatch(
      /^alignment\.targets\.stance: no such stance; did you mean "lows"/,
    );
  });

  it("read by what the setup does not have are refused, with what to give", () => {
    expect(issuesOf({ stances: [{ name: "low", lipHeight: 26 }] })[0]).toMatch(
      /^stances\[0\]\.lipHeight: needs floor\.lip/,
    );
    expect(issuesOf({ floor: { lip: [0, 36, 30] }, stances: [{ name: "low", frameHeight: 12 }] })[0]).toMatch(
      /^stances\[0\]\.frameHeight: needs floor\.frame/,
    );
    expect(issuesOf({ stances: [{ name: "low", airSpringHeight: 5 }] })[0]).toMatch(
      /^stances\[0\]\.airSpringHeight: needs an airSpring block/,
    );
  });

  it("are read by exactly one measure", () => {
    expect(issuesOf({ stances: [{ name: "low" }] })[0]).toMatch(
      /^stances\[0\]\.travel: required: give one of/,
    );
    expect(issuesOf({ stances: [{ name: "low", travel: 1, lowerArmAngle: 2 }] })[0]).toMatch(
      /^stances\[0\]\.lowerArmAngle: give travel or lowerArmAngle, not both/,
    );
    expect(issuesOf({ stances: [{ name: "low", lowerArmAngle: 85 }] })[0]).toMatch(/less than 80 degrees/);
  });
});
