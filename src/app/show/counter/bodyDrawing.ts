import type { Vec3 } from "../../../geometry/vec.ts";
import type { BodyPart } from "../../../setup/types/truckTypes.ts";
import type { Model } from "../../../studies/model/model.ts";
import type { Outline, SectionPlane } from "../../../studies/section/outline.ts";
import { placedBody } from "../../../studies/section/placedBody.ts";
import { sliceMesh } from "../../../studies/section/sliceMesh.ts";
import { sliceBox, sliceTube } from "../../../studies/section/slicePart.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import { type DrawingView, type SheetPoint, sheetOf } from "./wheelDrawing.ts";

/** One line on a sheet. */
export interface SheetLine {
  readonly points: readonly SheetPoint[];
  readonly isClosed: boolean;
}

/** A body part about one wheel, cut by the sheet's plane. */
export interface BodyDrawing {
  readonly name: string;
  /** What the plane cuts. */
  readonly cuts: readonly SheetLine[];
  /** Seen past the plane. */
  readonly beyond: readonly SheetLine[];
  /** Cut away before it. Of a mesh nothing but its cut is drawn. */
  readonly before: readonly SheetLine[];
}

/**
 * The body about one wheel, in a plane and on both sides of it.
 * @param at where the plane lies, mm: from the front at this x, from above at this height
 */
export function bodyDrawing(model: Model, side: Side, view: DrawingView, at: number): BodyDrawing[] {
  const plane: SectionPlane = { axis: view === "front" ? "x" : "z", at };
  const put = sheetOf(view, side);
  return placedBody(model.setup.truck.body, side).map(({ part }) => drawn(part, view, plane, put));
}

function drawn(
  part: BodyPart,
  view: DrawingView,
  plane: SectionPlane,
  put: (point: Vec3) => SheetPoint,
): BodyDrawing {
  const { at } = plane;
  const onSheet = ({ points, closed }: Outline): SheetLine => {
    const places: SheetPoint[] = [];
    for (let i = 0; i < points.length; i += 2) {
      const [right, up] = [points[i]!, points[i + 1]!];
      places.push(put(view === "front" ? [at, right, up] : [right, up, at]));
    }
    return { points: places, isClosed: closed };
  };
  const { name } = part;
  const depth = view === "front" ? 0 : 2;
  switch (part.kind) {
    case "path": {
      const [beyond, before] = [-1, 1].map((way) =>
        runsOf(part.points, depth, at, way as 1 | -1).map((run) => ({
          points: run.map(put),
          isClosed: false,
        })),
      );
      const cuts = sliceTube(part.points, part.radius, plane).map(onSheet);
      return { name, cuts, beyond: beyond!, before: before! };
    }
    case "box": {
      const cuts = sliceBox(part.min, part.max, plane).map(onSheet);
      if (cuts.length > 0) return { name, cuts, beyond: [], before: [] };
      const edge = [{ points: corners(part.min, part.max, view).map(put), isClosed: true }];
      return part.max[depth] < at
        ? { name, cuts, beyond: edge, before: [] }
        : { name, cuts, beyond: [], before: edge };
    }
    case "mesh":
      return { name, cuts: sliceMesh(part, plane).map(onSheet), beyond: [], before: [] };
  }
}

/** The runs of a polyline on one side of a plane. @param way −1 = where the coordinate is less */
function runsOf(points: readonly Vec3[], axis: 0 | 2, at: number, way: 1 | -1): Vec3[][] {
  const runs: Vec3[][] = [];
  let run: Vec3[] = [];
  points.forEach((point, i) => {
    const off = way * (point[axis] - at);
    const last = points[i - 1];
    if (last !== undefined) {
      const before = way * (last[axis] - at);
      if (before > 0 !== off > 0) {
        const share = before / (before - off);
        run.push([0, 1, 2].map((k) => last[k]! + share * (point[k]! - last[k]!)) as unknown as Vec3);
        if (off <= 0) {
          runs.push(run);
          run = [];
        }
      }
    }
    if (off > 0) run.push(point);
  });
  if (run.length > 1) runs.push(run);
  return runs.filter((one) => one.length > 1);
}

function corners([x0, y0, z0]: Vec3, [x1, y1, z1]: Vec3, view: DrawingView): Vec3[] {
  return view === "front"
    ? [
        [x0, y0, z0],
        [x0, y1, z0],
        [x0, y1, z1],
        [x0, y0, z1],
      ]
    : [
        [x0, y0, z1],
        [x1, y0, z1],
        [x1, y1, z1],
        [x0, y1, z1],
      ];
}
