import { describe, expect, it } from "vitest";
import { type ClearanceMap, type MapSide, mapOf } from "../../src/studies/map/clearanceMap.ts";
import { type Contour, contoursOf } from "../../src/studies/map/contours.ts";
import { demoModel } from "./demoModel.ts";

/** A map whose left gap is a function of travel (mm) and steer. */
function drawn(rows: number, cols: number, gap: (travel: number, steer: number) => number): ClearanceMap {
  const travels = Float64Array.from({ length: rows }, (_, i) => -1 + (2 * i) / (rows - 1));
  const steers = Float64Array.from({ length: cols }, (_, i) => -1 + (2 * i) / (cols - 1));
  const values = Float64Array.from({ length: rows * cols }, (_, i) =>
    gap(travels[Math.floor(i / cols)]!, steers[i % cols]!),
  );
  const side: MapSide = {
    gap: values,
    moving: values,
    together: Number.POSITIVE_INFINITY,
    pair: new Int16Array(rows * cols),
    point: new Float64Array(3 * rows * cols),
  };
  const reach = {
    status: new Uint8Array(rows * cols),
    side: new Uint8Array(rows * cols),
    along: new Uint8Array(rows * cols),
    startsAt: new Float64Array(rows * cols),
  };
  return { travels, steers, left: side, right: side, reach, pastLimit: null };
}

function pointsOf(contour: Contour): [number, number][] {
  return Array.from({ length: contour.length / 2 }, (_, i) => [contour[2 * i]!, contour[2 * i + 1]!]);
}

/** How often the level is passed along the edges of squares whose corners are all finite. */
function crossings({ travels, steers, left }: ClearanceMap, level: number): number {
  const cols = steers.length;
  const value = (row: number, col: number) => left.moving[row * cols + col] ?? Number.NaN;
  const whole = (row: number, col: number) =>
    row >= 0 &&
    col >= 0 &&
    row + 1 < travels.length &&
    col + 1 < cols &&
    [value(row, col), value(row + 1, col), value(row, col + 1), value(row + 1, col + 1)].every(
      Number.isFinite,
    );
  let count = 0;
  for (let row = 0; row < travels.length; row++) {
    for (let col = 0; col < cols; col++) {
      const below = value(row, col) < level;
      if (col + 1 < cols && below !== value(row, col + 1) < level)
        if (whole(row, col) || whole(row - 1, col)) count++;
      if (row + 1 < travels.length && below !== value(row + 1, col) < level)
        if (whole(row, col) || whole(row, col - 1)) count++;
    }
  }
  return count;
}

describe("contours", () => {
  it("of a cone are one closed line at its radius", () => {
    const map = drawn(41, 51, (x, y) => Math.sqrt(x * x + y * y));
    const lines = contoursOf(map, map.left, 0.6);
    expect(lines).toHaveLength(1);
    const points = pointsOf(lines[0]!);
    expect(points[0]).toEqual(points.at(-1));
    for (const [x, y] of points) expect(Math.abs(Math.hypot(x, y) - 0.6)).toBeLessThan(2e-3);
  });

  it("of a plane are one straight open line from edge to edge, in order", () => {
    const map = drawn(9, 9, (x, y) => x + 0.5 * y);
    const lines = contoursOf(map, map.left, 0.1);
    expect(lines).toHaveLength(1);
    const points = pointsOf(lines[0]!);
    for (const [x, y] of points) expect(x + 0.5 * y).toBeCloseTo(0.1, 12);
    const steers = points.map(([, y]) => y);
    expect([Math.min(...steers), Math.max(...steers)]).toEqual([-1, 1]);
    expect([...steers].sort((a, b) => Math.sign(steers.at(-1)! - steers[0]!) * (a - b))).toEqual(steers);
  });

  it("of a saddle join the corners that the middle is like", () => {
    const map = drawn(2, 2, (x, y) => x * y);
    for (const level of [-0.5, 0.5]) {
      const lines = contoursOf(map, map.left, level);
      expect(lines).toHaveLength(2);
      // Each line cuts off one corner: the corners of the other sign than the middle has.
      for (const line of lines) {
        const [[x0, y0], [x1, y1]] = pointsOf(line) as [[number, number], [number, number]];
        expect(Math.sign(x0 + x1) * Math.sign(y0 + y1)).toBe(Math.sign(level));
      }
    }
  });

  it("leave out squares with a corner out of reach, and open the lines there", () => {
    const map = drawn(21, 21, (x, y) => (x > 0.35 ? Number.NaN : Math.sqrt(x * x + y * y)));
    const lines = contoursOf(map, map.left, 0.6);
    expect(lines).toHaveLength(1);
    const points = pointsOf(lines[0]!);
    expect(points[0]).not.toEqual(points.at(-1));
    for (const [x] of points) expect(x).toBeLessThanOrEqual(0.3 + 1e-12);
  });

  it("pass every edge of the demo truck's map that the level passes, once, at the level", () => {
    const model = demoModel({ hardware: {} });
    const map = mapOf(model, { rows: 31, cols: 31 });
    if (map === null) throw new TypeError("stopped");
    for (const level of [0, model.setup.allowance, 30]) {
      const lines = contoursOf(map, map.left, level);
      const places = new Set(lines.flatMap((line) => pointsOf(line).map(String)));
      expect(places.size).toBe(crossings(map, level));
      expect(places.size).toBeGreaterThan(0);
    }
  });

  it("of a level no cell reaches are none", () => {
    const map = drawn(5, 5, () => 3);
    expect(contoursOf(map, map.left, 1)).toEqual([]);
    expect(contoursOf(map, map.left, 10)).toEqual([]);
  });
});
