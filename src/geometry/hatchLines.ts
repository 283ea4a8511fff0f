/**
 * Hatching of what closed outlines enclose together (inside an odd number of them): lines x0, y0, x1, y1 …
 * @param outlines each x0, y0, x1, y1 …, closed from its last point to its first
 * @param spacing between lines, in the outlines' unit; @param angle of the lines, radians
 */
export function hatchLines(outlines: readonly ArrayLike<number>[], spacing: number, angle: number): number[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  // Coordinates along the lines (s) and across them (t).
  const crossings = new Map<number, number[]>();
  for (const points of outlines) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      const s0 = points[j]! * cos + points[j + 1]! * sin;
      const t0 = points[j + 1]! * cos - points[j]! * sin;
      const s1 = points[i]! * cos + points[i + 1]! * sin;
      const t1 = points[i + 1]! * cos - points[i]! * sin;
      const low = Math.ceil(Math.min(t0, t1) / spacing);
      // An end that lies on a line counts for the edge below it alone, or a corner would be crossed twice.
      for (let k = low; k * spacing < Math.max(t0, t1); k++) {
        const at = s0 + ((k * spacing - t0) / (t1 - t0)) * (s1 - s0);
        const known = crossings.get(k);
        if (known) known.push(at);
        else crossings.set(k, [at]);
      }
    }
  }
  const out: number[] = [];
  for (const [k, places] of crossings) {
    places.sort((a, b) => a - b);
    const t = k * spacing;
    for (let i = 0; i + 1 < places.length; i += 2) {
      for (const s of [places[i]!, places[i + 1]!]) out.push(s * cos - t * sin, s * sin + t * cos);
    }
  }
  return out;
}
