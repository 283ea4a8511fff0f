/** A closed outline: u0, v0, u1, v1, … mm. */
type Outline = ArrayLike<number>;

/**
 * Parallel lines inside outlines taken together (what lies in a hole is outside): each u0, v0, u1, v1. @param apart mm from line
 * to line @param lean rad from the u axis
 */
export function hatchLines(outlines: readonly Outline[], apart: number, lean: number): number[][] {
  const [cos, sin] = [Math.cos(lean), Math.sin(lean)];
  // In axes along and across the lines each line is level.
  const turned = outlines.map((outline) => {
    const points: (readonly [number, number])[] = [];
    for (let i = 0; i < outline.length; i += 2)
      points.push([outline[i]! * cos + outline[i + 1]! * sin, outline[i + 1]! * cos - outline[i]! * sin]);
    return points;
  });
  const heights = turned.flat().map(([, t]) => t);
  const lines: number[][] = [];
  // Half a line off the corners, which often lie on whole ones.
  const first = Math.ceil(Math.min(...heights) / apart - 0.5);
  for (let i = first; (i + 0.5) * apart < Math.max(...heights); i++) {
    const t = (i + 0.5) * apart;
    const cuts = turned.flatMap((points) => cutsAt(points, t)).sort((a, b) => a - b);
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const ends = [cuts[k]!, cuts[k + 1]!];
      lines.push(ends.flatMap((s) => [s * cos - t * sin, s * sin + t * cos]));
    }
  }
  return lines;
}

function cutsAt(points: readonly (readonly [number, number])[], t: number): number[] {
  return points.flatMap(([s0, t0], i) => {
    const [s1, t1] = points[(i + 1) % points.length]!;
    return t0 > t === t1 > t ? [] : [s0 + ((t - t0) / (t1 - t0)) * (s1 - s0)];
  });
}
