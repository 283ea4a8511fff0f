import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CELL, CELL_ROW, CellKind } from "../../src/gaps/cells/cells.ts";
import { type PartInput, type PartShape, partShapeOf } from "../../src/gaps/partShape.ts";
import { FACE, FACE_ROW } from "../../src/gaps/skeleton/skeleton.ts";
import {
  addScaled,
  cross,
  dot,
  length,
  mirrorY,
  normalize,
  scale,
  sub,
  type Vec3,
  vecAt,
} from "../../src/geometry/vec.ts";
import { flatMesh } from "../reference/flatMesh.ts";
import { offsets } from "../reference/gapCases.ts";

const RUN = { seed: 1955, numRuns: 100 } as const;

const samePoint = (a: Vec3, b: Vec3) => expect(length(sub(a, b))).toBeLessThan(1e-9);
const meanOf = (points: readonly Vec3[]): Vec3 =>
  scale(
    points.reduce((sum, p) => addScaled(sum, p, 1)),
    1 / points.length,
  );

/** The ball about a cell, the farthest of its corners on it, the part's radius out. */
function expectBall(
  { balls }: PartShape,
  cell: number,
  middle: Vec3,
  corners: readonly Vec3[],
  radius: number,
) {
  samePoint(vecAt(balls, 4 * cell), middle);
  expect(balls[4 * cell + 3]).toBeCloseTo(
    Math.max(...corners.map((p) => length(sub(p, middle)))) + radius,
    9,
  );
}

const onSide = (mirrored: boolean) => (p: Vec3) => (mirrored ? mirrorY(p) : p);

describe(`parts cut into cells (seed ${RUN.seed})`, () => {
  it("a path: its runs from point to point, its corners and edges; one point is a ball", () => {
    fc.assert(
      fc.property(
        fc.array(offsets(300), { minLength: 1, maxLength: 5 }),
        fc.boolean(),
        (points, mirrored) => {
          const part = partShapeOf({ name: "path", kind: "path", radius: 8, points }, mirrored);
          const own = points.map(onSide(mirrored));
          expect(part.count).toBe(Math.max(1, points.length - 1));
          for (let i = 0; i < part.count; i++) {
            const at = i * CELL_ROW;
            const ends = [own[i]!, own[Math.min(i + 1, own.length - 1)]!];
            expect([part.cells[at], part.cells[at + CELL.radius]]).toEqual([CellKind.Segment, 8]);
            ends.forEach((end, k) => {
              samePoint(vecAt(part.cells, at + 1 + 3 * k), end);
            });
            expectBall(part, i, meanOf(ends), ends, 8);
          }
          const { skeleton } = part;
          expect([...skeleton!.corners].map((v) => v + 0)).toEqual(own.flat().map((v) => v + 0));
          expect([...skeleton!.edges]).toEqual(own.slice(1).flatMap((_, i) => [i, i + 1]));
          expect([skeleton!.faces.length, skeleton!.solid, skeleton!.radius]).toEqual([0, false, 8]);
        },
      ),
      RUN,
    );
  });

  it("a box: six faces without thickness, then the solid; each face under its own plane and inside four more", () => {
    fc.assert(
      fc.property(offsets(300), offsets(60), fc.boolean(), (center, size, mirrored) => {
        const half = size.map((v) => Math.abs(v) + 1) as unknown as Vec3;
        const [min, max] = [addScaled(center, half, -1), addScaled(center, half, 1)];
        const part = partShapeOf({ name: "box", kind: "box", min, max }, mirrored);
        const middle = onSide(mirrored)(center);
        expect(part.count).toBe(7);
        const kinds = Array.from({ length: 7 }, (_, i) => part.cells[i * CELL_ROW]);
        expect(kinds).toEqual([...new Array(6).fill(CellKind.Box), CellKind.Solid]);
        const seen: number[][] = [];
        for (let i = 0; i < 7; i++) {
          const at = i * CELL_ROW + CELL.data;
          const [c, h] = [vecAt(part.cells, at), vecAt(part.cells, at + 3)];
          const axis = i < 6 ? h.indexOf(0) : -1;
          h.forEach((v, k) => {
            expect(v).toBeCloseTo(k === axis ? 0 : half[k]!, 9);
          });
          c.forEach((v, k) => {
            expect(Math.abs(v - middle[k]!)).toBeCloseTo(k === axis ? half[k]! : 0, 9);
          });
          if (axis >= 0) seen.push([axis, Math.sign(c[axis]! - middle[axis]!)]);
          expectBall(part, i, c, [addScaled(c, h, 1)], 0);
        }
        expect(seen).toEqual([0, 1, 2].flatMap((axis) => [-1, 1].map((side) => [axis, side])));
        const { corners, edges, faces, solid } = part.skeleton!;
        expect([solid, corners.length, edges.length, faces.length]).toEqual([true, 24, 24, 6 * FACE_ROW]);
        const cornerAt = (i: number) => vecAt(corners, 3 * i);
        const sides = [...edges].flatMap((_, i, all) =>
          i % 2 === 0 ? [sub(cornerAt(all[i + 1]!), cornerAt(all[i]!))] : [],
        );
        // Twelve edges, four along each axis.
        for (let axis = 0; axis < 3; axis++) {
          const along = sides.filter((side) => Math.abs(side[axis]!) > 1e-9);
          expect(along.length).toBe(4);
          for (const side of along) expect(length(side)).toBeCloseTo(2 * half[axis]!, 9);
        }
        expect(
          new Set([...edges].map((_, i, all) => (i % 2 === 0 ? `${all[i]} ${all[i + 1]}` : ""))).size,
        ).toBe(13);
        for (let f = 0; f < 6; f++) {
          const at = f * FACE_ROW;
          const normal = vecAt(faces, at);
          const heights = Array.from(
            { length: 8 },
            (_, i) => dot(normal, cornerAt(i)) - faces[at + FACE.offset]!,
          );
          expect(heights.filter((height) => Math.abs(height) < 1e-9).length).toBe(4);
          expect(Math.max(...heights)).toBeLessThan(1e-9);
          for (let plane = at + FACE.sides; plane < at + FACE.cell; plane += 4) {
            const out = Array.from(
              { length: 8 },
              (_, i) => dot(vecAt(faces, plane), cornerAt(i)) - faces[plane + 3]!,
            );
            expect(out.filter((height) => Math.abs(height) < 1e-9).length).toBe(4);
            expect(Math.max(...out)).toBeLessThan(1e-9);
            expect(dot(vecAt(faces, plane), normal)).toBeCloseTo(0, 12);
          }
        }
      }),
      RUN,
    );
  });

  it("a few triangles: each with its corners; its face inside three planes square to it; shared edges once", () => {
    fc.assert(
      fc.property(
        fc.array(offsets(200), { minLength: 5, maxLength: 5 }),
        fc.boolean(),
        (points, mirrored) => {
          const triangles = [
            [0, 1, 2],
            [1, 3, 2],
            [2, 3, 4],
          ] as const;
          const input: PartInput = { name: "mesh", kind: "mesh", ...flatMesh(points, triangles) };
          const part = partShapeOf(input, mirrored);
          const own = points.map(onSide(mirrored));
          expect([part.count, part.tree]).toEqual([3, undefined]);
          const { corners, edges, faces, solid } = part.skeleton!;
          expect(solid).toBe(false);
          own.forEach((p, i) => {
            samePoint(vecAt(corners, 3 * i), p);
          });
          const pairs = [...edges].flatMap((a, i, all) =>
            i % 2 === 0 ? [[a, all[i + 1]!].sort().join()] : [],
          );
          expect(pairs.sort()).toEqual(["0,1", "0,2", "1,2", "1,3", "2,3", "2,4", "3,4"]);
          triangles.forEach((numbers, i) => {
            const abc = numbers.map((n) => own[n]!);
            const [a, b, c] = abc as [Vec3, Vec3, Vec3];
            const at = i * CELL_ROW;
            expect([part.cells[at], part.cells[at + CELL.radius]]).toEqual([CellKind.Triangle, 0]);
            abc.forEach((p, k) => {
              samePoint(vecAt(part.cells, at + 1 + 3 * k), p);
            });
            expectBall(part, i, meanOf(abc), abc, 0);
            const area = cross(sub(b, a), sub(c, a));
            if (length(area) < 1) return;
            const face = i * FACE_ROW;
            samePoint(vecAt(faces, face), normalize(area));
            expect(faces[face + FACE.offset]).toBeCloseTo(dot(normalize(area), a), 6);
            expect([
              faces[face + FACE.cell],
              ...faces.subarray(face + FACE.corners, face + FACE_ROW),
            ]).toEqual([i, ...numbers]);
            for (let k = 0; k < 3; k++) {
              const plane = face + FACE.sides + 4 * k;
              const above = (p: Vec3) => dot(vecAt(faces, plane), p) - faces[plane + 3]!;
              const [from, to, opposite] = [abc[k]!, abc[(k + 1) % 3]!, abc[(k + 2) % 3]!];
              const size = length(vecAt(faces, plane)) * length(sub(to, from)) + 1;
              expect(Math.abs(above(from)) / size).toBeLessThan(1e-9);
              expect(Math.abs(above(to)) / size).toBeLessThan(1e-9);
              expect(above(opposite)).toBeLessThan(0);
              expect(Math.abs(dot(vecAt(faces, plane), area)) / (size * length(area))).toBeLessThan(1e-9);
            }
            expect([...faces.subarray(face + 16, face + FACE.cell)]).toEqual([0, 0, 0, 0]);
          });
        },
      ),
      RUN,
    );
  });

  it("more triangles than may be looked at one by one get a tree; a triangle without area no face", () => {
    const flat = flatMesh(
      [
        [0, 0, 0],
        [1, 0, 0],
        [2, 0, 0],
      ],
      [[0, 1, 2]],
    );
    expect(partShapeOf({ name: "line", kind: "mesh", ...flat }, false).skeleton!.faces.length).toBe(0);
    const fan = (count: number) =>
      partShapeOf(
        {
          name: "fan",
          kind: "mesh",
          positions: Float64Array.from({ length: 3 * (count + 2) }, (_, i) => Math.sin(i * i)),
          triangles: Uint32Array.from({ length: 3 * count }, (_, i) => Math.floor(i / 3) + (i % 3)),
        },
        true,
      );
    expect([fan(64).tree, fan(64).count, fan(64).hint]).toEqual([undefined, 64, undefined]);
    const large = fan(65);
    expect([large.skeleton, large.count, large.tree!.count, large.hint![0]]).toEqual([null, 0, 65, -1]);
    // Mirrored into the other side's frame.
    const ys = [...large.tree!.corners].flatMap((v, i) => (i % 3 === 1 ? [v] : []));
    const typed = Array.from({ length: 67 }, (_, i) => -Math.sin((3 * i + 1) ** 2));
    for (const y of ys) expect(Math.min(...typed.map((one) => Math.abs(one - y)))).toBeLessThan(1e-12);
  });
});
