import { describe, expect, it } from "vitest";
import { resolveShown } from "../../../src/setup/editing/resolveShown.ts";
import { withMine } from "../../../src/setup/exampleMarks.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";
import { KnownParts } from "../../../src/setup/types/knownParts.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";

const LIP = 'body["fender lip"].points[3]';
const LOWER = "lowerArm.ballJoint";

/** Twelve readings of a plausible truck and one from the rim to its lip, in; the four that are fields first. */
const FIELDS: readonly (readonly [KeyPath, string | number])[] = [
  [["tire", "size"], "P255/60R15"],
  [["wheel", "rimWidth"], 8],
  [["wheel", "backspacing"], 4.5],
  [["knuckle", "hubFace"], 6.75],
];
const READINGS = {
  wheel: { height: "wheelCenter", is: 12.75 },
  lipUp: { height: LIP, is: 29.5 },
  lipOut: { offset: LIP, is: 36 },
  span: { between: [LOWER, "upperArm.ballJoint"], is: 10.25 },
  jointUp: { height: LOWER, is: 8 },
  jointOut: { offset: LOWER, is: 26.25 },
  pivotUp: { height: "lowerArm.frontPivot", is: 9.25 },
  pivotOut: { offset: "lowerArm.frontPivot", is: 11 },
  rimToLip: { between: ["rimTop", LIP], is: 8.75 },
};
type Key = keyof typeof READINGS;

function truckOf(changed: Partial<Record<Key, number>>, own: typeof FIELDS = FIELDS) {
  const begun = own.reduce<unknown>(
    (all, [path, value]) => withMine(setAt(all, path, value), [path]),
    ownTruckDocument({ units: "in", steering: "rack", isFull: false }),
  );
  const readings = (Object.keys(READINGS) as Key[]).map((key) => ({
    ...READINGS[key],
    is: changed[key] ?? READINGS[key].is,
  }));
  const document = withReadings({ ...(begun as object), readings });
  const read = resolveShown(document, "truck.json", null, new Map(), new KnownParts());
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const model = modelOf(read.value, "truck.json");
  const pose = model.ok ? solvePose(model.value.frontEnd, 0, 0) : null;
  if (!pose?.ok) throw new Error("no pose");
  const deg = (rad: number) => (rad / Math.PI) * 180;
  const { knuckle } = read.value;
  return {
    inclination: deg(pose.left.kingpinInclination),
    pinAngle: deg(knuckle.pinAngle),
    hubFace: knuckle.hubFace,
    lip: read.value.truck.body[0],
  };
}

describe("readings of the body", () => {
  it.each([
    ["lipOut", 35],
    ["lipOut", 37],
    ["lipUp", 28.5],
    ["lipUp", 30.5],
    ["rimToLip", 9.25],
  ] as const)("leave the knuckle's angles alone: %s at %d in", (key, is) => {
    const [now, then] = [truckOf({}), truckOf({ [key]: is })];
    expect(Math.abs(then.inclination - now.inclination)).toBeLessThan(0.2);
    expect(Math.abs(then.pinAngle - now.pinAngle)).toBeLessThan(0.2);
    expect(then.hubFace).toBe(now.hubFace);
    // What they tell they tell: the lip moves.
    if (key !== "rimToLip") expect(then.lip).not.toEqual(now.lip);
  });

  it("move the hub face, not the knuckle's angles, where the wheel is tied to the lip and nobody read the hub face", () => {
    const own = FIELDS.slice(0, 3);
    const at = (out: number) => truckOf({ lipOut: out, rimToLip: 9.25 }, own);
    const [now, then] = [at(36), at(37)];
    expect(Math.abs(then.inclination - now.inclination)).toBeLessThan(0.2);
    expect(Math.abs(then.pinAngle - now.pinAngle)).toBeLessThan(0.2);
    expect(then.hubFace - now.hubFace).toBeGreaterThan(5);
  });
});

describe("a knuckle nobody measured but for its span", () => {
  // Kingpin inclination of road vehicles is mostly 6 to 12 degrees: common practice, no source.
  it.each([23.5, 25, 27, 29])("keeps a plausible inclination with its lower joint %d in out", (out) => {
    const { inclination } = truckOf({ jointOut: out });
    expect(inclination).toBeGreaterThan(6);
    expect(inclination).toBeLessThan(12);
  });
});
