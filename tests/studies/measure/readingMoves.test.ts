import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Reading } from "../../../src/setup/types/readingTypes.ts";
import { measureAskOf } from "../../../src/studies/measure/measureAskOf.ts";
import { measureTruck } from "../../../src/studies/measure/measureTruck.ts";
import { readingMoves } from "../../../src/studies/measure/readingMoves.ts";

const document = JSON.parse(
  readFileSync(new URL("../../../shared/tape-measured.json", import.meta.url), "utf8"),
);
const ask = measureAskOf(document, "truck.json").ask!;
const { moves } = readingMoves(ask);

/** What one number of the list does to a coordinate. mm. */
const byOf = (i: number, point: string, axis: number) => {
  const at = (deviations: number) =>
    moves[i]!.truckAt(deviations).points.find((one) => one.point === point && one.side === "left")!.at[axis]!;
  return at(1) - at(0);
};

describe("what each reading does to the points", () => {
  const measured = measureTruck(ask);
  const told = measured.points
    .filter(({ side, point }) => side === "left" && point.startsWith("lowerArm"))
    .flatMap((one) => ([0, 1, 2] as const).map((axis) => ({ ...one, axis })))
    .filter(({ standing, axis }) => standing[axis] === "measured");

  it("adds up to the uncertainty of each coordinate, and to how two of a point hang together", () => {
    expect(told.length).toBeGreaterThan(5);
    for (const { point, axis, covariance } of told)
      for (const other of [0, 1, 2] as const) {
        const sum = moves.reduce((all, _, i) => all + byOf(i, point, axis) * byOf(i, point, other), 0);
        const size = Math.sqrt(covariance[axis][axis] * covariance[other][other]);
        expect(Math.abs(sum - covariance[axis][other])).toBeLessThan(0.03 * size + 1e-6);
      }
  });

  it("is what solving again gives when one reading is a standard deviation more", () => {
    for (const [i, { reading }] of ask.readings.map((one, at) => [at, { reading: one }] as const)) {
      const move = moves.findIndex((one) => one.reading === reading);
      if (!("is" in reading) || i % 5 !== 0) continue;
      const more = { ...reading, is: reading.is + reading.within } as Reading;
      const again = measureTruck({
        ...ask,
        readings: ask.readings.map((one) => (one === reading ? more : one)),
      });
      for (const { point, axis, at } of told) {
        const now = again.points.find((one) => one.point === point && one.side === "left")!.at[axis];
        expect(Math.abs(now - at[axis] - byOf(move, point, axis))).toBeLessThan(0.05);
      }
    }
  });
});
