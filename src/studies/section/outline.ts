/** One line of a section: sheet coordinates u0, v0, u1, v1, …, mm. */
export interface Outline {
  /** The first point is not repeated at the end of a closed one. */
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** Signed area inside a closed outline, mm², + = counterclockwise on the sheet. An open one has none. */
export function outlineArea({ points, closed }: Outline): number {
  if (!closed) return 0;
  let twice = 0;
  for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
    twice += points[j]! * points[i + 1]! - points[i]! * points[j + 1]!;
  }
  return 0.5 * twice;
}

/** How many straight pieces an outline has. */
export function segmentCount({ points, closed }: Outline): number {
  return points.length / 2 - (closed ? 0 : 1);
}
