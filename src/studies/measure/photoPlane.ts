import { type LeastSquares, leastSquares } from "../numeric/leastSquares.ts";

/** A point of a picture, px: x to the right, y down. */
export type Pixel = readonly [x: number, y: number];

/** A point of the plane that was photographed, mm: ahead of the axle line, above the floor. */
export type PlanePoint = readonly [ahead: number, up: number];

/** A place in the picture whose place on the truck is known. */
export interface KnownPixel {
  readonly pixel: Pixel;
  readonly at: PlanePoint;
}

/** From a picture to the plane. */
export interface PhotoPlane {
  /** Null where the plane's own horizon is: nothing of it lies there. */
  readonly toTruck: (pixel: Pixel) => PlanePoint | null;
  /** mm: how far each known point comes out from where it was said to be; 0 where there is none to spare. */
  readonly residuals: readonly number[];
  /** mm: what one pixel is at the middle of the known points. */
  readonly mmPerPixel: number;
}

export type PhotoPlaneResult =
  | { readonly ok: true; readonly plane: PhotoPlane }
  /** One sentence without a full stop. */
  | { readonly ok: false; readonly mend: string };

const FEW =
  "mark two points whose places on the truck are known, or four to correct for a picture taken at a slant";
const SAME = "two of the points are the same in the picture or on the truck; mark points that are far apart";
const IN_LINE = "three of the points are in line; mark four that make a wide four-sided figure";
const SLANTED = "the points do not show a flat side: check which is which, and that all lie in one plane";

/** Share of the largest side of a triangle that its height must reach. */
const LEAST_HEIGHT = 0.02;

/**
 * The plane of a side photo. With two points known, a picture taken square to the truck: turned, scaled and moved (exact in
 * both, the picture not mirrored). With four or more, one taken at a slant: the plane projective transform, by the direct
 * linear method on normalized points (Hartley and Zisserman, Multiple View Geometry, 4.1 and 4.4, from memory), which more
 * than four points settle by least squares. A lens that bends lines is not corrected.
 * @param isFromLeft a picture of the left side has the front to its left
 */
export function photoPlane(known: readonly KnownPixel[], isFromLeft: boolean): PhotoPlaneResult {
  const refuse = (mend: string): PhotoPlaneResult => ({ ok: false, mend });
  if (known.length < 2 || known.length === 3) return refuse(FEW);
  if (!known.every(({ pixel, at }) => [...pixel, ...at].every(Number.isFinite))) return refuse(FEW);
  if (haveSame(known.map(({ pixel }) => pixel)) || haveSame(known.map(({ at }) => at))) return refuse(SAME);
  // A right-handed plane: the picture's x runs aft on the left side, its y down.
  const hand = isFromLeft ? -1 : 1;
  const plain = known.map(({ pixel, at }) => ({ from: [hand * pixel[0], -pixel[1]] as Pixel, to: at }));
  if (known.length === 2) return planeOf(known, similarity(plain[0]!, plain[1]!), hand);
  if (haveLine(plain.map(({ from }) => from)) || haveLine(plain.map(({ to }) => to))) return refuse(IN_LINE);
  const matrix = projective(plain);
  if (matrix === null || !keepsSides(matrix, plain)) return refuse(SLANTED);
  return planeOf(known, matrix, hand);
}

/** Rows of the transform of (x, y, 1). */
type Transform = readonly [number, number, number, number, number, number, number, number, number];

interface Pair {
  readonly from: Pixel;
  readonly to: PlanePoint;
}

function planeOf(known: readonly KnownPixel[], h: Transform, hand: number): PhotoPlaneResult {
  const sign = Math.sign(weightAt(h, [hand * known[0]!.pixel[0], -known[0]!.pixel[1]]));
  const toTruck = ([x, y]: Pixel): PlanePoint | null => {
    const from: Pixel = [hand * x, -y];
    const weight = weightAt(h, from);
    if (!(weight * sign > 0)) return null;
    return applied(h, from);
  };
  const residuals = known.map(({ pixel, at }) => {
    const found = toTruck(pixel);
    return found === null ? Number.POSITIVE_INFINITY : Math.hypot(found[0] - at[0], found[1] - at[1]);
  });
  const middle = [0, 1].map((i) => known.reduce((sum, { pixel }) => sum + pixel[i]!, 0) / known.length);
  const [here, beside] = [toTruck([middle[0]!, middle[1]!]), toTruck([middle[0]! + 1, middle[1]!])];
  const mmPerPixel = here && beside ? Math.hypot(here[0] - beside[0], here[1] - beside[1]) : 0;
  return { ok: true, plane: { toTruck, residuals, mmPerPixel } };
}

function similarity(a: Pair, b: Pair): Transform {
  const [u, v] = [b.from[0] - a.from[0], b.from[1] - a.from[1]];
  const [x, y] = [b.to[0] - a.to[0], b.to[1] - a.to[1]];
  const squared = u * u + v * v;
  const [cos, sin] = [(x * u + y * v) / squared, (y * u - x * v) / squared];
  return [
    cos,
    -sin,
    a.to[0] - cos * a.from[0] + sin * a.from[1],
    sin,
    cos,
    a.to[1] - sin * a.from[0] - cos * a.from[1],
    0,
    0,
    1,
  ];
}

/** Eight numbers by least squares from two equations a point, linear in them, both ends normalized. */
function projective(pairs: readonly Pair[]): Transform | null {
  const [from, to] = [normalizing(pairs.map((one) => one.from)), normalizing(pairs.map((one) => one.to))];
  const plain = pairs.map((one) => ({ from: from.put(one.from), to: to.put(one.to) }));
  const fit: LeastSquares = leastSquares({
    residuals: ([a, b, c, d, e, f, g, h]) =>
      plain.flatMap(({ from: [x, y], to: [u, v] }) => {
        const weight = g! * x + h! * y + 1;
        return [a! * x + b! * y + c! - u * weight, d! * x + e! * y + f! - v * weight];
      }),
    start: [1, 0, 0, 0, 1, 0, 0, 0],
    scales: [1, 1, 1, 1, 1, 1, 1, 1],
  });
  if (fit.isOpen.some(Boolean)) return null;
  const [a, b, c, d, e, f, g, h] = fit.at as unknown as number[];
  const inner: Transform = [a!, b!, c!, d!, e!, f!, g!, h!, 1];
  return times(to.back, times(inner, from.matrix));
}

/** Moves points about the origin, their mean distance from it root 2. */
function normalizing(points: readonly (readonly [number, number])[]) {
  const mean = [0, 1].map((i) => points.reduce((sum, point) => sum + point[i]!, 0) / points.length);
  const spread =
    points.reduce((sum, [x, y]) => sum + Math.hypot(x - mean[0]!, y - mean[1]!), 0) / points.length;
  const scale = Math.SQRT2 / spread;
  const put = ([x, y]: readonly [number, number]) =>
    [scale * (x - mean[0]!), scale * (y - mean[1]!)] as const;
  const matrix: Transform = [scale, 0, -scale * mean[0]!, 0, scale, -scale * mean[1]!, 0, 0, 1];
  const back: Transform = [1 / scale, 0, mean[0]!, 0, 1 / scale, mean[1]!, 0, 0, 1];
  return { put, matrix, back };
}

function times(a: Transform, b: Transform): Transform {
  const cell = (row: number, column: number) =>
    a[3 * row]! * b[column]! + a[3 * row + 1]! * b[3 + column]! + a[3 * row + 2]! * b[6 + column]!;
  return [0, 1, 2].flatMap((row) => [0, 1, 2].map((column) => cell(row, column))) as unknown as Transform;
}

function weightAt(h: Transform, [x, y]: Pixel): number {
  return h[6] * x + h[7] * y + h[8];
}

function applied(h: Transform, [x, y]: Pixel): PlanePoint {
  const weight = weightAt(h, [x, y]);
  return [(h[0] * x + h[1] * y + h[2]) / weight, (h[3] * x + h[4] * y + h[5]) / weight];
}

/** Whether all known points lie on one side of the horizon and the picture is not turned over. */
function keepsSides(h: Transform, pairs: readonly Pair[]): boolean {
  const weights = pairs.map(({ from }) => weightAt(h, from));
  const determinant =
    h[0] * (h[4] * h[8] - h[5] * h[7]) -
    h[1] * (h[3] * h[8] - h[5] * h[6]) +
    h[2] * (h[3] * h[7] - h[4] * h[6]);
  const sign = Math.sign(weights[0]!);
  return sign !== 0 && weights.every((one) => one * sign > 0) && determinant * sign > 0;
}

function haveSame(points: readonly (readonly [number, number])[]): boolean {
  const size = Math.max(...points.flatMap((a) => points.map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]))));
  return points.some((a, i) =>
    points.slice(i + 1).some((b) => !(Math.hypot(a[0] - b[0], a[1] - b[1]) > LEAST_HEIGHT * size)),
  );
}

/** Whether any three of four points are nearly in line; of more than four, whether all four-sided figures have such. */
function haveLine(points: readonly (readonly [number, number])[]): boolean {
  const flat = (i: number, j: number, k: number) => {
    const [a, b, c] = [points[i]!, points[j]!, points[k]!];
    const area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
    const longest = Math.max(
      Math.hypot(b[0] - a[0], b[1] - a[1]),
      Math.hypot(c[0] - b[0], c[1] - b[1]),
      Math.hypot(a[0] - c[0], a[1] - c[1]),
    );
    return area < LEAST_HEIGHT * longest * longest;
  };
  const count = points.length;
  for (let a = 0; a < count; a++)
    for (let b = a + 1; b < count; b++)
      for (let c = b + 1; c < count; c++)
        for (let d = c + 1; d < count; d++)
          if (!flat(a, b, c) && !flat(a, b, d) && !flat(a, c, d) && !flat(b, c, d)) return false;
  return true;
}
