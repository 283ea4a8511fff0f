import type { BodyPart } from "../../../setup/types/types.ts";
import type { Model } from "../../../studies/model/model.ts";
import { placedBody } from "../../../studies/section/placedBody.ts";
import { sliceMesh } from "../../../studies/section/sliceMesh.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import { type DrawingView, type SheetPoint, sheetOf } from "./wheelDrawing.ts";

/** One line of a body part on a sheet. */
export interface BodyLine {
  readonly name: string;
  readonly points: readonly SheetPoint[];
  readonly isClosed: boolean;
  /** How thick the part itself is there, mm; 0 = a sheet's edge or a corner. */
  readonly thickness: number;
}

/**
 * The body about one wheel: paths and boxes as they are seen, meshes as they are cut.
 * @param cut where meshes are cut, mm: from the front at this x, from above at this height
 */
export function bodyDrawing(model: Model, side: Side, view: DrawingView, cut: number): BodyLine[] {
  const put = sheetOf(view, side);
  return placedBody(model.setup.truck.body, side).flatMap(({ part }) => linesOf(part, view, cut, put));
}

function linesOf(
  part: BodyPart,
  view: DrawingView,
  cut: number,
  put: (point: readonly [number, number, number]) => SheetPoint,
): BodyLine[] {
  const { name } = part;
  if (part.kind === "path") {
    return [{ name, points: part.points.map(put), isClosed: false, thickness: 2 * part.radius }];
  }
  if (part.kind === "box") {
    const [[x0, y0, z0], [x1, y1, z1]] = [part.min, part.max];
    const corners =
      view === "front"
        ? ([
            [x0, y0, z0],
            [x0, y1, z0],
            [x0, y1, z1],
            [x0, y0, z1],
          ] as const)
        : ([
            [x0, y0, z1],
            [x1, y0, z1],
            [x1, y1, z1],
            [x0, y1, z1],
          ] as const);
    return [{ name, points: corners.map(put), isClosed: true, thickness: 0 }];
  }
  const plane = { axis: view === "front" ? "x" : "z", at: cut } as const;
  return sliceMesh(part, plane).map(({ points, closed }) => {
    const cutPoints: SheetPoint[] = [];
    for (let i = 0; i < points.length; i += 2) {
      const [u, v] = [points[i]!, points[i + 1]!];
      cutPoints.push(put(view === "front" ? [cut, u, v] : [u, v, cut]));
    }
    return { name, points: cutPoints, isClosed: closed, thickness: 0 };
  });
}
