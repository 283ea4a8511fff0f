import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { describe, expect, it } from "vitest";
import type { PointName, Reading } from "../../../src/setup/types/readingTypes.ts";
import { measureTruck } from "../../../src/studies/measure/measureTruck.ts";
import { runs } from "../../runs.ts";
import { ALL_AROUND, askFor, noisy, normals, readOn, TRUE_POINTS } from "./measureCases.ts";

const POINTS = ["lowerArm.frontPivot", "lowerArm.rearPivot", "lowerArm.ballJoint", "upperArm.ballJoint"];

/** What a reading of a left point or across says, written out once more by hand; mm and radians. */
function reads(reading: Reading, p: readonly number[]): number {
  const at = (point: PointName) =>
    p.slice(3 * POINTS.indexOf(point), 3 * POINTS.indexOf(point) + 3) as [number, number, number];
  switch (reading.kind) {
    case "between": {
      const [a, b] = [at(reading.points[0]), at(reading.points[1])];
      const y = reading.side === "across" ? a[1] + b[1] : a[1] - b[1];
      return Math.sqrt((a[0] - b[0]) ** 2 + y ** 2 + (a[2] - b[2]) ** 2);
    }
    case "height":
      return at(reading.point)[2];
    case "offset":
      return at(reading.point)[1];
    case "ahead":
      return at(reading.point)[0];
    case "angle": {
      const [f, r, j] = [at(POINTS[0]!), at(POINTS[1]!), at(POINTS[2]!)];
      const along = [f[0] - r[0], f[1] - r[1], f[2] - r[2]] as const;
      const t =
        ((j[0] - r[0]) * along[0] + (j[1] - r[1]) * along[1] + (j[2] - r[2]) * along[2]) /
        (along[0] ** 2 + along[1] ** 2 + along[2] ** 2);
      return Math.atan((r[2] + t * along[2] - j[2]) / (j[1] - r[1] - t * along[1]));
    }
    default:
      throw new TypeError(reading.kind);
  }
}

const exact = readOn(ALL_AROUND, TRUE_POINTS);
const truth = POINTS.flatMap((point) => [...TRUE_POINTS.get(point)!]);
const found = (readings: readonly Reading[]) => measureTruck(askFor(readings));
const valuesOf = ({ points }: ReturnType<typeof found>) =>
  POINTS.flatMap((name) => [...points.find(({ point }) => point === name)!.at]);

describe("the least squares of readings", () => {
  it("have the points and the sum of squares that a general-purpose fitting library finds too", () => {
    const normal = normals(19);
    for (let i = 0; i < 3; i++) {
      const readings = noisy(exact, normal);
      const measured = found(readings);
      const other = levenbergMarquardt(
        {
          x: readings.map((_, k) => k),
          y: readings.map((one) => ("is" in one ? one.is / one.within : Number.NaN)),
        },
        (p) => (k) => reads(readings[k]!, p) / readings[k]!.within,
        {
          initialValues: truth,
          gradientDifference: 1e-4,
          maxIterations: 400,
          errorTolerance: 1e-12,
          damping: 1e-6,
        },
      );
      const sum = (p: readonly number[]) =>
        readings.reduce(
          (all, one) => all + (("is" in one ? one.is - reads(one, p) : Number.NaN) / one.within) ** 2,
          0,
        );
      const ours = valuesOf(measured);
      expect(sum(ours)).toBeLessThanOrEqual(sum(other.parameterValues) * (1 + 1e-9));
      expect(Math.max(...ours.map((value, k) => Math.abs(value - other.parameterValues[k]!)))).toBeLessThan(
        0.002,
      );
    }
  });

  it("tell the spread and the correlations that drawing the readings over and over gives", () => {
    const draws = runs(120, 1200);
    const normal = normals(3);
    const sample = Array.from({ length: draws }, () => valuesOf(found(noisy(exact, normal))));
    const { coordinates, covariance } = found(exact);
    const rows = POINTS.flatMap((name) =>
      ([0, 1, 2] as const).map((axis) =>
        coordinates.findIndex(
          (one) => "point" in one && one.point === name && one.side === "left" && one.axis === axis,
        ),
      ),
    );
    const mean = rows.map((_, k) => sample.reduce((sum, one) => sum + one[k]!, 0) / draws);
    let worst = 0;
    rows.forEach((row, a) => {
      rows.forEach((column, b) => {
        const drawn =
          sample.reduce((sum, one) => sum + (one[a]! - mean[a]!) * (one[b]! - mean[b]!), 0) / (draws - 1);
        const scale = Math.sqrt(covariance[row]![row]! * covariance[column]![column]!);
        worst = Math.max(worst, Math.abs(drawn - covariance[row]![column]!) / scale);
      });
    });
    // A sample covariance scatters by about root (2 / draws) of its scale; 144 of them, half of them alike, reach four times it.
    expect(worst).toBeLessThan(4 * Math.sqrt(2 / draws));
    console.info(`largest covariance off by ${worst.toFixed(3)} of its scale after ${draws} draws`);
  });

  it("give each point's own ellipse out of the covariance of all", () => {
    const { points, coordinates, covariance } = found(exact);
    for (const one of points) {
      const rows = coordinates.flatMap((c, k) =>
        "point" in c && c.point === one.point && c.side === one.side ? [k] : [],
      );
      expect(rows).toHaveLength(3);
      rows.forEach((row, a) => {
        rows.forEach((column, b) => {
          expect(one.covariance[a]![b]).toBe(covariance[row]![column]);
        });
        expect(one.within[a]).toBeCloseTo(Math.sqrt(covariance[row]![row]!), 12);
      });
    }
  });
});
