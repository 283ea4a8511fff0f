import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 } from "three";
import { type HitPointInfo, MeshBVH } from "three-mesh-bvh";
import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";
import type { Vec3 } from "../../../src/geometry/vec.ts";

/** Questions to a closed surface, answered by the bounding volume tree of three-mesh-bvh. */
export interface SurfaceQuery {
  /** mm, unsigned. */
  readonly distance: (point: Vec3) => number;
  /** By the number of times a ray leaves through the surface. */
  readonly isInside: (point: Vec3) => boolean;
}

export function surfaceQuery({ positions, triangles }: TriangleMesh): SurfaceQuery {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(positions.slice(), 3));
  geometry.setIndex(new BufferAttribute(triangles.slice(), 1));
  const tree = new MeshBVH(geometry);
  const hit: HitPointInfo = { point: new Vector3(), distance: 0, faceIndex: 0 };
  const at = new Vector3();
  // Askew to every axis, so that it meets no edge by design.
  const ray = new Ray(new Vector3(), new Vector3(0.5377, 0.6184, 0.5731).normalize());
  return {
    distance(point) {
      tree.closestPointToPoint(at.set(...point), hit);
      return hit.distance;
    },
    isInside(point) {
      ray.origin.set(...point);
      return tree.raycast(ray, DoubleSide).length % 2 === 1;
    },
  };
}
