import { Matrix, SingularValueDecomposition } from "ml-matrix";
import type { Vec3 } from "../../geometry/vec.ts";

/** A least-squares problem: residuals each over its own standard deviation, so that they weigh alike. */
export interface LeastSquaresProblem {
  /** What is left over of each reading at some values of the unknowns; as many numbers at every call. */
  readonly residuals: (at: readonly number[]) => readonly number[];
  readonly start: readonly number[];
  /** About how far each unknown may be off: derivatives are taken over a small share of it, and steps weighed by it. */
  readonly scales: readonly number[];
  /**
   * A direction that the residuals tell no better than this many scales (one standard deviation) is open. Default none: it
   * is open when it is the rounding of derivatives.
   */
  readonly loosest?: number;
  /** Steps after which it ends, wherever it is. Default 200. */
  readonly mostSteps?: number;
  /** Asked before each step; where it says no more it ends, wherever it is. Default never. */
  readonly isSpent?: (() => boolean) | undefined;
}

/** A direction of the unknowns, of length 1 counted in their scales, and how well the residuals tell it, in scales. */
export interface ToldDirection {
  readonly along: readonly number[];
  readonly within: number;
}

export interface LeastSquares {
  /** Unknowns with the least sum of squares; those that are `isOpen` somewhere along what fits alike. */
  readonly at: readonly number[];
  readonly residuals: readonly number[];
  /** Of the unknowns, for residuals of one standard deviation each; 0 in rows and columns of what is open. */
  readonly covariance: readonly (readonly number[])[];
  /** Unknowns that the residuals leave open, alone or together with others. */
  readonly isOpen: readonly boolean[];
  /** What the residuals tell of, square to one another; what is square to all of them is open. */
  readonly told: readonly ToldDirection[];
  /** Share of each reading's own variance that the others check, 0 (nothing does) to 1. */
  readonly redundancy: readonly number[];
  /** The last step was rounding; false = it went on as long as it may. */
  readonly isSettled: boolean;
}

/** Share of the largest singular value below which one is the rounding of derivatives. */
const SINGULAR = 1e-8;

/** Of a scale: derivatives are taken over this, to either side. */
const DIFFERENCE = 1e-3;

/** Of a scale: a step below it is rounding. */
const SETTLED = 1e-11;

/** Share of an unknown's axis outside of what the readings tell, above which it is open. */
const OPEN = 1e-9;

const MOST_STEPS = 200;

/**
 * Levenberg and Marquardt's method on the singular values of the slopes (Marquardt 1963; Golub and Van Loan, Matrix
 * Computations; both from memory): undamped as long as that helps. Directions that no reading tells of are not walked,
 * so that what can be told is, however much cannot. The covariance is (JᵀJ)⁻¹.
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquares {
  const { residuals, start, scales, loosest = Number.POSITIVE_INFINITY, mostSteps = MOST_STEPS } = problem;
  const { isSpent = () => false } = problem;
  let at = [...start];
  let left = residuals(at);
  let cost = squared(left);
  let damping = 0;
  let isSettled = left.length === 0;
  let slopes = slopesOf(residuals, at, scales, left.length, loosest);
  for (let step = 0; step < mostSteps && !isSettled && !isSpent(); step++) {
    const change = stepOf(slopes, left, damping);
    const size = Math.max(...change.map(Math.abs));
    const next = at.map((value, i) => value + change[i]! * scales[i]!);
    const nextLeft = residuals(next);
    const nextCost = squared(nextLeft);
    if (nextCost <= cost || size < SETTLED) {
      isSettled = size < SETTLED;
      if (nextCost <= cost) [at, left, cost] = [next, nextLeft, nextCost];
      damping = damping < 1e-9 ? 0 : damping / 10;
      slopes = slopesOf(residuals, at, scales, left.length, loosest);
    } else damping = damping === 0 ? 1e-3 : damping * 10;
  }
  return { at, residuals: left, isSettled, ...spread(slopes, scales) };
}

/** The slopes taken apart: J = U S Vᵀ, singular values that are rounding left out. */
interface Slopes {
  readonly u: readonly (readonly number[])[];
  readonly s: readonly number[];
  readonly v: readonly (readonly number[])[];
}

function slopesOf(
  residuals: LeastSquaresProblem["residuals"],
  at: readonly number[],
  scales: readonly number[],
  rows: number,
  loosest: number,
): Slopes {
  if (rows === 0) return { u: [], s: [], v: at.map(() => []) };
  const columns = at.map((_, i) => {
    const moved = (by: number) =>
      residuals(at.map((value, k) => (k === i ? value + by * scales[i]! : value)));
    const [more, less] = [moved(DIFFERENCE), moved(-DIFFERENCE)];
    return more.map((value, row) => (value - less[row]!) / (2 * DIFFERENCE));
  });
  const svd = new SingularValueDecomposition(new Matrix(columns).transpose(), { autoTranspose: true });
  const all = svd.diagonal;
  const kept = all.flatMap((value, k) =>
    value > SINGULAR * Math.max(...all) && value * loosest > 1 ? [k] : [],
  );
  const [u, v] = [svd.leftSingularVectors, svd.rightSingularVectors];
  return {
    u: Array.from({ length: rows }, (_, row) => kept.map((k) => u.get(row, k))),
    s: kept.map((k) => all[k]!),
    v: at.map((_, i) => kept.map((k) => v.get(i, k))),
  };
}

/** The change of the unknowns, in scales, that takes the residuals down; damped by a share of the largest slope. */
function stepOf({ u, s, v }: Slopes, left: readonly number[], damping: number): number[] {
  const floor = damping * (s[0] ?? 0) ** 2;
  const along = s.map((value, k) => {
    const projected = left.reduce((sum, residual, row) => sum + residual * u[row]![k]!, 0);
    return (-projected * value) / (value * value + floor);
  });
  return v.map((row) => row.reduce((sum, value, k) => sum + value * along[k]!, 0));
}

function spread(
  { u, s, v }: Slopes,
  scales: readonly number[],
): Pick<LeastSquares, "covariance" | "isOpen" | "redundancy" | "told"> {
  const isOpen = v.map((row) => 1 - squared(row) > OPEN);
  const covariance = v.map((a, i) =>
    v.map((b, j) => {
      if (isOpen[i] || isOpen[j]) return 0;
      return a.reduce((sum, value, k) => sum + (value * b[k]!) / s[k]! ** 2, 0) * scales[i]! * scales[j]!;
    }),
  );
  const told = s.map((value, k) => ({ along: v.map((row) => row[k]!), within: 1 / value }));
  return { covariance, isOpen, told, redundancy: u.map((row) => Math.max(0, 1 - squared(row))) };
}

function squared(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

/**
 * The lower triangle L of a covariance L Lᵀ, row by row: it carries a ball of radius 1 to the ellipsoid of one standard
 * deviation. A direction without spread, or with less than none by rounding, has length 0.
 */
export function choleskyOf([[a], [b, d], [c, e, f]]: readonly [Vec3, Vec3, Vec3]): readonly [
  Vec3,
  Vec3,
  Vec3,
] {
  const root = (square: number) => Math.sqrt(Math.max(0, square));
  const share = (value: number, by: number) => (by > 0 ? value / by : 0);
  const l11 = root(a);
  const l21 = share(b, l11);
  const l31 = share(c, l11);
  const l22 = root(d - l21 * l21);
  const l32 = share(e - l31 * l21, l22);
  const l33 = root(f - l31 * l31 - l32 * l32);
  return [
    [l11, 0, 0],
    [l21, l22, 0],
    [l31, l32, l33],
  ];
}
