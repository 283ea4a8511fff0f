import fc from "fast-check";
import { expect, it } from "vitest";
import {
  addScaled,
  cross,
  dot,
  length,
  normalize,
  scale,
  sub,
  type Vec3,
} from "../../../src/geometry/vec.ts";
import { flatMesh } from "../../reference/flatMesh.ts";
import { between } from "../../reference/gapCases.ts";
import { kernelGap } from "../../reference/kernelGap.ts";
import { ringCases } from "../../reference/rings.ts";

const RING = ringCases[0]!;

it("a ring over the middle of a leaned triangle is nearest under its lowest corner, square to the sheet", () => {
  fc.assert(
    fc.property(
      between(-0.9, 0.9),
      between(-0.9, 0.9),
      between(1, 80),
      between(-40, 40),
      (lean, side, off, slip) => {
        const axis: Vec3 = normalize([0.1, 1, 0.05]);
        const center: Vec3 = [120, -80, 640];
        const normal = normalize([lean, side, 1]);
        // The outline's point that is farthest down along the normal, turned to lie under the axis.
        const along = dot(normal, axis);
        const down = normalize(sub(scale(axis, along), normal));
        const across = Math.sqrt(1 - along * along);
        const [x, r] = RING.profile.reduce((low, one) =>
          along * one[0] - across * one[1] < along * low[0] - across * low[1] ? one : low,
        );
        const lowest = addScaled(addScaled(center, axis, x), down, r);
        const foot = addScaled(lowest, normal, -off);
        const u = normalize(cross(normal, [1, 0, 0]));
        const v = cross(normal, u);
        const middle = addScaled(foot, u, slip);
        const corners = [0, 2, 4].map((third) =>
          addScaled(addScaled(middle, u, 2000 * Math.cos(third)), v, 2000 * Math.sin(third)),
        );
        const part = { name: "sheet", kind: "mesh", ...flatMesh(corners, [[0, 1, 2]]) } as const;
        const found = kernelGap(RING, { center, axis }, part);
        expect(Math.abs(found.gap - off)).toBeLessThan(1e-8);
        expect(length(sub(found.point, foot))).toBeLessThan(1e-6);
        expect(length(sub(found.onRing, lowest))).toBeLessThan(1e-6);
      },
    ),
    { seed: 1955, numRuns: 60 },
  );
});
