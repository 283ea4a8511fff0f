/** One line of a drawing: sheet coordinates u0, v0, u1, v1, … in mm, u to the right, v up. */
export interface DrawnLine {
  readonly points: Float64Array;
  /** The first point is not repeated at the end of a closed one. */
  readonly closed: boolean;
}

/** Lines that belong to one thing. */
export interface DrawnFigure {
  /** `envelope`: what a moving thing sweeps. `part`: what is cut. `ring`: the moving thing at one pose. */
  readonly kind: "envelope" | "part" | "ring";
  readonly name: string;
  readonly outlines: readonly DrawnLine[];
}

/** A section, ready to be drawn 1:1. */
export interface SectionDrawing {
  readonly units: "in" | "mm";
  /** What it is of, a line each, the first the largest. */
  readonly title: readonly string[];
  /** What it does not say. */
  readonly cautions: readonly string[];
  readonly figures: readonly DrawnFigure[];
}

/** Smallest upright rectangle about figures: u, v of its low and high corner, mm. null when nothing is drawn. */
export function drawnBounds(
  figures: readonly DrawnFigure[],
): readonly [number, number, number, number] | null {
  let [u0, v0, u1, v1] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const { points } of figures.flatMap(({ outlines }) => outlines)) {
    for (let i = 0; i < points.length; i += 2) {
      u0 = Math.min(u0, points[i]!);
      u1 = Math.max(u1, points[i]!);
      v0 = Math.min(v0, points[i + 1]!);
      v1 = Math.max(v1, points[i + 1]!);
    }
  }
  return u0 <= u1 ? [u0, v0, u1, v1] : null;
}
