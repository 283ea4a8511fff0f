import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { probeRing, ringProbe } from "../../../src/gaps/ring/ringProbe.ts";
import { ringShapeOf } from "../../../src/gaps/ring/ringShape.ts";
import { between } from "../../reference/gapCases.ts";

type Spot = readonly [x: number, r: number];

/** By hand: the nearest place of a straight line between two corners. */
function nearestOn([ax, ar]: Spot, [bx, br]: Spot, [x, r]: Spot): Spot {
  const [dx, dr] = [bx - ax, br - ar];
  const share = Math.max(0, Math.min(1, ((x - ax) * dx + (r - ar) * dr) / (dx * dx + dr * dr)));
  return [ax + share * dx, ar + share * dr];
}

describe("a look at the ring from outside", () => {
  it("is exact off a corner of less than a right angle, where one of its two edges faces away", () => {
    const corners: readonly Spot[] = [
      [0, 180],
      [60, 340],
      [120, 180],
    ];
    const shape = ringShapeOf(corners.flat(), 180);
    const probe = ringProbe();
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 }), between(0, 2 * Math.PI), between(5, 80), (at, way, far) => {
        const [cx, cr] = corners[at]!;
        const spot: Spot = [cx + far * Math.cos(way), cr + far * Math.sin(way)];
        probeRing(probe, shape, ...spot);
        if (probe.distance <= 0) return;
        const places = corners.map((corner, i) => nearestOn(corner, corners[(i + 1) % 3]!, spot));
        const off = (place: Spot) => Math.hypot(spot[0] - place[0], spot[1] - place[1]);
        const nearest = places.reduce((a, b) => (off(b) < off(a) ? b : a));
        expect(probe.distance).toBeCloseTo(off(nearest), 9);
        expect(probe.gradientX).toBeCloseTo((spot[0] - nearest[0]) / probe.distance, 9);
        expect(probe.gradientR).toBeCloseTo((spot[1] - nearest[1]) / probe.distance, 9);
      }),
      { seed: 1965, numRuns: 200 },
    );
  });
});
