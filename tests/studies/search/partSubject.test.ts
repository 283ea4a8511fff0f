import fc from "fast-check";
import { expect, it } from "vitest";
import { partShapeOf } from "../../../src/gaps/partShape.ts";
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
import { BorderPose } from "../../../src/studies/search/borderPose.ts";
import { Cut, Nodes } from "../../../src/studies/search/nodes.ts";
import { PartSubject } from "../../../src/studies/search/partSubject.ts";
import { POSE } from "../../../src/suspension/poseRow.ts";
import { between, offsets } from "../../reference/gapCases.ts";
import { ball, shapeOf } from "../../reference/kernelGap.ts";
import { ringCases } from "../../reference/rings.ts";

/** Rodrigues: a vector turned about a unit axis. */
const turned = (v: Vec3, axis: Vec3, angle: number): Vec3 =>
  addScaled(
    addScaled(scale(v, Math.cos(angle)), cross(axis, v), Math.sin(angle)),
    axis,
    dot(axis, v) * (1 - Math.cos(angle)),
  );

it("at the border of reach no turn and slide of the wheel brings a thick part nearer than its bound", () => {
  const ring = shapeOf(ringCases[0]!);
  let near = 0;
  fc.assert(
    fc.property(
      offsets(300),
      offsets(1).filter((v) => length(v) > 0.1),
      between(1, 120),
      between(0.01, 0.3),
      between(0, 30),
      (center, way, off, turn, slide) => {
        const axis: Vec3 = [0, 1, 0];
        const out = normalize(way);
        const radius = 900;
        const middle = addScaled(center, out, ring.ballRadius + radius + off);
        const subject = new PartSubject(ring, partShapeOf(ball(middle, radius), false));
        const border = new BorderPose();
        border.slide = slide;
        border.turn = turn;
        border.pose.set([...center, ...axis], POSE.wheelCenter);
        const said = { value: 0, bound: 0, cut: Cut.Part };
        const nodes = new Nodes();
        const node = nodes.claim();
        subject.begin(nodes, node);
        subject.boundAtBorder(said, border, nodes, node, 1e4);
        // The turn about the lower ball joint, at the origin, that brings the wheel straight toward the part, and others.
        const lever = cross(center, out);
        const about = length(lever) > 1 ? normalize(lever) : ([1, 0, 0] as Vec3);
        for (const angle of [-turn, -0.5 * turn, 0.5 * turn, turn]) {
          const pose = border.pose.slice();
          const moved = addScaled(turned(center, about, angle), out, slide);
          pose.set([...moved, ...turned(axis, about, angle)], POSE.wheelCenter);
          const gap = subject.gap(pose, 0, 1e9, 0);
          expect(gap).toBeGreaterThan(said.bound);
          if (gap < said.bound + length(sub(moved, center))) near++;
        }
      },
    ),
    { seed: 1955, numRuns: 200 },
  );
  expect(near).toBeGreaterThan(0);
});
