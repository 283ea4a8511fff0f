import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import type { PointName } from "../../../src/setup/types/readingTypes.ts";
import type { Ask } from "../../../src/studies/measure/ask.ts";
import type { Measured } from "../../../src/studies/measure/measured.ts";
import { measureTruck } from "../../../src/studies/measure/measureTruck.ts";
import { runs } from "../../runs.ts";
import {
  ALL_AROUND,
  askFor,
  noisy,
  normals,
  readOn,
  SPREAD,
  TRUE_POINTS,
  TWENTY_FIVE,
  uniforms,
} from "./measureCases.ts";

function farthestOff(measured: Measured, points: ReadonlyMap<PointName, Vec3>): number {
  const off = measured.points.map(({ point, at, standing }) =>
    standing.every((one) => one === "measured")
      ? Math.hypot(...at.map((value, i) => value - points.get(point)![i]!))
      : Number.POSITIVE_INFINITY,
  );
  return Math.max(...off.filter((_, i) => !measured.points[i]!.point.startsWith("steering")));
}

describe("the points found from readings", () => {
  it("are those that were read, to 1e-6 mm, from the assumed layout", () => {
    const measured = measureTruck(askFor(readOn(TWENTY_FIVE, TRUE_POINTS)));
    expect(farthestOff(measured, TRUE_POINTS)).toBeLessThan(1e-6);
    expect(measured.suspect).toBeNull();
  });

  it("are those from poor starts and of other trucks too", () => {
    const uniform = uniforms(12);
    const about = (by: number) =>
      new Map(
        [...TRUE_POINTS].map(([name, at]) => [
          name,
          at.map((v) => v + by * (2 * uniform() - 1)) as unknown as Vec3,
        ]),
      );
    let worst = 0;
    for (let i = 0; i < 40; i++) {
      const truck = about(60);
      const measured = measureTruck(askFor(readOn(TWENTY_FIVE, truck), { start: about(120) }));
      worst = Math.max(worst, farthestOff(measured, truck));
    }
    expect(worst).toBeLessThan(1e-6);
  });

  it("one gross error among 25 readings is named in at least 95 of 100 trials, of four points and of both arms' six", () => {
    const trials = runs(12, 100);
    const [four, six] = [ALL_AROUND, SPREAD].map((asks) => timesNamed(asks, trials));
    // Read each point the same way and some errors look like others, whatever the method.
    const alike = timesNamed(TWENTY_FIVE, trials / 2);
    console.info(
      `named in ${four} and ${six} of ${trials}; of six points read alike in ${alike} of ${trials / 2}`,
    );
    expect(four).toBeGreaterThanOrEqual(0.95 * trials);
    expect(six).toBeGreaterThanOrEqual(0.95 * trials);
  });
});

function timesNamed(asks: readonly Ask[], trials: number): number {
  const [uniform, normal] = [uniforms(5), normals(6)];
  let named = 0;
  for (let i = 0; i < trials; i++) {
    const wrong = Math.floor(uniform() * asks.length);
    const by = (uniform() < 0.5 ? -1 : 1) * (1 + uniform());
    const readings = noisy(readOn(asks, TRUE_POINTS), normal).map((one, k) => {
      if (k !== wrong || !("is" in one)) return one;
      return { ...one, is: one.is + by * (one.kind === "angle" ? 0.15 : 25.4) };
    });
    if (measureTruck(askFor(readings)).suspect?.reading.index === wrong) named++;
  }
  return named;
}
