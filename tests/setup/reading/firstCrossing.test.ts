import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstCrossing } from "../../../src/setup/reading/firstCrossing.ts";

type P = readonly [number, number];

describe("firstCrossing", () => {
  it.each<[string, P[], readonly [number, number] | null]>([
    [
      "a triangle",
      [
        [0, 0],
        [4, 0],
        [0, 3],
      ],
      null,
    ],
    [
      "a square with a corner on one side",
      [
        [0, 0],
        [2, 0],
        [4, 0],
        [4, 4],
        [0, 4],
      ],
      null,
    ],
    [
      "a bow tie",
      [
        [0, 0],
        [4, 4],
        [4, 0],
        [0, 4],
      ],
      [0, 2],
    ],
    [
      "a corner that touches another edge",
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ],
      [0, 2],
    ],
    [
      "a corner met twice",
      [
        [0, 0],
        [2, 2],
        [4, 0],
        [4, 4],
        [2, 2],
        [0, 4],
      ],
      [0, 3],
    ],
    [
      "an edge that folds back",
      [
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 4],
      ],
      [0, 1],
    ],
    [
      "a closing edge that folds back",
      [
        [2, 0],
        [4, 4],
        [0, 4],
        [0, 0],
        [3, 0],
      ],
      [0, 4],
    ],
  ])("tells %s", (_, outline, crossing) => {
    const found = firstCrossing(outline);
    if (crossing === null) expect(found).toBeNull();
    else expect(found).not.toBeNull();
    if (crossing && found) expect(found[0]).toBe(crossing[0]);
  });

  it("finds nothing in outlines that run once round a point, and something when two far corners change places", () => {
    const radii = fc.array(fc.integer({ min: 10, max: 30 }), { minLength: 6, maxLength: 24 });
    fc.assert(
      fc.property(radii, fc.nat(), (rs, pick) => {
        const star = rs.map((r, i): P => {
          const angle = (2 * Math.PI * i) / rs.length;
          return [r * Math.cos(angle), r * Math.sin(angle)];
        });
        expect(firstCrossing(star)).toBeNull();
        const round = star.map((_, i): P => {
          const angle = (2 * Math.PI * i) / star.length;
          return [20 * Math.cos(angle), 20 * Math.sin(angle)];
        });
        const at = pick % round.length;
        const far = (at + 2 + (pick % (round.length - 3))) % round.length;
        [round[at], round[far]] = [round[far]!, round[at]!];
        expect(firstCrossing(round)).not.toBeNull();
      }),
      { seed: 1955, numRuns: 400 },
    );
  });
});
