import { Euler, Quaternion, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import { readSetup } from "../../../src/setup/readSetup.ts";
import { matchesOf, matchOff, scanFit, standingOf } from "../../../src/studies/worksheet/scanFit.ts";
import { boxOf, stepAlong, steppedScan, unitGuesses } from "../../../src/studies/worksheet/scanMove.ts";
import { exampleDocument } from "../../app/exampleText.ts";

/** Corners of a box, a fender's size over its longest side of 1. */
const corners = (longest: number, at: Vec3 = [0, 0, 0]): Float64Array =>
  Float64Array.from(
    [0, 1].flatMap((x) =>
      [0, 0.4].flatMap((y) =>
        [0, 0.3].flatMap((z) => [at[0] + x * longest, at[1] + y * longest, at[2] + z * longest]),
      ),
    ),
  );

describe("the unit of a mesh file", () => {
  it.each([
    [60, ["in"]],
    [1500, ["mm"]],
    [160, ["cm"]],
    [1.5, ["m"]],
    [5, ["ft"]],
    [62, ["in", "cm"]],
    [450, ["mm"]],
  ] as const)("is told by its size: %d long", (longest, likely) => {
    const guesses = unitGuesses(corners(longest, [7000, 7000, 7000]));
    expect(guesses[0]!.unit).toBe(likely[0]);
    expect(guesses.filter(({ isLikely }) => isLikely).map(({ unit }) => unit)).toContain(likely.at(-1));
    const mm = { in: 25.4, mm: 1, cm: 10, m: 1000, ft: 304.8 }[guesses[0]!.unit] * longest;
    expect(guesses[0]!.sides[0]).toBeCloseTo(mm, 6);
    expect(guesses[0]!.sides[2]).toBeCloseTo(0.3 * mm, 6);
  });

  it("is told by where a small part lies when it has the truck's axes already", () => {
    // A bracket of 9 units beside the wheel: inches by where it lies, feet by its size alone.
    expect(unitGuesses(corners(9, [0, 32, 24]))[0]).toMatchObject({ unit: "in", isLikely: true });
    expect(unitGuesses(corners(9, [7000, 0, 0]))[0]!.unit).toBe("ft");
  });

  it("is told by nothing when no unit makes it as large as a fender", () => {
    for (const longest of [0, 1e-4, 1e6])
      expect(unitGuesses(corners(longest, [1e9, 0, 0])).some(({ isLikely }) => isLikely)).toBe(false);
  });
});

describe("a scan as it stands", () => {
  const TURN = new Quaternion().setFromEuler(new Euler(0.3, -1.1, 2.2, "ZYX"));
  const placed = (raw: Float64Array, mmPer: number) => {
    const out = new Float64Array(raw.length);
    for (let i = 0; i < raw.length; i += 3) {
      const { x, y, z } = new Vector3(
        raw[i]! * mmPer,
        raw[i + 1]! * mmPer,
        raw[i + 2]! * mmPer,
      ).applyQuaternion(TURN);
      out.set([x + 100, y - 50, z + 700], i);
    }
    return out;
  };
  const raw = corners(60);
  const standing = standingOf(raw, placed(raw, 25.4), 25.4)!;

  it("is found again from where its vertices came to, as three.js turned them", () => {
    const { x, y, z } = new Vector3(10, 20, 30).applyQuaternion(TURN);
    expect(matchOff(standing, { inScan: [10, 20, 30], onTruck: [x + 100, y - 50, z + 700] })).toBeLessThan(
      1e-8,
    );
    expect(standing.turnDegrees.map((one) => one / (180 / Math.PI))).toEqual(
      [0.3, -1.1, 2.2].map((one) => expect.closeTo(one, 9)),
    );
    expect(
      standingOf(Float64Array.of(0, 0, 0, 1, 0, 0, 2, 0, 0), Float64Array.of(0, 0, 0, 1, 0, 0, 2, 0, 0), 1),
    ).toBeNull();
  });

  it("goes by a step along an axis, or about one through its middle, as three.js turns it", () => {
    const along = steppedScan(standing, { along: 1, mm: -4 }, [0, 0, 0]);
    expect(along.move).toEqual([standing.move[0], standing.move[1] - 4, standing.move[2]]);
    const [min, max] = boxOf(placed(raw, 25.4));
    const middle = new Vector3(...min).add(new Vector3(...max)).multiplyScalar(0.5);
    for (const about of [0, 1, 2] as const) {
      const turned = steppedScan(standing, { about, degrees: 7 }, middle.toArray());
      const axis = new Vector3().setComponent(about, 1);
      const wanted = new Vector3(...placed(Float64Array.of(1, 2, 3), 25.4))
        .sub(middle)
        .applyAxisAngle(axis, (7 / 180) * Math.PI)
        .add(middle);
      expect(matchOff(turned, { inScan: [25.4, 50.8, 76.2], onTruck: wanted.toArray() })).toBeLessThan(1e-8);
      const [x, y, z] = turned.turnDegrees.map((one) => (one / 180) * Math.PI) as [number, number, number];
      const again = new Quaternion().setFromEuler(new Euler(x, y, z, "ZYX"));
      const turn = new Quaternion().setFromAxisAngle(axis, (7 / 180) * Math.PI).multiply(TURN);
      expect(again.angleTo(turn)).toBeLessThan(1e-6);
    }
  });
});

it("a step out goes away from the truck on either side, and forward and up are the same on both", () => {
  expect(stepAlong(1, 5, false)).toEqual({ along: 1, mm: 5 });
  expect(stepAlong(1, 5, true)).toEqual({ along: 1, mm: -5 });
  for (const axis of [0, 2] as const) expect(stepAlong(axis, 5, true)).toEqual({ along: axis, mm: 5 });
});

describe("matched points of a scan", () => {
  const body = (place: object) => ({
    ...exampleDocument,
    truck: {
      ...exampleDocument.truck,
      body: [{ name: "scan", kind: "mesh", file: "scan.stl", unit: "ft", place }],
    },
  });
  const mesh = { positions: corners(5), triangles: Uint32Array.of(0, 1, 2, 1, 2, 3, 4, 5, 6), unit: null };
  const read = (place: object) =>
    readSetup(JSON.stringify(body(place)), "scan.json", null, new Map([["scan.stl", mesh]]));
  const matched = [
    { inMesh: [0, 0, 0], onTruck: [1, 30, 20] },
    { inMesh: [5, 0, 0], onTruck: [61, 30, 20] },
    { inMesh: [0, 2, 0] },
    { inMesh: [0, 0, 1.5], onTruck: [1, 30, "38 in"] },
  ];

  it("stand beside where it stands and change nothing of it; feet are read as feet", () => {
    const made = read({ move: [1, 30, 20], matched });
    if (!made.ok) throw new Error(JSON.stringify(made.issues));
    const [part] = made.value.setup.truck.body;
    expect(part?.kind === "mesh" && [...part.positions.slice(-3)]).toEqual(
      [1 + 60, 30 + 24, 20 + 18].map((inches) => expect.closeTo(25.4 * inches, 6)),
    );
  });

  it("are fitted once three are whole; half a pair waits", () => {
    const document = body({ matched });
    const found = matchesOf(document, ["truck", "body", 0], "in");
    expect(found.map((one) => one !== null)).toEqual([true, true, false, true]);
    expect(found[3]).toEqual({ inScan: [0, 0, expect.closeTo(457.2, 9)], onTruck: [25.4, 762, 965.2] });
    expect(scanFit(document, ["truck", "body", 0], "in")).toBeNull();
    const three = body({ matched: matched.filter(({ onTruck }) => onTruck) });
    for (const off of scanFit(three, ["truck", "body", 0], "in")!) expect(off).toBeLessThan(1e-9);
  });

  it("are as large as a factor on top makes the mesh", () => {
    const place = { scale: 2, move: [1, 30, 20], matched: [{ inMesh: [0, 0, 1.5], onTruck: [1, 30, 56] }] };
    const made = read(place);
    if (!made.ok) throw new Error(JSON.stringify(made.issues));
    const [part] = made.value.setup.truck.body;
    if (part?.kind !== "mesh") throw new TypeError("no mesh");
    const [match] = matchesOf(body(place), ["truck", "body", 0], "in");
    const standing = standingOf(mesh.positions, part.positions, 2 * 304.8)!;
    expect(matchOff(standing, match!)).toBeLessThan(1e-6);
  });

  it("that do not read are told at their place", () => {
    const made = read({ matched: [{ onTruck: ["a", 1, 2] }, { onTruck: ["200 m", 0, 0] }] });
    expect(made.ok).toBe(false);
    if (!made.ok) expect(made.issues[0]!.key).toBe("truck.body[0].place.matched[0].onTruck[0]");
    const far = read({ matched: [{ onTruck: ["200 m", 0, 0] }] });
    if (!far.ok) expect(far.issues[0]).toMatchObject({ key: "truck.body[0].place.matched[0].onTruck[0]" });
    expect(far.ok).toBe(false);
  });
});
