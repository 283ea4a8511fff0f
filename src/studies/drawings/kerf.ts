/** mm. No torch, plasma or saw cuts wider. */
export const WIDEST_KERF = 10;

/** A corner of an outline. */
export type Corner = readonly [u: number, v: number];

/** Twice the area inside, + = counterclockwise. */
export function twiceArea(outline: readonly Corner[]): number {
  return outline.reduce((sum, [u, v], i) => {
    const [nu, nv] = outline[(i + 1) % outline.length]!;
    return sum + u * nv - nu * v;
  }, 0);
}

/**
 * The way of a cutter's middle round an outline, `by` outside of it: every edge moved outward by that, corners where the moved
 * edges meet, so that the part left is the outline itself. null = the cutter is too wide for a notch of the outline: some edge
 * would turn round. Exact; a corner of angle c reaches out by `by` / sin(c/2). @param by mm, − = inside
 */
export function movedOutward(outline: readonly Corner[], by: number): Corner[] | null {
  const way = twiceArea(outline) > 0 ? 1 : -1;
  const count = outline.length;
  const normals = outline.map(([u, v], i): Corner => {
    const [nu, nv] = outline[(i + 1) % count]!;
    const length = Math.hypot(nu - u, nv - v);
    return [(way * (nv - v)) / length, (-way * (nu - u)) / length];
  });
  const moved = outline.map(([u, v], i): Corner => {
    const [a, b] = [normals[(i + count - 1) % count]!, normals[i]!];
    const share = by / (1 + a[0] * b[0] + a[1] * b[1]);
    return [u + share * (a[0] + b[0]), v + share * (a[1] + b[1])];
  });
  const keepsWay = moved.every(([u, v], i) => {
    const [nu, nv] = moved[(i + 1) % count]!;
    const [ou, ov] = outline[i]!;
    const [pu, pv] = outline[(i + 1) % count]!;
    return (nu - u) * (pu - ou) + (nv - v) * (pv - ov) > 0;
  });
  return keepsWay ? moved : null;
}
