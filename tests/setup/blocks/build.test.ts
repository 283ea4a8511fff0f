import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { jointPlaces, pointOnPin, shareAlong } from "../../../src/setup/types/jointPlaces.ts";
import { MPA_PER_PSI } from "../../../src/units/quantity.ts";
import { exampleDocument } from "../fixtures.ts";

const resolved = (build: unknown) => resolveSetup({ ...exampleDocument(), build }, "truck.json");
const setupOf = (build: unknown) => {
  const result = resolved(build);
  if (!result.ok) throw new Error(result.issues.map(({ key, mend }) => `${key}: ${mend}`).join("\n"));
  return result.value;
};
const issuesOf = (build: unknown) => {
  const result = resolved(build);
  return result.ok
    ? []
    : result.issues.map(({ file, key, value, mend }) => `${file} ${key} ${value}: ${mend}`);
};

const steps = [
  { from: "1 1/4", to: 3, diameter: 2 },
  { from: 3, to: "4 3/4", diameter: "1 3/8", fillet: "1/8" },
  { from: "4 3/4", to: 7, diameter: 1, fillet: "1/16" },
];
const pin = { material: "4140 quenched and tempered", steps, bearings: { inner: "3 1/2", outer: "5 1/2" } };
const tube = (name: string, from: string, to: string, more: object = {}) => ({
  name,
  kind: "tube",
  from,
  to,
  diameter: 1.75,
  wall: 0.188,
  ...more,
});
const plate = {
  name: "caliper bracket",
  thickness: "3/8",
  at: [0, 2, 6],
  across: [1, 0, 0],
  up: [1, 0, 2],
  outline: [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ],
  holes: [{ at: [3, 1], diameter: "1/2" }],
};
const whole = {
  pin,
  joints: [{ name: "caliper", at: [4, 3, 6] }],
  members: [
    tube("lower leg", "lowerBallJoint", "pinRoot"),
    tube("upper leg", "pinRoot", "upperBallJoint", { material: "4130 quenched and tempered" }),
    { name: "steering arm", kind: "bar", from: "lowerBallJoint", to: "tieRodOuter", diameter: "30 mm" },
    { name: "bracket", kind: "link", from: "pinRoot", to: "caliper" },
  ],
  plates: [plate],
  welds: [{ member: "lower leg", end: "to", leg: "3/16" }],
  caliperAt: "caliper",
};

describe("the build block", () => {
  it("is not there without being typed, and empty when nothing is in it", () => {
    expect(setupOf(undefined).build).toBeNull();
    expect(setupOf({}).build).toEqual({
      material: "4130 normalized tube",
      materials: [],
      pin: null,
      joints: [],
      members: [],
      plates: [],
      welds: [],
      studs: [],
      rodEnds: [],
      caliperAt: null,
    });
  });

  it("is read into mm, MPa and unit directions, with its defaults", () => {
    const { build } = setupOf({
      ...whole,
      materials: [{ name: "mill's own", yield: "80 ksi", ultimate: 95000, source: "the mill's certificate" }],
    });
    expect(build?.pin?.steps.map(({ from, fillet }) => [from, fillet])).toEqual([
      [31.75, null],
      [76.2, 3.175],
      [expect.closeTo(120.65, 9), 1.5875],
    ]);
    expect(build?.pin?.bearings?.inner).toBeCloseTo(88.9, 12);
    expect(build?.members[0]).toMatchObject({ kind: "tube", material: null });
    expect(build?.members[2]).toMatchObject({ kind: "bar", diameter: 30 });
    expect(build?.members[3]).toEqual({ kind: "link", name: "bracket", from: "pinRoot", to: "caliper" });
    expect(build?.plates[0]).toMatchObject({ across: [1, 0, 0], up: [0, 0, 1] });
    expect(build?.materials[0]?.yield).toBeCloseTo(80_000 * MPA_PER_PSI, 9);
  });

  it("reads studs by their large end and rod ends by their thread", () => {
    const { build } = setupOf({
      studs: [{ joint: "lowerBallJoint", diameter: 0.8, reach: 1.25 }],
      rodEnds: [{ joint: "tieRodOuter", thread: "5/8-18", reach: "1 1/8", lean: 3 }],
    });
    expect(build?.studs[0]).toMatchObject({ joint: "lowerBallJoint", reach: 31.75, material: null });
    expect(build?.rodEnds[0]?.thread).toMatchObject({ kind: "unified", diameter: 15.875 });
    expect(build?.rodEnds[0]?.lean).toBeCloseTo(Math.PI / 60, 12);
    const wrong = { joint: "tieRodOuter", thread: "5/8-19 UNF", reach: 1 };
    expect(issuesOf({ rodEnds: [wrong] })[0]).toContain("truck.json build.rodEnds[0].thread");
    expect(issuesOf({ studs: [{ joint: "pin", diameter: 1, reach: 1 }] })[0]).toContain(
      "build.studs[0].joint",
    );
  });

  it("knows where every joint is: the knuckle's own and those it names", () => {
    const { build, knuckle } = setupOf(whole);
    const places = jointPlaces(build!, knuckle);
    expect([...places.keys()]).toEqual([
      "lowerBallJoint",
      "upperBallJoint",
      "tieRodOuter",
      "hubFace",
      "pinRoot",
      "caliper",
    ]);
    const [face, root] = [places.get("hubFace")!, places.get("pinRoot")!];
    expect(Math.hypot(...face.map((c, i) => c - root[i]!))).toBeCloseTo(knuckle.hubFace - 31.75, 9);
    expect(face).toEqual(pointOnPin(knuckle, knuckle.hubFace));
    expect(pointOnPin(knuckle, 0)).toEqual([knuckle.pinLead, 0, knuckle.pinHeight]);
    expect(shareAlong([1, 0.3, 0], [0, 0, 0], [4, 0, 0])).toBeCloseTo(0.25, 12);
    expect(shareAlong([1, 0.5, 0], [0, 0, 0], [4, 0, 0])).toBeNull();
  });

  it("takes a member that meets another one on its line", () => {
    const members = [tube("spine", "lowerBallJoint", "upperBallJoint"), tube("brace", "boss", "tieRodOuter")];
    expect(issuesOf({ joints: [{ name: "boss", at: [0, 0, 3] }], members })).toEqual([]);
    expect(issuesOf({ joints: [{ name: "boss", at: [0, 1, 3] }], members })[0]).toMatch(
      /^truck.json build.members\[1\] .*meets no member that is joined to "spine"/,
    );
  });

  it.each([
    [
      "negative wall",
      { members: [tube("a", "lowerBallJoint", "upperBallJoint", { wall: -0.1 })] },
      "members[0].wall -0.1: must be more than 0",
    ],
    [
      "wall over the radius",
      { members: [tube("a", "lowerBallJoint", "upperBallJoint", { wall: 0.9 })] },
      "members[0].wall 0.9: must be less than half the diameter; a solid one is of kind bar",
    ],
    [
      "unknown joint",
      { members: [tube("a", "lowerBalJoint", "upperBallJoint")] },
      'members[0].from "lowerBalJoint": no such joint; did you mean "lowerBallJoint"?',
    ],
    [
      "pin root without a pin",
      { members: [tube("a", "pinRoot", "upperBallJoint")] },
      'members[0].from "pinRoot": needs build.pin, whose steps start there',
    ],
    [
      "no length",
      { members: [tube("a", "upperBallJoint", "upperBallJoint")] },
      'members[0].to "upperBallJoint": must be another place than from',
    ],
    [
      "growing steps",
      { pin: { steps: [steps[1], { ...steps[2], diameter: 2 }] } },
      "pin.steps[1].diameter 2: must not be more than that of step 0",
    ],
    [
      "gap between steps",
      { pin: { steps: [steps[0], steps[2]] } },
      'pin.steps[1].from "4 3/4": must be where step 0 ends',
    ],
    [
      "step backward",
      { pin: { steps: [{ from: 3, to: 2, diameter: 1 }] } },
      "pin.steps[0].to 2: must be farther outboard than from",
    ],
    ["no steps", { pin: { steps: [] } }, "pin.steps []: must have at least one step"],
    [
      "fillet over the step",
      { pin: { steps: [steps[0], { ...steps[1], fillet: 0.4 }] } },
      "pin.steps[1].fillet 0.4: must not be more than the step is high",
    ],
    [
      "bearing off the pin",
      { pin: { ...pin, bearings: { inner: 3, outer: 8 } } },
      "pin.bearings.outer 8: must stand on the pin",
    ],
    [
      "weld of nothing",
      { ...whole, welds: [{ member: "lower log", end: "to", leg: 0.2 }] },
      'welds[0].member "lower log": no such tube or bar; did you mean "lower leg"?',
    ],
    [
      "two welds in one place",
      { ...whole, welds: [whole.welds[0], whole.welds[0]] },
      'welds[1].end "to": this end of the member has a weld already',
    ],
    [
      "built-in joint again",
      { joints: [{ name: "hubFace", at: [0, 0, 0] }] },
      'joints[0].name "hubFace": is the name of a joint that every knuckle has',
    ],
    [
      "crossed outline",
      {
        plates: [
          {
            ...plate,
            outline: [
              [0, 0],
              [4, 3],
              [4, 0],
              [0, 3],
            ],
          },
        ],
      },
      "plates[0].outline",
    ],
    [
      "hole outside",
      { plates: [{ ...plate, holes: [{ at: [5, 1], diameter: 0.5 }] }] },
      "plates[0].holes[0].at [5, 1]: must lie inside the plate's outline",
    ],
    [
      "no plane",
      { plates: [{ ...plate, up: [2, 0, 0] }] },
      "plates[0].up [2, 0, 0]: must not point along across",
    ],
    [
      "stronger in yield",
      { materials: [{ name: "a", yield: 90, ultimate: 80 }] },
      "materials[0].ultimate 80: must not be less than yield",
    ],
    [
      "caliper nowhere",
      { ...whole, caliperAt: "calipr" },
      'caliperAt "calipr": no such joint; did you mean "caliper"?',
    ],
  ])("tells of a %s with file, key, value and mend", (_, build, told) => {
    const issues = issuesOf(build);
    expect(issues.length).toBeGreaterThan(0);
    expect(issues[0]).toContain(`truck.json build.${told}`);
  });
});

describe("a pin drawn for a hub face", () => {
  const withHubFace = (hubFace: unknown, forHubFace: unknown) => {
    const { knuckle, ...rest } = exampleDocument() as { knuckle: object };
    return resolveSetup(
      { ...rest, knuckle: { ...knuckle, hubFace }, build: { pin: { ...pin, forHubFace } } },
      "truck.json",
    );
  };
  const pinOf = (hubFace: unknown, forHubFace: unknown) => {
    const made = withHubFace(hubFace, forHubFace);
    if (!made.ok) throw new Error(made.issues[0]?.mend);
    return made.value.build!.pin!;
  };

  it("has its steps and bearings come along with the knuckle's, the root where it was", () => {
    const [drawn, narrow] = [pinOf("6 1/8", "6 1/8"), pinOf("5 1/8", "6 1/8")];
    const asDrawn = drawn.steps.flatMap(({ from, to }) => [from / 25.4, to / 25.4]);
    [1.25, 3, 3, 4.75, 4.75, 7].forEach((wanted, i) => {
      expect(asDrawn[i]).toBeCloseTo(wanted, 9);
    });
    const inches = narrow.steps.flatMap(({ from, to }) => [from / 25.4, to / 25.4]);
    [1.25, 2, 2, 3.75, 3.75, 6].forEach((wanted, i) => {
      expect(inches[i]).toBeCloseTo(wanted, 9);
    });
    expect(narrow.bearings!.inner / 25.4).toBeCloseTo(2.5, 9);
    expect(narrow.bearings!.outer / 25.4).toBeCloseTo(4.5, 9);
    expect(narrow.steps.map(({ diameter, fillet }) => [diameter, fillet])).toEqual(
      drawn.steps.map(({ diameter, fillet }) => [diameter, fillet]),
    );
  });

  it("stays where it is where it names none", () => {
    expect(pinOf("5 1/8", undefined).steps).toEqual(pinOf("6 1/8", undefined).steps);
  });

  it("is an issue where nothing is left of its first step", () => {
    const made = withHubFace("4 1/4", "6 1/8");
    expect(made.ok ? [] : made.issues.map(({ key, value }) => [key, value])).toEqual([
      ["build.pin.forHubFace", '"6 1/8"'],
    ]);
  });
});

describe("what of a build hangs on the knuckle", () => {
  const read = (file: string, knuckle: object = {}, variant: string | null = null) => {
    const document = JSON.parse(readFileSync(`shared/${file}`, "utf8"));
    const changed = { ...document, knuckle: { ...document.knuckle, ...knuckle } };
    const made = resolveSetup(changed, file, variant);
    if (!made.ok) throw new Error(made.issues.map(({ key, mend }) => `${key}: ${mend}`).join("\n"));
    return made.value;
  };
  const placesOf = (setup: ReturnType<typeof read>) => jointPlaces(setup.build!, setup.knuckle);

  it("stands where the numbers in the knuckle frame have it with the knuckle it is drawn for", () => {
    const setup = read("tubular-knuckle.json");
    const places = placesOf(setup);
    const inches = (name: string) => places.get(name)!.map((mm) => mm / 25.4);
    const near = (found: readonly number[], wanted: readonly number[]) =>
      found.forEach((value, i) => {
        expect(value).toBeCloseTo(wanted[i]!, 3);
      });
    near(inches("pin seat"), [0, 0, 5.375]);
    near(inches("brace on pin"), [0, 2.176, 5.05]);
    near(inches("boss head"), [0, 0, 10.125]);
    const { at, across, up } = setup.build!.plates[1]!;
    near(
      at.map((mm) => mm / 25.4),
      [0, 1.236, 5.19],
    );
    near(across, [-1, 0, 0]);
    near(up, [0, 0.147809, 0.989016]);
  });

  it("comes along with drop, pin angle and lead, span, hub face and steering arm, whatever hangs on what", () => {
    const build = {
      joints: [
        { name: "seat", on: "pin", at: [0, 0, 0] },
        { name: "on the pin", on: "pin", at: [0, 2, 0] },
        { name: "over the pin", on: "pin", at: [0, 2, 1] },
        { name: "on the face", on: "hubFace", at: [0, 0, 0] },
        { name: "under the upper joint", on: "upperBallJoint", at: [0, 0, -1] },
        { name: "beside the rod end", on: "tieRodOuter", at: [0.5, 0, 0] },
        { name: "still", at: [0, 0, 2] },
      ],
      plates: [{ ...plate, on: "pin" }],
    };
    const knuckles = [
      {},
      { pinHeight: 6.5, pinAngle: 10, pinLead: 0.25, span: 11, hubFace: 5.5, steeringArm: [-5, -1, 2] },
    ];
    for (const knuckle of knuckles) {
      const base = exampleDocument() as { knuckle: object };
      const made = resolveSetup({ ...base, knuckle: { ...base.knuckle, ...knuckle }, build }, "truck.json");
      if (!made.ok) throw new Error(made.issues[0]?.mend);
      const { value } = made;
      const places = jointPlaces(value.build!, value.knuckle);
      const is = (name: string, wanted: readonly number[]) =>
        wanted.forEach((mm, i) => {
          expect(places.get(name)![i], name).toBeCloseTo(mm, 9);
        });
      const { pinAngle, pinLead, pinHeight, span, hubFace, steeringArm } = value.knuckle;
      is("seat", [pinLead, 0, pinHeight]);
      is("on the pin", pointOnPin(value.knuckle, 50.8));
      const [x, y, z] = pointOnPin(value.knuckle, 50.8);
      is("over the pin", [x, y + 25.4 * Math.sin(pinAngle), z + 25.4 * Math.cos(pinAngle)]);
      is("on the face", pointOnPin(value.knuckle, hubFace));
      is("under the upper joint", [0, 0, span - 25.4]);
      is("beside the rod end", [steeringArm[0] + 12.7, steeringArm[1], steeringArm[2]]);
      is("still", [0, 0, 50.8]);
      const { across, up } = value.build!.plates[0]!;
      // Square to each other still, and u, which lay across the pin, does so.
      expect(across[0] * up[0] + across[1] * up[1] + across[2] * up[2]).toBeCloseTo(0, 12);
      expect(across[1] * Math.cos(pinAngle) - across[2] * Math.sin(pinAngle)).toBeCloseTo(0, 12);
    }
  });

  it("keeps the posts of a variant on its pin, so that its members still meet", () => {
    for (const variant of ["one inch more drop", "steeper pin"]) {
      const setup = read("tubular-knuckle.json", {}, variant);
      const places = placesOf(setup);
      for (const name of ["pin seat", "brace on pin"]) {
        const along = shareAlong(
          places.get(name)!,
          pointOnPin(setup.knuckle, -1),
          pointOnPin(setup.knuckle, 100),
        );
        expect(along, `${variant}, ${name}`).not.toBeNull();
      }
    }
  });

  it("is an issue that names the word meant where it hangs on nothing there is", () => {
    expect(issuesOf({ joints: [{ name: "seat", on: "pinn", at: [0, 0, 0] }] })).toEqual([
      expect.stringMatching(/build\.joints\[0\]\.on "pinn": must be .*; did you mean "pin"\?/),
    ]);
  });
});
