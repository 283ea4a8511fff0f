import { describe, expect, it } from "vitest";
import { hatchLines } from "../../src/geometry/hatchLines.ts";

describe("hatching", () => {
  const square = (a: number, b: number) => Float64Array.of(a, a, b, a, b, b, a, b);
  const inked = (lines: readonly number[]) => {
    let sum = 0;
    for (let i = 0; i < lines.length; i += 4) {
      sum += Math.hypot(lines[i + 2]! - lines[i]!, lines[i + 3]! - lines[i + 1]!);
    }
    return sum;
  };

  it("covers what is enclosed and leaves holes out", () => {
    const spacing = 0.05;
    for (const angle of [0, 0.4, Math.PI / 4, -Math.PI / 4, 2]) {
      // Lines so close that they add up to the area.
      expect(spacing * inked(hatchLines([square(0, 10)], spacing, angle))).toBeCloseTo(100, 0);
      expect(spacing * inked(hatchLines([square(0, 10), square(2, 8)], spacing, angle))).toBeCloseTo(64, 0);
    }
  });

  it("has no line in a hole", () => {
    const lines = hatchLines([square(0, 100), square(30, 70)], 0.5, Math.PI / 4);
    for (let i = 0; i < lines.length; i += 4) {
      const [x, y] = [(lines[i]! + lines[i + 2]!) / 2, (lines[i + 1]! + lines[i + 3]!) / 2];
      expect(x > 30 && x < 70 && y > 30 && y < 70).toBe(false);
    }
    expect(lines.length).toBeGreaterThan(400);
  });
});
