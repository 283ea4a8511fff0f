import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { envelopeOf } from "../../../src/studies/envelope/envelopeOf.ts";
import { type EnvelopeRange, stanceRange } from "../../../src/studies/envelope/envelopeRange.ts";
import { meshVolume } from "../../../src/studies/section/outline.ts";
import { solidModeler } from "../../reference/mesh/solids.ts";
import { setupCases } from "../../reference/setupCases.ts";
import { runs } from "../../runs.ts";
import { openEdges, welded } from "./closedEdges.ts";
import { deepestInRings, mostOutsideSurface, posedWheels } from "./posedRings.ts";

/** mm. Times √2, for square corners, it stays under the half millimeter promised. */
const DEEPEST = 0.35;
const INSIDE = 0.5;

const SEED = 77;
/** The second has a tire off the tape: a groove, a dish and a rib. */
const trucks = fc.sample(setupCases("rack"), { seed: SEED, numRuns: 9 });
const chosen = [1, 7].map((i) => trucks[i]!);

const ranges: readonly (readonly [string, number, EnvelopeRange, number, number])[] = [
  ["lock to lock", 0, stanceRange(0), 1, 61],
  ["lock to lock, a measured tire", 1, stanceRange(-10), 1, 61],
  [
    "some travel by all steer, a measured tire",
    1,
    { travelLow: -22, travelHigh: 0, steerLow: -1, steerHigh: 1 },
    5,
    25,
  ],
];

describe.each(ranges.slice(runs(1, 0), runs(2, 3)))(
  `random trucks of seed ${SEED}: %s`,
  (_, truck, range, rows, columns) => {
    const model = chosen[truck]!;
    const made = envelopeOf(model, "left", range);
    if (!made.ok) throw new RangeError(made.reason);
    const { mesh } = made.envelope;
    const wheels = posedWheels(model, range, rows, columns);

    test("no triangle lies in a posed ring, by its corners, its edges' middles and its own", () => {
      expect(deepestInRings(model, wheels, mesh, 5)).toBeLessThanOrEqual(DEEPEST);
    });

    test("no posed ring stands out of the surface by more than half a millimeter", () => {
      const some = wheels.filter((_, i) => i % 6 === 0);
      expect(mostOutsideSurface(model, some, mesh, 90)).toBeLessThanOrEqual(INSIDE);
    });

    test("is closed, every edge on two triangles, once equal places are joined in single precision", () => {
      expect(openEdges(welded(mesh))).toBe(0);
    });

    test("the solid modeler takes what a reader of STL would make of it", async () => {
      const top = await solidModeler();
      const joined = welded(mesh);
      const solid = new top.Manifold(
        new top.Mesh({
          numProp: 3,
          vertProperties: Float32Array.from(joined.positions),
          triVerts: joined.triangles,
        }),
      );
      expect(solid.status()).toBe("NoError");
      expect(solid.volume() / meshVolume(mesh)).toBeCloseTo(1, 6);
      solid.delete();
    });
  },
);
