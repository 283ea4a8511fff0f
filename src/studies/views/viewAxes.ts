import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { dot, type Vec3 } from "../../geometry/vec.ts";
import { sliceMesh } from "../section/sliceMesh.ts";

/** How a view is looked at: directions of unit length in the knuckle frame, `right` × `up` toward the viewer. */
export interface ViewAxes {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toward: Vec3;
}

export type ViewName = "front" | "side" | "top";

/**
 * Left knuckle, knuckle frame (x forward, y outboard, z up the steering axis): from the front outboard lies to the right; from
 * outboard forward lies to the left; from above outboard lies to the right and forward down. Neighbors on the sheet in first- and
 * third-angle projection alike.
 */
export const VIEWS: Readonly<Record<ViewName, ViewAxes>> = {
  front: { right: [0, 1, 0], up: [0, 0, 1], toward: [1, 0, 0] },
  side: { right: [-1, 0, 0], up: [0, 0, 1], toward: [0, 1, 0] },
  top: { right: [0, 1, 0], up: [-1, 0, 0], toward: [0, 0, 1] },
};

/** A point as it is seen: to the right and up, mm. */
export function seenAt({ right, up }: ViewAxes, point: Vec3): readonly [u: number, v: number] {
  return [dot(point, right), dot(point, up)];
}

/** Outlines of bodies where a plane square to x cuts them, a list a body: y0, z0, y1, z1, … mm, closed; seen from the front. */
export function slicedBodies(meshes: readonly TriangleMesh[], at: number): Float64Array[][] {
  return meshes.map((mesh) =>
    sliceMesh(mesh, { axis: "x", at })
      .filter(({ closed }) => closed)
      .map(({ points }) => points),
  );
}
