import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeLabels } from "../../../../src/app/stage/overlay/gapMark.ts";

const HEIGHT = 20;

describe("labels on the picture", () => {
  it("stand up and outward of their marks", () => {
    const [left, right] = placeLabels(
      [
        { x: 200, y: 200 },
        { x: 800, y: 200 },
      ],
      [90, 90],
      1000,
      400,
    );
    expect(left!.x).toBeLessThan(200);
    expect(right!.x).toBeGreaterThan(800);
    expect(left!.y).toBeLessThan(200);
  });

  it("stay inside a phone's picture and do not cover each other, wherever up to six marks are", () => {
    const mark = fc.record({ x: fc.integer({ min: 0, max: 364 }), y: fc.integer({ min: 0, max: 260 }) });
    fc.assert(
      fc.property(fc.array(mark, { minLength: 1, maxLength: 6 }), (marks) => {
        const widths = marks.map(() => 100);
        const labels = placeLabels(marks, widths, 364, 260);
        expect(labels).toHaveLength(marks.length);
        for (const [i, a] of labels.entries()) {
          expect(a.x - 50).toBeGreaterThanOrEqual(0);
          expect(a.x + 50).toBeLessThanOrEqual(364);
          expect(a.y - 0.5 * HEIGHT).toBeGreaterThanOrEqual(0);
          expect(a.y + 0.5 * HEIGHT).toBeLessThanOrEqual(260);
          for (const b of labels.slice(i + 1)) {
            expect(Math.abs(a.x - b.x) >= 100 || Math.abs(a.y - b.y) >= HEIGHT).toBe(true);
          }
        }
      }),
      { seed: 1955, numRuns: 500 },
    );
  });
});
