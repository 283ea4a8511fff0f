import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { exampleDocument } from "../fixtures.ts";

const IN = 25.4;

function resolve(change: object, variant: string | null = null) {
  return resolveSetup({ ...exampleDocument(), ...change }, "truck.json", variant);
}

function hardwareOf(change: object, variant: string | null = null) {
  const read = resolve(change, variant);
  if (!read.ok) throw new TypeError(read.issues.map((i) => `${i.key}: ${i.mend}`).join("; "));
  return read.value.hardware;
}

function issuesOf(change: object): [string, string][] {
  const read = resolve(change);
  return read.ok ? [] : read.issues.map(({ key, mend }) => [key, mend]);
}

describe("the hardware block", () => {
  it("is none when the setup has none", () => {
    expect(hardwareOf({})).toBeNull();
  });

  it("empty means everything by default, but no rotor and no caliper", () => {
    const hardware = hardwareOf({ hardware: {} })!;
    const radii = Object.entries(hardware).flatMap(([key, value]) =>
      value && "radius" in value ? [key] : [],
    );
    expect(radii).toHaveLength(8);
    expect(hardware.upperArm.radius).toBeCloseTo(0.625 * IN, 9);
    expect(hardware.lowerBallJoint.radius).toBeCloseTo(1.125 * IN, 9);
    expect(hardware).toMatchObject({ rotor: null, caliper: null });
  });

  it("takes lengths of any notation, and defaults for what a rotor leaves out", () => {
    const hardware = hardwareOf({
      hardware: {
        tieRod: { radius: "12 mm" },
        rotor: { diameter: "11 3/4" },
        caliper: { frame: "hub", min: [-7, -4, "-3 1/2"], max: [-3, "-10 mm", 3] },
      },
    })!;
    expect(hardware.tieRod.radius).toBe(12);
    expect(hardware.rotor).toEqual({
      diameter: expect.closeTo(11.75 * IN, 9),
      thickness: expect.closeTo(IN, 9),
      inboard: expect.closeTo(1.75 * IN, 9),
    });
    expect(hardware.caliper).toMatchObject({
      frame: "hub",
      max: [expect.closeTo(-76.2, 9), -10, expect.closeTo(76.2, 9)],
    });
    const plain = hardwareOf({ hardware: { caliper: { min: [0, 0, 0], max: [1, 1, 1] } } })!;
    expect(plain.caliper!.frame).toBe("knuckle");
  });

  it("a variant's null takes out the rotor, or the whole block", () => {
    const variants = [
      { name: "no rotor", patch: { hardware: { rotor: null } } },
      { name: "none", patch: { hardware: null } },
    ];
    const hardware = { rotor: {}, tieRod: { radius: 1 } };
    expect(hardwareOf({ hardware, variants })!.rotor).not.toBeNull();
    expect(hardwareOf({ hardware, variants }, "no rotor")!.rotor).toBeNull();
    expect(hardwareOf({ hardware, variants }, "no rotor")!.tieRod.radius).toBeCloseTo(IN, 9);
    expect(hardwareOf({ hardware, variants }, "none")).toBeNull();
  });

  it.each([
    [{ tyreRod: {} }, "hardware.tyreRod", 'unknown key; did you mean "tieRod"?'],
    [
      { rotor: { width: 1 } },
      "hardware.rotor.width",
      "unknown key; known here: diameter, thickness, inboard",
    ],
    [{ knuckle: { radius: -1 } }, "hardware.knuckle.radius", "must be 0 or more"],
    [{ rotor: { diameter: 0 } }, "hardware.rotor.diameter", "must be more than 0"],
    [{ rotor: 11 }, "hardware.rotor", "must be an object, { … }"],
    [
      { caliper: { min: [0, 0, 0] } },
      "hardware.caliper.max",
      "required: corner with the greatest x, y and z",
    ],
    [{ caliper: { min: [0, 0, 0], max: [1, 0, 1] } }, "hardware.caliper.max[1]", "must be more than min[1]"],
  ])("%j is refused at %s", (hardware, key, mend) => {
    expect(issuesOf({ hardware })).toEqual([[key, mend]]);
  });

  it("a body part may not have the name of a moving part measured beside it, only then", () => {
    const { truck } = exampleDocument();
    const part = (name: string) => ({ name, kind: "path", radius: 1, points: [[0, 30, 30]] });
    const named = (...names: string[]) => ({ truck: { ...truck, body: names.map(part) } });
    expect(issuesOf(named("tie rod", "rotor to tie rod"))).toEqual([]);
    const mend = "is what the hardware block calls a moving part; give it another name";
    expect(issuesOf({ ...named("hose", "tie rod"), hardware: {} })).toEqual([["truck.body[1].name", mend]]);
    expect(issuesOf({ ...named("rotor to tie rod"), hardware: {} })).toEqual([]);
    expect(issuesOf({ ...named("rotor to tie rod"), hardware: { rotor: {} } })).toEqual([
      ["truck.body[0].name", mend],
    ]);
  });

  it("is looked at beside a body whose parts have no sound shape", () => {
    const { truck } = exampleDocument();
    const keys = issuesOf({ truck: { ...truck, body: [null, 3] }, hardware: {} }).map(([key]) => key);
    expect(keys).toEqual(["truck.body[0]", "truck.body[1]"]);
  });
});

describe("wheel.center", () => {
  const wheel = (center: unknown) => ({ wheel: { ...exampleDocument().wheel, center } });

  it("comes in mm, a repeated point once; none when not given", () => {
    const read = resolve(
      wheel([
        [0, 2],
        [0, "3"],
        [0, 3],
        ["1/2", 6],
      ]),
    );
    if (!read.ok) throw new TypeError("sound");
    expect(read.value.wheel.center).toEqual([
      [0, expect.closeTo(2 * IN, 9)],
      [0, expect.closeTo(3 * IN, 9)],
      [expect.closeTo(12.7, 9), expect.closeTo(6 * IN, 9)],
    ]);
    const plain = resolve({});
    expect(plain.ok && plain.value.wheel.center).toBeNull();
  });

  it.each([
    [
      [
        [0, 3],
        [1, 2],
      ],
      "wheel.center[1][1]",
      "is less than the r before it; put the points in order from the hub outward",
    ],
    [
      [
        [0, 2],
        [1, 2],
        [0.5, 2],
      ],
      "wheel.center[2][1]",
      "is the third point at this r; give the first and the last of them",
    ],
    [[[0, 2]], "wheel.center", "must have at least 2 different points, and r must grow from the hub outward"],
    [
      [
        [0, -2],
        [0, 3],
      ],
      "wheel.center[0][1]",
      "must be 0 or more",
    ],
  ])("%j is refused at %s", (center, key, mend) => {
    expect(issuesOf(wheel(center))).toEqual([[key, mend]]);
  });
});
