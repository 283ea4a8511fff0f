import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GAP, GAP_ROW } from "../../../src/gaps/cells/cellSearch.ts";
import { meshGapTo, meshHint, triangleByCells } from "../../../src/gaps/mesh/meshGap.ts";
import { TRIANGLE_ROW, type TriangleTree, triangleTree } from "../../../src/gaps/mesh/triangleTree.ts";
import { length, sub, vecAt } from "../../../src/geometry/vec.ts";
import { shapeOf } from "../../reference/kernelGap.ts";
import { partGeometry, surfaceDistance } from "../../reference/mesh/surfaceDistance.ts";
import { ringGeometry, tessellationError } from "../../reference/mesh/tessellatedRing.ts";
import { distanceToPart } from "../../reference/onPart.ts";
import { ringDistance, wheelRow } from "../../reference/referenceRing.ts";
import { runs } from "../../runs.ts";
import { noise, type SheetCase, sheetCases } from "./sheets.ts";

const SEED = 1955;
/** Cells along a sheet's side: some 400 triangles. */
const SIDE = 15;

/** mm, and share of the depth: twice what a gap at one pose is searched to. */
const TOLERANCE = 2e-6;
const DEPTH_SHARE = 2e-4;
const near = (gap: number) => TOLERANCE + DEPTH_SHARE * Math.max(0, -gap);

const treeOf = ({ mesh }: SheetCase) => triangleTree(mesh.positions, mesh.triangles);

function gapOf({ ring, wheel }: SheetCase, tree: TriangleTree, beat = Number.POSITIVE_INFINITY) {
  const row = new Float64Array(GAP_ROW);
  const gap = meshGapTo(row, 0, shapeOf(ring), wheelRow(wheel), 0, { tree }, beat);
  return { gap, row };
}

/** Every triangle by itself, none passed over: the slow obvious way. */
function unpruned({ ring, wheel }: SheetCase, { corners, count }: TriangleTree): number {
  const row = new Float64Array(GAP_ROW);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const at = i * TRIANGLE_ROW;
    const own = triangleByCells(
      row,
      0,
      shapeOf(ring),
      wheelRow(wheel),
      0,
      corners,
      at,
      Number.POSITIVE_INFINITY,
    );
    least = Math.min(least, own);
  }
  return least;
}

const onCases = (claim: (c: SheetCase) => void, numRuns: number) =>
  fc.assert(fc.property(sheetCases(SIDE), claim), { seed: SEED, numRuns, endOnFailure: true });

describe(`the gap of a mesh by its tree, on generated sheets (seed ${SEED})`, () => {
  it("is the least over all triangles, each bisected alone; clear, deep and in the hole of the barrel", () => {
    const cases = runs(60, 120);
    const seen = { clear: 0, deep: 0, hole: 0 };
    onCases((c) => {
      const tree = treeOf(c);
      const { gap, row } = gapOf(c, tree);
      expect(Math.abs(gap - unpruned(c, tree))).toBeLessThan(near(gap));
      if (gap < 0) seen.deep++;
      else if (length(sub(vecAt(row, GAP.onRing), c.wheel.center)) < c.ring.barrelRadius + 20) seen.hole++;
      else seen.clear++;
    }, cases);
    expect(Math.min(seen.clear, seen.deep)).toBeGreaterThan(cases / 6);
    expect(seen.hole).toBeGreaterThan(cases / 60);
  });

  it("is where the points say: on the mesh, on the ring, the gap apart", () => {
    onCases((c) => {
      const { gap, row } = gapOf(c, treeOf(c));
      const [point, onRing] = [vecAt(row, GAP.point), vecAt(row, GAP.onRing)];
      const distance = ringDistance(c.ring, c.wheel);
      expect(row[GAP.gap]).toBe(gap);
      expect(distanceToPart(c.mesh, point)).toBeLessThan(1e-7);
      expect(Math.abs(distance(onRing))).toBeLessThan(1e-6);
      expect(distance(point)).toBeCloseTo(gap, 6);
    }, 120);
  });

  it("no corner and no point drawn at random on the mesh is nearer (sampling can only miss)", () => {
    onCases((c) => {
      const tree = treeOf(c);
      const { gap } = gapOf(c, tree);
      const distance = ringDistance(c.ring, c.wheel);
      const random = noise(7);
      const { corners, count } = tree;
      for (let i = 0; i < runs(300, 600); i++) {
        const at = (i % count) * TRIANGLE_ROW;
        let [u, v] = i < count ? [0, 0] : [Math.abs(random()), Math.abs(random())];
        if (u + v > 1) [u, v] = [1 - u, 1 - v];
        const p = [0, 1, 2].map(
          (k) => corners[at + k]! * (1 - u - v) + corners[at + 3 + k]! * u + corners[at + 6 + k]! * v,
        );
        expect(distance(p as [number, number, number])).toBeGreaterThan(gap - near(gap));
      }
    }, 80);
  });

  it("does not depend on the hint, which is left at the triangle found", () => {
    onCases((c) => {
      const tree = treeOf(c);
      const { gap } = gapOf(c, tree);
      const row = new Float64Array(GAP_ROW);
      const hint = meshHint();
      for (const begin of [-1, 0, tree.count - 1, tree.count]) {
        hint[0] = begin;
        const hinted = meshGapTo(
          row,
          0,
          shapeOf(c.ring),
          wheelRow(c.wheel),
          0,
          { tree },
          Number.POSITIVE_INFINITY,
          hint,
        );
        expect(Math.abs(hinted - gap)).toBeLessThan(near(gap));
        const triangle = { ...c.mesh, positions: tree.corners, triangles: Uint32Array.from([0, 1, 2]) };
        triangle.triangles.forEach((_, k) => {
          triangle.triangles[k] = 3 * hint[0]! + k;
        });
        expect(distanceToPart(triangle, vecAt(row, GAP.point))).toBeLessThan(1e-7);
      }
    }, 60);
  });

  it("is left alone when it is not below what it has to beat", () => {
    onCases((c) => {
      const tree = treeOf(c);
      const { gap } = gapOf(c, tree);
      const under = gapOf(c, tree, gap - 0.5 - near(gap));
      expect(under.gap).toBe(gap - 0.5 - near(gap));
      expect([...under.row]).toEqual(new Array(GAP_ROW).fill(0));
      expect(Math.abs(gapOf(c, tree, gap + 0.5).gap - gap)).toBeLessThan(near(gap));
    }, 60);
  });
});

describe(`against the mesh library three-mesh-bvh 0.9, ring in 256 sides (seed ${SEED})`, () => {
  it("clear gaps are the least distance of the two surfaces", () => {
    let compared = 0;
    const enough = runs(12, 30);
    for (const c of fc.sample(sheetCases(SIDE), { seed: SEED + 1, numRuns: runs(40, 120) })) {
      if (compared === enough) break;
      const { gap } = gapOf(c, treeOf(c));
      if (gap < 1) continue;
      compared++;
      const far = surfaceDistance(ringGeometry(c.ring, c.wheel, 256), partGeometry(c.mesh));
      // The library keeps part of its work in 32 bits: coordinates under 2 m round by 1e-4 at most.
      expect(Math.abs(far - gap)).toBeLessThan(tessellationError(c.ring, 256) + 2e-4);
    }
    expect(compared).toBe(enough);
  });
});
