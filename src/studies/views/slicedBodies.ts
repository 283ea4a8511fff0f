import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { sliceMesh } from "../section/sliceMesh.ts";

/** Outlines of bodies where a plane square to x cuts them, a list a body: y0, z0, y1, z1, … mm, closed; seen from the front. */
export function slicedBodies(meshes: readonly TriangleMesh[], at: number): Float64Array[][] {
  return meshes.map((mesh) =>
    sliceMesh(mesh, { axis: "x", at })
      .filter(({ closed }) => closed)
      .map(({ points }) => points),
  );
}
