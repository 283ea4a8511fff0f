/** A surface of triangles as flat rows. mm, the frame is the owner's to say. */
export interface TriangleMesh {
  /** x, y, z of each vertex. */
  readonly positions: Float64Array;
  /** Three vertex numbers a triangle, counterclockwise seen from outside. */
  readonly triangles: Uint32Array;
}
