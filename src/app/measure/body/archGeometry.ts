/** A point of the side view, mm: x forward, z up. */
export interface SidePoint {
  readonly x: number;
  readonly z: number;
}

/** A rectangle of the side view in picture axes, mm: u = −x to the right, so that the truck faces left; v = −z down. */
export interface ArchFrame {
  readonly u: number;
  readonly v: number;
  readonly width: number;
  readonly height: number;
}

/** mm around everything, for handles to be taken by. */
const MARGIN = 90;

/** The picture that holds these points and circles. */
export function archFrame(
  points: readonly SidePoint[],
  circles: readonly { readonly x: number; readonly z: number; readonly radius: number }[],
): ArchFrame {
  const us = [
    ...points.map(({ x }) => -x),
    ...circles.flatMap(({ x, radius }) => [-x - radius, -x + radius]),
  ];
  const vs = [
    ...points.map(({ z }) => -z),
    ...circles.flatMap(({ z, radius }) => [-z - radius, -z + radius]),
  ];
  const [u, v] = [Math.min(...us) - MARGIN, Math.min(...vs) - MARGIN];
  return { u, v, width: Math.max(...us) + MARGIN - u, height: Math.max(...vs) + MARGIN - v };
}

/** The point of the side view at a place of the picture. */
export function sidePoint(u: number, v: number): SidePoint {
  return { x: 0 - u, z: 0 - v };
}

/** Which point is nearest to a place, if one is within `reach` mm; null = none is. */
export function nearestPoint(points: readonly SidePoint[], at: SidePoint, reach: number): number | null {
  let nearest: number | null = null;
  let least = reach;
  points.forEach((point, i) => {
    const distance = Math.hypot(point.x - at.x, point.z - at.z);
    if (distance > least) return;
    least = distance;
    nearest = i;
  });
  return nearest;
}

/** A place on a line through points: on the piece that starts at point `after`, at `share` of its length. */
export interface PlaceOnLine {
  readonly after: number;
  readonly share: number;
}

/** The place on the line through the points that is nearest to another, if within `reach` mm; null = none is. */
export function nearestOnLine(
  points: readonly SidePoint[],
  at: SidePoint,
  reach: number,
): PlaceOnLine | null {
  let nearest: PlaceOnLine | null = null;
  let least = reach;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!];
    const [dx, dz] = [b.x - a.x, b.z - a.z];
    const lengthSq = dx * dx + dz * dz;
    const along = lengthSq > 0 ? ((at.x - a.x) * dx + (at.z - a.z) * dz) / lengthSq : 0;
    const share = Math.min(1, Math.max(0, along));
    const distance = Math.hypot(at.x - a.x - share * dx, at.z - a.z - share * dz);
    if (distance > least) continue;
    least = distance;
    nearest = { after: i, share };
  }
  return nearest;
}
