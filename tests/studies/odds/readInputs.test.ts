import { describe, expect, it } from "vitest";
import { withMine } from "../../../src/setup/exampleMarks.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import { type KeyPath, keyText, valueAt } from "../../../src/setup/types/keyPath.ts";
import { measureTruck } from "../../../src/studies/measure/measureTruck.ts";
import { DrawnTrucks } from "../../../src/studies/odds/drawnTrucks.ts";
import { readInputs } from "../../../src/studies/odds/readInputs.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";
import { worksheetAskOf } from "../../../src/studies/worksheet/worksheetAskOf.ts";
import { subjectOf } from "../window/windowSubject.ts";

const begun = ownTruckDocument({ units: "mm", steering: "rack", isFull: true });
const [lower, upper] = ["lowerArm.ballJoint", "upperArm.ballJoint"];

/** Each with its standard deviation, mm. */
const READINGS = [
  [{ height: lower }, 216, 1.5],
  [{ offset: lower }, 668, 2],
  [{ ahead: lower }, 9, 3],
  [{ height: upper }, 478, 1.5],
  [{ offset: upper }, 632, 2],
  [{ ahead: upper }, -12, 3],
  [{ between: [lower, upper] }, 266, 1],
  [{ height: "wheelCenter" }, 336, 1],
  [{ offset: "wheelCenter" }, 838, 2],
  [{ height: "tieRodOuter" }, 258, 2],
  [{ offset: "tieRodOuter" }, 645, 2],
  [{ ahead: "tieRodOuter" }, -142, 2],
  [{ size: "wheel.backspacing" }, 112, 1],
  [{ size: "wheel.lipToLip" }, 229, 1],
] as const;

const readings = READINGS.map(([ask, is, within]) => ({ ...ask, is, within: `${within} mm` }));

/** The truck with each reading so many standard deviations more, worked out anew. */
const workedOut = (document: object, z: readonly number[] = []) =>
  withReadings({
    ...document,
    readings: readings.map((one, i) => ({ ...one, is: one.is + (z[i] ?? 0) * READINGS[i]![2] })),
  });

const KNUCKLE = [
  ...["span", "pinAngle", "pinHeight", "hubFace"].map((key): KeyPath => ["knuckle", key]),
  ...[0, 1, 2].map((axis): KeyPath => ["knuckle", "steeringArm", axis]),
  ["wheel", "backspacing"],
  ["tire", "loadedRadius"],
] satisfies KeyPath[];

const SPREAD = [0.8, -1.3, 0.4, 1.9, -0.6, 1.1, -1.7, 0.2, 1.4, -0.9, 0.5, -0.3, 1.2, -1.1];

describe("a knuckle worked out of readings", () => {
  const document = workedOut(begun);
  const { inputs } = readInputs(document, new Set());
  const by = (path: KeyPath, i: number) =>
    inputs.find((one) => one.path[1] === i)?.moves.find((one) => keyText(one.path) === keyText(path))?.by ??
    0;

  it("follows the readings drawn as it does when all is solved again", () => {
    for (const turn of [0, 3, 5, 8, 11])
      for (const share of [1, 0.3]) {
        const z = READINGS.map((_, i) => share * SPREAD[(i + turn) % SPREAD.length]!);
        const again = workedOut(begun, z);
        for (const path of KNUCKLE) {
          const [now, then] = [document, again].map((one) => Number(valueAt(one, path))) as [number, number];
          const perUnit = path[1] === "pinAngle" ? 180 / Math.PI : 1;
          const told = perUnit * z.reduce((sum, one, i) => sum + one * by(path, i), 0);
          // Degrees and mm; what is left is of second order, and the hundredths that a file has.
          expect(Math.abs(told), keyText(path)).toBeGreaterThan(0.005);
          expect(Math.abs(then - now - told), keyText(path)).toBeLessThan(0.01 + 0.15 * share ** 2);
        }
      }
  });

  it("is as uncertain as the covariance of its joints says", () => {
    const { coordinates, covariance, points } = measureTruck(worksheetAskOf(document, []).ask!);
    const at = (name: string) => points.find(({ point, side }) => point === name && side === "left")!.at;
    const along = at(upper).map((v, axis) => v - at(lower)[axis]!);
    const span = Math.hypot(...along);
    const slope = coordinates.map((one) => {
      if (!("point" in one) || one.side !== "left") return 0;
      const sign = one.point === upper ? 1 : one.point === lower ? -1 : 0;
      return (sign * along[one.axis]!) / span;
    });
    const variance = slope.reduce(
      (sum, a, i) => sum + slope.reduce((row, b, k) => row + a * b * covariance[i]![k]!, 0),
      0,
    );
    const drawn = READINGS.reduce((sum, _, i) => sum + by(["knuckle", "span"], i) ** 2, 0);
    expect(drawn / variance).toBeCloseTo(1, 2);
    // The tape between the joints alone would leave a millimeter.
    expect(Math.sqrt(drawn)).toBeLessThan(1);
  });

  it("moves with what was typed of it by that number's own ±, and by no tolerance of the jig", () => {
    const path: KeyPath = ["knuckle", "pinAngle"];
    const typed = workedOut(withMine(setAt(begun, path, "8.4 ± 0.5"), [path]) as object);
    const drawn = new DrawnTrucks(subjectOf(typed as object).subject, 1);
    const sources = new Map(drawn.inputs.map(({ key, source }) => [key, source]));
    expect(sources.get("knuckle.pinAngle")).toBe("typed");
    for (const key of ["knuckle.span", "knuckle.pinHeight", "knuckle.hubFace", "knuckle.steeringArm[0]"])
      expect(sources.has(key), key).toBe(false);
    const one = Float64Array.from(drawn.inputs, ({ key }) => (key === "knuckle.pinAngle" ? 1 : 0));
    const made = drawn.at(one);
    if (!made.ok) throw new Error("does not go together");
    const { knuckle } = made.value.setup;
    const again = workedOut(withMine(setAt(begun, path, 8.9), [path]) as object);
    expect(knuckle.pinAngle).toBeCloseTo((8.9 / 180) * Math.PI, 6);
    for (const key of ["pinHeight", "hubFace"] as const)
      expect(Math.abs(knuckle[key] - Number(valueAt(again, ["knuckle", key]))), key).toBeLessThan(0.05);
    expect(Math.abs(knuckle.pinHeight - Number(valueAt(typed, ["knuckle", "pinHeight"])))).toBeGreaterThan(1);
  });

  it("that was given another number since keeps that", () => {
    const other = setAt(document, ["knuckle", "hubFace"], 150);
    const moved = new Set(
      readInputs(other, new Set()).inputs.flatMap(({ moves }) => moves.map(({ path }) => keyText(path))),
    );
    expect(moved.has("knuckle.hubFace")).toBe(false);
    expect(moved.has("knuckle.span")).toBe(true);
  });
});
