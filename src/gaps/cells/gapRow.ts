/** Where the gap kernels put things: gap, the point on the part, the point on the ring. */
export const GAP = { gap: 0, point: 1, onRing: 4 } as const;
export const GAP_ROW = 7;
