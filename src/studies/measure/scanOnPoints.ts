import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { addScaled, dot, length, sub, type Vec3 } from "../../geometry/vec.ts";

/** The same point in the scan and on the truck. */
export interface MatchedPoint {
  /** In the scan, mm, its own axes. */
  readonly inScan: Vec3;
  /** On the truck, mm, vehicle axes. */
  readonly onTruck: Vec3;
}

/** Where a scan stands on a truck. */
export interface ScanPlacing {
  /** Rows of the turn; a scan's point p stands at turn · p + move. */
  readonly turn: readonly [Vec3, Vec3, Vec3];
  readonly move: Vec3;
  /** The same turn as degrees about vehicle X, then Y, then Z, as the setup's `place.turn` has it. */
  readonly turnDegrees: Vec3;
  /** mm: how far each point comes out from its place on the truck. */
  readonly residuals: readonly number[];
  /** mm: their root mean square over what is left to check, one standard deviation of a match; null with none to spare. */
  readonly within: number | null;
}

export type ScanPlacingResult =
  | { readonly ok: true; readonly placing: ScanPlacing }
  /** One sentence without a full stop. */
  | { readonly ok: false; readonly mend: string };

/** Share of the points' spread that they must reach to the side of a line. */
const LEAST_WIDTH = 0.02;

/**
 * The turn and move that take points of a scan to the same points on the truck with the least sum of squares, by the
 * singular values of their cross-covariance (Arun, Huang and Blostein 1987; Umeyama 1991 for the sign; both from memory).
 * Three points place it, each more one checks. Never scales: a scan in the wrong unit shows in its residuals.
 */
export function scanOnPoints(matched: readonly MatchedPoint[]): ScanPlacingResult {
  if (matched.length < 3)
    return { ok: false, mend: "match at least three points, far apart and not in line" };
  const scan = centered(matched.map(({ inScan }) => inScan));
  const truck = centered(matched.map(({ onTruck }) => onTruck));
  const product = new Matrix(3, 3);
  scan.from.forEach((a, i) => {
    for (const row of [0, 1, 2] as const)
      for (const column of [0, 1, 2] as const)
        product.set(row, column, product.get(row, column) + truck.from[i]![row] * a[column]);
  });
  if (isFlat(scan.from) || isFlat(truck.from))
    return { ok: false, mend: "the points are in line or too close; match three that are far apart" };
  const svd = new SingularValueDecomposition(product);
  const [u, v] = [svd.leftSingularVectors, svd.rightSingularVectors];
  const cell = (row: number, column: number, sign: number) =>
    [0, 1, 2].reduce((sum, k) => sum + u.get(row, k) * v.get(column, k) * (k === 2 ? sign : 1), 0);
  const rows = (sign: number) =>
    [0, 1, 2].map((row) => [0, 1, 2].map((column) => cell(row, column, sign)) as unknown as Vec3);
  const plain = rows(1);
  const turn = (determinant(plain) > 0 ? plain : rows(-1)) as unknown as ScanPlacing["turn"];
  const move = sub(truck.mean, turned(turn, scan.mean));
  const residuals = matched.map(({ inScan, onTruck }) =>
    length(sub(addScaled(turned(turn, inScan), move, 1), onTruck)),
  );
  const spare = 3 * matched.length - 6;
  const within =
    matched.length < 4 ? null : Math.sqrt(residuals.reduce((sum, one) => sum + one * one, 0) / spare);
  return { ok: true, placing: { turn, move, turnDegrees: degreesOf(turn), residuals, within } };
}

/** A point turned. @param turn its rows */
export function turned([a, b, c]: ScanPlacing["turn"], p: Vec3): Vec3 {
  return [dot(a, p), dot(b, p), dot(c, p)];
}

function centered(points: readonly Vec3[]) {
  const mean = [0, 1, 2].map(
    (i) => points.reduce((sum, point) => sum + point[i]!, 0) / points.length,
  ) as unknown as Vec3;
  return { mean, from: points.map((point) => sub(point, mean)) };
}

/** Whether points about their middle lie nearly on a line. */
function isFlat(points: readonly Vec3[]): boolean {
  const [most, next] = new SingularValueDecomposition(new Matrix(points.map((point) => [...point])), {
    autoTranspose: true,
  }).diagonal;
  return !(next! > LEAST_WIDTH * most!);
}

function determinant(rows: readonly Vec3[]): number {
  const [[a, b, c], [d, e, f], [g, h, i]] = rows as [Vec3, Vec3, Vec3];
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}

/** Angles about vehicle X, then Y, then Z of a turn Z·Y·X, degrees. @param rows of the turn */
export function degreesOf([a, b, c]: ScanPlacing["turn"]): Vec3 {
  const aboutY = Math.asin(Math.max(-1, Math.min(1, -c[0])));
  const isUpright = Math.abs(c[0]) < 1 - 1e-12;
  const aboutX = isUpright ? Math.atan2(c[1], c[2]) : Math.atan2(-b[2], b[1]);
  const aboutZ = isUpright ? Math.atan2(b[0], a[0]) : 0;
  return [aboutX, aboutY, aboutZ].map((rad) => (rad / Math.PI) * 180) as unknown as Vec3;
}
