import { describe, expect, it } from "vitest";
import { orderedDocument, orderIssues } from "./orderedTruck.ts";

/** A patch on the order of the example, and the one issue it makes: key, value, mend. */
type Broken = readonly [what: string, patch: object, key: string, value: string | RegExp, mend: RegExp];

const SHAPES: readonly Broken[] = [
  [
    "a rotor of negative diameter",
    { brake: { rotorDiameter: -11 } },
    "order.brake.rotorDiameter",
    "-11",
    /more than 0/,
  ],
  ["a hub face of nothing", { hubFace: 0 }, "order.hubFace", "0", /more than 0/],
  ["a base of negative span", { base: { span: "-10 5/8" } }, "order.base.span", '"-10 5/8"', /more than 0/],
  [
    "a pattern of no wheel",
    { hub: { boltPattern: "5" } },
    "order.hub.boltPattern",
    '"5"',
    /holes and circle/,
  ],
  [
    "a circle of unknown unit",
    { wheel: { boltPattern: "5x40" } },
    "order.wheel.boltPattern",
    '"5x40"',
    /its unit/,
  ],
  [
    "a pitch of another series",
    { steeringArm: { thread: "5/8-18 UNC" } },
    "order.steeringArm.thread",
    '"5/8-18 UNC"',
    /11 threads an inch/,
  ],
  [
    "a taper without unit",
    { upperBallJoint: { taper: "1.5" } },
    "order.upperBallJoint.taper",
    '"1.5"',
    /inches per foot or degrees/,
  ],
  [
    "a taper as a number",
    { upperBallJoint: { taper: 7.15 } },
    "order.upperBallJoint.taper",
    "7.15",
    /text in double quotes/,
  ],
  ["half a pair", { quantity: 0.5 }, "order.quantity", "0.5", /whole number from 1/],
  ["both sides misspelled", { side: "piar" }, "order.side", '"piar"', /did you mean "pair"/],
  ["an unknown key", { drops: 2 }, "order.drops", "2", /did you mean "drop"/],
  [
    "an unknown key of a part",
    { brake: { rotorDiametre: 11 } },
    "order.brake.rotorDiametre",
    "11",
    /did you mean "rotorDiameter"/,
  ],
  [
    "a caliper inside out",
    { brake: { caliper: { min: [6, -4, -2] } } },
    "order.brake.caliper.max[0]",
    '"5 3/4"',
    /more than min\[0\]/,
  ],
  ["a wheel seated twice", { wheel: { offset: 0 } }, "order.wheel.offset", "0", /not both/],
  ["notes in two lines", { notes: "one\ntwo" }, "order.notes", String.raw`"one\ntwo"`, /one line/],
  ["a pin angle of no knuckle", { pinAngle: 60 }, "order.pinAngle", "60", /less than 45/],
];

/** What no verb could work with before it is refused: of the blocks and of the order alike. */
const THIN = [
  ["hardware.rotor.thickness", { hardware: { rotor: { thickness: 1e-300 } } }, {}],
  ["hardware.rotor.diameter", { hardware: { rotor: { diameter: 1e-300 } } }, {}],
  ["wheel.barrelDiameter", { wheel: { barrelDiameter: 1e-300 } }, {}],
  ["order.wheel.barrelDiameter", {}, { wheel: { barrelDiameter: 1e-300 } }],
  ["order.brake.rotorThickness", {}, { brake: { rotorThickness: 1e-300 } }],
] as const;

const MISFITS: readonly Broken[] = [
  [
    "an unknown ball joint",
    { upperBallJoint: { item: "Plover 14" } },
    "order.upperBallJoint.item",
    '"Plover 14"',
    /is not in the catalog; did you mean "Plover 41"\?/,
  ],
  [
    "an unknown brake",
    { brake: { item: "Nothing" } },
    "order.brake.item",
    '"Nothing"',
    /there are "Kestrel 11"/,
  ],
  ["a stance of another truck", { stance: "drivng" }, "order.stance", '"drivng"', /did you mean "driving"/],
  [
    "tapers that disagree",
    { upperBallJoint: { seat: "2 in/ft" } },
    "order.upperBallJoint.seat",
    "2 in/ft (9.527° included)",
    /differs from the stud's taper, 1.5 in\/ft \(7.153° included\)/,
  ],
  [
    "a lower seat for an upper stud",
    { lowerBallJoint: { seat: "7.15°" } },
    "order.lowerBallJoint.seat",
    /^1\.4994 in\/ft/,
    /stud's taper, 2 in\/ft/,
  ],
  [
    "too little thread",
    { steeringArm: { engagement: "1/2" } },
    "order.steeringArm.engagement",
    "1/2 in",
    /is 9 threads of 5\/8-18 UNF; screw it in by at least 15\/16 in/,
  ],
  [
    "a rod end too short",
    { steeringArm: { shank: "1 1/2" } },
    "order.steeringArm.shank",
    "1 1/2 in",
    /at least 1 5\/8 in/,
  ],
  [
    "a rod end of the other hand",
    { steeringArm: { rodEndThread: "5/8-18 LH" } },
    "order.steeringArm.rodEndThread",
    "5/8-18 UNF LH",
    /does not screw into the arm's 5\/8-18 UNF/,
  ],
  [
    "a wheel with other holes",
    { wheel: { boltPattern: "6 x 5 1/2" } },
    "order.wheel.boltPattern",
    "6x5 1/2",
    /wheel does not bolt to the hub, which has 5x5/,
  ],
  [
    "a rotor with other holes",
    { brake: { boltPattern: "5x4.75" } },
    "order.brake.boltPattern",
    "5x4 3/4",
    /rotor does not bolt to the hub/,
  ],
  [
    "a wheel with a small bore",
    { wheel: { centerBore: 3 } },
    "order.wheel.centerBore",
    "3 in",
    /pilot of 3 1\/16 in/,
  ],
  [
    "a hat with a small bore",
    { brake: { hatRegister: "2 7/8" } },
    "order.brake.hatRegister",
    "2 7/8 in",
    /register of 3 1\/16 in/,
  ],
  [
    "an outer bearing as large as the inner",
    { hub: { outerBearing: { bore: "1 1/4" } } },
    "order.hub.outerBearing.bore",
    "1 1/4 in",
    /less than the inner bearing's 1 1\/4 in; the pin must step down outboard/,
  ],
  [
    "a nut thread larger than the bearing",
    { hub: { nutThread: "7/8-14" } },
    "order.hub.nutThread",
    "7/8 in",
    /at most the outer bearing's 3\/4 in/,
  ],
  [
    "an inner bearing past the seal",
    { hub: { sealDiameter: "1 1/4" } },
    "order.hub.innerBearing.bore",
    "1 1/4 in",
    /less than the seal's/,
  ],
  ["bearings that overlap", { hub: { outerSeat: 3 } }, "order.hub.outerSeat", "3 in", /at most 2 5\/8 in/],
  [
    "a hub longer than the pin",
    { hub: { shoulder: 6 } },
    "order.hub.shoulder",
    "6 in",
    /hub face is 5 1\/2 in from it/,
  ],
  [
    "a caliper in the barrel",
    { brake: { caliper: { max: ["6 1/2", "-3/4", "2 3/4"] } } },
    "order.brake.caliper",
    "reaches 7.058 in from the wheel's axis",
    /does not clear the wheel's barrel, 13 3\/4 in across/,
  ],
  [
    "a caliper in the wheel's center",
    { brake: { caliper: { max: ["5 3/4", "1/2", "2 3/4"] } } },
    "order.brake.caliper",
    /^reaches 6\.374 in/,
    /wheel's center by 1\/4 in/,
  ],
  [
    "a rotor as large as the barrel",
    { brake: { rotorDiameter: 14 } },
    "order.brake.rotorDiameter",
    "14 in",
    /does not go into the barrel, 13 3\/4 in across/,
  ],
  [
    "a rim too small for the brake",
    { brake: { leastRim: 17 } },
    "order.wheel.rimDiameter",
    "15 in",
    /rims of 17 in and more/,
  ],
];

describe("an order that no file may hold", () => {
  it.each(SHAPES)("%s is an issue with file, key, value and mend", (_, patch, key, value, mend) => {
    const issues = orderIssues(orderedDocument(patch));
    expect(issues.map((issue) => issue.key)).toEqual([key]);
    expect(issues[0]).toEqual({ file: "ordered.json", key, value, mend: expect.stringMatching(mend) });
  });
});

describe("a size that nothing has", () => {
  it.each(THIN)("at %s is an issue there", (key, patch, order) => {
    const issues = orderIssues(orderedDocument(order, patch));
    expect(issues.map((issue) => [issue.key, issue.value])).toEqual([[key, "1e-300"]]);
    expect(issues[0]!.mend).toMatch(/too thin/);
  });
});

describe("an order whose parts do not go together", () => {
  it("is not the example's", () => {
    expect(orderIssues(orderedDocument())).toEqual([]);
  });

  it.each(MISFITS)("%s is an issue with file, key, value and mend", (_, patch, key, value, mend) => {
    const issues = orderIssues(orderedDocument(patch));
    expect(issues.map((issue) => issue.key)).toEqual([key]);
    const [issue] = issues;
    expect(issue!.file).toBe("ordered.json");
    if (typeof value === "string") expect(issue!.value).toBe(value);
    else expect(issue!.value).toMatch(value);
    expect(issue!.mend).toMatch(mend);
    expect(issue!.mend).not.toMatch(/\.$|undefined|NaN/);
  });

  it("a knuckle on which the truck does not stand says so by the key that closes it", () => {
    const [issue] = orderIssues(orderedDocument({ base: { span: 40 } }));
    expect(issue).toMatchObject({
      key: "knuckle.span",
      mend: expect.stringMatching(/^as ordered: .*closes/),
    });
  });

  it("several misfits are all told", () => {
    const keys = orderIssues(
      orderedDocument({ wheel: { boltPattern: "8x6.5" }, steeringArm: { engagement: "3/8" } }),
    ).map(({ key }) => key);
    expect(keys).toEqual(["order.wheel.boltPattern", "order.steeringArm.engagement"]);
  });
});

describe("a build whose pin is not what the hub sits on", () => {
  const PIN = {
    steps: [
      { from: 0, to: "2 1/4", diameter: "1 3/4" },
      { from: "2 1/4", to: "4 5/8", diameter: "1 1/4" },
      { from: "4 5/8", to: "6 3/8", diameter: "3/4" },
    ],
    bearings: { inner: "2 9/16", outer: "4 15/16" },
  };
  const issuesWith = (pin: object, order: object = {}, knuckle: object = {}) =>
    orderIssues(orderedDocument(order, { build: { pin: { ...PIN, ...pin } }, knuckle }));

  it("is told with a narrower hub face, seat by seat, with the mend", () => {
    const issues = issuesWith({}, { hubFace: "4 3/4" });
    expect(issues.map(({ key, value }) => [key, value])).toEqual([
      ["build.pin.steps[0]", "1 3/4 in"],
      ["build.pin.bearings.inner", "2 9/16 in"],
      ["build.pin.steps[1]", "1 1/4 in"],
      ["build.pin.bearings.outer", "4 15/16 in"],
      ["build.pin.steps[2].to", "6 3/8 in"],
    ]);
    expect(issues[0]!.mend).toMatch(
      /inner bearing sits from 1 1\/2 in to 2 1\/8 in along the pin and has a bore of 1 1\/4 in; .*build\.pin\.forHubFace/,
    );
    expect(issues[4]!.mend).toMatch(/the pin ends at 5 5\/8 in/);
  });

  it("is none where the pin is drawn for a hub face and comes along, before and after the order is put in", () => {
    expect(issuesWith({ forHubFace: "5 1/2" })).toEqual([]);
    expect(issuesWith({ forHubFace: "5 1/2" }, { hubFace: "4 3/4" })).toEqual([]);
    expect(issuesWith({ forHubFace: "5 1/2" }, { hubFace: "4 3/4" }, { hubFace: "4 3/4" })).toEqual([]);
  });

  it("is told where a pin is too short for its outer bearing", () => {
    const short = [...PIN.steps.slice(0, 2), { from: "4 5/8", to: 5, diameter: "3/4" }];
    const issues = issuesWith({ steps: short });
    expect(issues.map(({ key, value }) => [key, value])).toEqual([
      ["build.pin.steps[2]", "the pin ends before"],
      ["build.pin.steps[2].to", "5 in"],
    ]);
  });
});
