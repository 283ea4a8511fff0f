/** A mesh written as points and triples, as the flat rows that parts hold. */
export function flatMesh(
  vertices: readonly (readonly [number, number, number])[],
  triangles: readonly (readonly [number, number, number])[],
): { readonly positions: Float64Array; readonly triangles: Uint32Array } {
  return { positions: Float64Array.from(vertices.flat()), triangles: Uint32Array.from(triangles.flat()) };
}
