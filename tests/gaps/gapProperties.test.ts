import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GAP_ROW, partGapTo } from "../../src/gaps/partGap.ts";
import { type PartInput, partShapeOf } from "../../src/gaps/partShape.ts";
import { addScaled, length, mirrorY, normalize, scale, sub, type Vec3 } from "../../src/geometry/vec.ts";
import { between, gapCases, movedPart, offsets, wheels } from "../reference/gapCases.ts";
import { ball, kernelGap, shapeOf } from "../reference/kernelGap.ts";
import {
  aboutAxis,
  type RingCase,
  ringDistance,
  type WheelCase,
  wheelRow,
} from "../reference/referenceRing.ts";
import { ringCases } from "../reference/rings.ts";
import { runs } from "../runs.ts";

const RUN = { seed: 1955, numRuns: runs(80, 300), endOnFailure: true } as const;

/** What the kernel promises, mm: 1e-6 of a clear gap, a ten-thousandth more of a depth, 0.005 inside a solid box. */
const slack = (part: PartInput, ...gaps: number[]) =>
  2e-6 +
  1e-4 * Math.max(0, ...gaps.map((g) => -g)) +
  (part.kind === "box" && Math.min(...gaps) < 0 ? 5e-3 : 0);

function expectSame(part: PartInput, a: number, b: number) {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(slack(part, a, b));
}

describe(`gaps of generated parts (seed ${RUN.seed}, ${RUN.numRuns} runs each)`, () => {
  it("change by no more than the part is moved", () => {
    fc.assert(
      fc.property(gapCases(), offsets(1), between(0, 60), ({ ring, wheel, part }, way, far) => {
        const by = scale(way, far);
        const before = kernelGap(ring, wheel, part).gap;
        const after = kernelGap(ring, wheel, movedPart(part, by)).gap;
        expect(Math.abs(after - before)).toBeLessThanOrEqual(length(by) + slack(part, before, after));
      }),
      RUN,
    );
  });

  it("do not change when part and wheel move together", () => {
    fc.assert(
      fc.property(gapCases(), offsets(400), ({ ring, wheel, part }, by) => {
        const moved = { ...wheel, center: addScaled(wheel.center, by, 1) };
        expectSame(part, kernelGap(ring, moved, movedPart(part, by)).gap, kernelGap(ring, wheel, part).gap);
      }),
      RUN,
    );
  });

  it("keep their digits 10 m from the origin", () => {
    fc.assert(
      fc.property(gapCases(), ({ ring, wheel, part }) => {
        const by: Vec3 = [8192, -8192, 8192];
        const far = kernelGap(
          ring,
          { ...wheel, center: addScaled(wheel.center, by, 1) },
          movedPart(part, by),
        ).gap;
        expectSame(part, far, kernelGap(ring, wheel, part).gap);
      }),
      RUN,
    );
  });

  it("of a mirrored part to the mirrored wheel are the same, at the mirrored place", () => {
    fc.assert(
      fc.property(gapCases(), ({ ring, wheel, part }) => {
        // A mirrored part in the mirrored frame of its side is the part as typed: mirror the typed one by hand.
        const byHand = mirroredPart(part);
        const a = kernelGap(ring, wheel, part);
        const b = kernelGap(ring, wheel, byHand, true);
        expectSame(part, a.gap, b.gap);
        if (a.gap > 1) expect(distanceTo(ring, wheel, b.point)).toBeCloseTo(a.gap, 5);
      }),
      RUN,
    );
  });

  it("mirrored in space about the truck's middle are the same, the outboard direction turned with it", () => {
    fc.assert(
      fc.property(gapCases(), ({ ring, wheel, part }) => {
        const other = { center: mirrorY(wheel.center), axis: mirrorY(wheel.axis) };
        expectSame(part, kernelGap(ring, other, mirroredPart(part)).gap, kernelGap(ring, wheel, part).gap);
      }),
      RUN,
    );
  });

  it("to two parts in one are the smaller of the two", () => {
    fc.assert(
      fc.property(gapCases(["mesh"]), gapCases(["mesh"]), ({ ring, wheel, part }, { part: other }) => {
        if (part.kind !== "mesh" || other.kind !== "mesh") throw new TypeError("asked for meshes");
        const shift = part.positions.length / 3;
        const both: PartInput = {
          name: "both",
          kind: "mesh",
          positions: Float64Array.of(...part.positions, ...other.positions),
          triangles: Uint32Array.of(...part.triangles, ...other.triangles.map((vertex) => vertex + shift)),
        };
        const least = Math.min(kernelGap(ring, wheel, part).gap, kernelGap(ring, wheel, other).gap);
        expectSame(both, kernelGap(ring, wheel, both).gap, least);
      }),
      RUN,
    );
  });

  it("below a given one are found the same, and none is found where there is none", () => {
    fc.assert(
      fc.property(gapCases(), between(0.01, 50), ({ ring, wheel, part }, room) => {
        const { gap } = kernelGap(ring, wheel, part);
        const row = new Float64Array(GAP_ROW).fill(Number.NaN);
        const search = (beat: number) =>
          partGapTo(row, 0, shapeOf(ring), wheelRow(wheel), 0, partShapeOf(part, false), beat);
        const past = slack(part, gap, gap - room);
        expect(search(gap - past)).toBe(gap - past);
        expect(row.every(Number.isNaN)).toBe(true);
        expectSame(part, search(gap + past + room), gap);
        expect(row.some(Number.isNaN)).toBe(false);
      }),
      RUN,
    );
  });

  it("of a path do not change when points are added along its legs, or one is given twice", () => {
    fc.assert(
      fc.property(gapCases(["path"]), between(0, 1), ({ ring, wheel, part }, share) => {
        if (part.kind !== "path") throw new TypeError("asked for paths");
        const points = part.points.flatMap((from, i) => {
          const to = part.points[i + 1];
          return to === undefined ? [from] : [from, addScaled(from, sub(to, from), share)];
        });
        const before = kernelGap(ring, wheel, part).gap;
        expectSame(part, kernelGap(ring, wheel, { ...part, points }).gap, before);
        const twice = part.points.flatMap((p) => [p, p]);
        expectSame(part, kernelGap(ring, wheel, { ...part, points: twice }).gap, before);
      }),
      RUN,
    );
  });

  it("of a path with a radius are those of its center line less the radius", () => {
    fc.assert(
      fc.property(gapCases(["path"]), between(0, 60), ({ ring, wheel, part }, radius) => {
        if (part.kind !== "path") throw new TypeError("asked for paths");
        const thin = kernelGap(ring, wheel, { ...part, radius: 0 }).gap;
        const thick = kernelGap(ring, wheel, { ...part, radius }).gap;
        expect(Math.abs(thick - (thin - radius))).toBeLessThanOrEqual(slack(part, thin, thick));
      }),
      RUN,
    );
  });

  it("of a single point are its signed distance by winding number, outside and in, on the axis and at the center", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ringCases),
        wheels(),
        between(-300, 300),
        fc.oneof({ weight: 5, arbitrary: between(0, 500) }, { weight: 1, arbitrary: fc.constant(0) }),
        between(0, 2 * Math.PI),
        (ring, wheel, x, r, turn) => {
          for (const p of [aboutAxis(wheel, x, r, turn), wheel.center]) {
            expect(kernelGap(ring, wheel, ball(p)).gap).toBeCloseTo(distanceTo(ring, wheel, p), 9);
          }
        },
      ),
      { ...RUN, numRuns: runs(250, 1000) },
    );
  });
});

describe(`contact (seed ${RUN.seed})`, () => {
  /** Cases clear of the ring with the part moved so that it just touches, and the way it moved. */
  const touching = (kinds: readonly PartInput["kind"][]) =>
    gapCases(kinds)
      .map((c) => ({ ...c, found: kernelGap(c.ring, c.wheel, c.part) }))
      .filter(({ found }) => found.gap > 1 && found.gap < 150)
      .map(({ ring, wheel, part, found }) => {
        const way = normalize(sub(found.onRing, found.point));
        return { ring, wheel, way, touch: movedPart(part, scale(way, found.gap)) };
      });

  it("moved along the gap by the gap, a part touches: gap 0", () => {
    fc.assert(
      fc.property(touching(["path", "box", "mesh"]), ({ ring, wheel, touch }) => {
        expect(Math.abs(kernelGap(ring, wheel, touch).gap)).toBeLessThan(5e-6);
      }),
      RUN,
    );
  });

  it("the sign flips across the touch, and depth grows from 0 without a jump", () => {
    fc.assert(
      fc.property(touching(["path", "box", "mesh"]), ({ ring, wheel, way, touch }) => {
        let before = Number.NaN;
        for (const far of [-0.4, -0.1, -1e-3, 1e-3, 0.1, 0.4]) {
          const { gap } = kernelGap(ring, wheel, movedPart(touch, scale(way, far)));
          expect(Math.sign(gap)).toBe(-Math.sign(far));
          // Toward the ring by far: no nearer than far, and from the touch on at least a bit deeper each time.
          expect(Math.abs(gap)).toBeLessThanOrEqual(Math.abs(far) + 6e-3);
          if (!Number.isNaN(before)) expect(gap).toBeLessThan(before);
          before = gap;
        }
      }),
      RUN,
    );
  });
});

describe("tangent touch", () => {
  const wheel: WheelCase = { center: [0, 800, 355.5], axis: [0, 1, 0] };
  const [round] = ringCases as [RingCase];
  const R = 355.5;

  it("a line along the wheel's heading on top of the tread touches at one point", () => {
    const line = (z: number): PartInput => ({
      name: "line",
      kind: "path",
      radius: 0,
      points: [
        [-900, 800, z],
        [700, 800, z],
      ],
    });
    expect(kernelGap(round, wheel, line(2 * R)).gap).toBeCloseTo(0, 5);
    expect(kernelGap(round, wheel, line(2 * R + 0.01)).gap).toBeCloseTo(0.01, 5);
    expect(kernelGap(round, wheel, line(2 * R - 0.01)).gap).toBeCloseTo(-0.01, 5);
  });

  it("a flat panel on the tread touches along a whole line", () => {
    const box: PartInput = { name: "box", kind: "box", min: [-500, 500, 2 * R], max: [500, 1100, 2 * R + 3] };
    expect(kernelGap(round, wheel, box).gap).toBeCloseTo(0, 5);
  });

  it("a ball in the groove of a tread touches one wall of it", () => {
    const ring = ringCases[1]!;
    // The walls slope 17/7 and 19/6 in: the nearest one decides, as the referee sees it.
    const center = aboutAxis(wheel, -12, 346, 1);
    const clear = ringDistance(ring, wheel)(center);
    expect(clear).toBeGreaterThan(1);
    expect(kernelGap(ring, wheel, ball(center, clear)).gap).toBeCloseTo(0, 9);
  });
});

function distanceTo(ring: RingCase, wheel: WheelCase, p: Vec3): number {
  return ringDistance(ring, wheel)(p);
}

function mirroredPart(part: PartInput): PartInput {
  if (part.kind === "path") return { ...part, points: part.points.map(mirrorY) };
  if (part.kind === "mesh")
    return { ...part, positions: part.positions.map((value, i) => (i % 3 === 1 ? -value : value)) };
  return {
    ...part,
    min: [part.min[0], -part.max[1], part.min[2]],
    max: [part.max[0], -part.min[1], part.max[2]],
  };
}
