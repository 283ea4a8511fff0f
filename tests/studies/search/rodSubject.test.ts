import { expect, it } from "vitest";
import { Cut, NODE, NODE_ROW, Nodes } from "../../../src/studies/search/nodes.ts";
import { PoseCells } from "../../../src/studies/search/poseCells.ts";
import { RodSubject } from "../../../src/studies/search/rodSubject.ts";
import { POSE_ROW, poseRowTo } from "../../../src/suspension/poseRow.ts";
import { PoseStatus } from "../../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../../src/suspension/steering.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { hardwareSetup } from "../../reference/hardwareSetup.ts";

const SAMPLES = [-1, -0.5, 0, 0.5, 1];

it("over a cell of poses no rod comes nearer than it is told to, whichever cell it is", () => {
  const { frontEnd, pairs } = assembledModel({ ...demoSetup(), hardware: hardwareSetup() });
  const { steering, left } = frontEnd;
  const rods = pairs.filter((pair) => pair.kind === "rod").filter(({ side }) => side === "left");
  expect(rods.some(({ pivots }) => pivots === null)).toBe(true);
  const ends = new Float64Array(INNER_ENDS_ROW);
  const pose = new Float64Array(POSE_ROW);
  for (const pair of rods)
    for (const [arm, armHalf, steer, steerHalf] of [
      [0, 0.02, 0, 0.1],
      [0.1, 0.01, -0.6, 0.05],
      [-0.1, 0.002, 0.7, 0.01],
    ] as const) {
      const subject = new RodSubject(pair);
      const poses = new PoseCells({ side: left, other: null, innerAt: 0, steering });
      // The first cell of all, and one that stands behind others.
      const cells = [0, 1].map(() => poses.add(arm, armHalf, steer, steerHalf));
      const bounds = cells.map((cell) =>
        Array.from({ length: pair.pivots === null ? 1 : pair.pivots.length / 3 }, (_, rod) => {
          const nodes = new Nodes();
          const node = nodes.claim();
          subject.begin(nodes, node);
          nodes.rows[node * NODE_ROW + NODE.rod] = rod;
          const said = { value: 0, bound: 0, cut: Cut.Part };
          expect(subject.bound(said, poses, cell, nodes, node)).toBe(true);
          return said.bound;
        }),
      );
      expect(bounds[0]).toEqual(bounds[1]);
      let least = Number.POSITIVE_INFINITY;
      for (const a of SAMPLES)
        for (const s of SAMPLES) {
          expect(steering.innerEndsTo(ends, steer + s * steerHalf)).toBe(PoseStatus.Ok);
          const angle = arm + a * armHalf;
          const [x, y, z] = ends as unknown as [number, number, number];
          expect(poseRowTo(pose, 0, left.row, Math.cos(angle), Math.sin(angle), x, y, z)).toBe(PoseStatus.Ok);
          least = Math.min(least, subject.gap(pose, 0, 1e9, 0));
        }
      const bound = Math.min(...bounds[0]!);
      expect(bound, pair.name).toBeLessThanOrEqual(least + 1e-6);
      expect(bound, pair.name).toBeGreaterThan(Number.NEGATIVE_INFINITY);
    }
});
