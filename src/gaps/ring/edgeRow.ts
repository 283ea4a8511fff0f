/** Numbers of one edge of an outline: start x, r; unit direction x, r; length. The outline lies to its left. */
export const EDGE_ROW = 5;
