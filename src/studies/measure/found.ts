import type { Vec3 } from "../../geometry/vec.ts";
import { bodyPointOf } from "../../setup/blocks/readings/readingPoint.ts";
import type { PointName, Reading } from "../../setup/types/readingTypes.ts";
import type { Equation } from "./equations.ts";
import type {
  Coordinate,
  Measured,
  MeasuredPoint,
  MeasuredSize,
  ReadingResidual,
  Standing,
} from "./measured.ts";
import type { MeasureProblem } from "./measureProblem.ts";
import type { SolvedEquations } from "./solveEquations.ts";
import type { Side, Unknowns } from "./unknowns.ts";

/** Share of where a coordinate could lie before any reading that is left open: below it readings tell all of it. */
const TOLD = 0.01;

/** Share of it that is still open above which readings tell next to nothing. */
const UNTOLD = 0.95;

/** Share of an assumed coordinate's first uncertainty above which the readings that tell it hardly help. */
const HARDLY = 0.2;

/** Redundancy below which a residual is nothing but what rounding leaves of a reading that no other checks. */
const UNCHECKED = 1e-6;

const AXES = [0, 1, 2] as const;

/** The numbers that make up a coordinate: the left one, and of a right one how much more it is. */
function parts(unknowns: Unknowns, point: PointName, side: Side, axis: number): readonly number[] {
  const first = unknowns.left(point) + axis;
  return side === "right" ? [first, unknowns.more(point) + axis] : [first];
}

/** Left points in the order they came in, each followed by the right one where that was read. */
function rowsOf(unknowns: Unknowns): readonly { readonly point: PointName; readonly side: Side }[] {
  return [...unknowns.points().keys()].flatMap((point) => [
    { point, side: "left" as const },
    ...(unknowns.hasRight(point) ? [{ point, side: "right" as const }] : []),
  ]);
}

function spread(
  matrix: readonly (readonly number[])[],
  rows: readonly number[],
  columns: readonly number[],
): number {
  return rows.reduce((sum, i) => sum + columns.reduce((row, k) => row + matrix[i]![k]!, 0), 0);
}

export function pointsFound(
  { unknowns, start }: MeasureProblem,
  solved: SolvedEquations,
): readonly MeasuredPoint[] {
  const points = rowsOf(unknowns).map(({ point, side }): MeasuredPoint => {
    const of = AXES.map((axis) => parts(unknowns, point, side, axis));
    const covariance = of.map((rows) => of.map((columns) => spread(solved.covariance, rows, columns)));
    return {
      point,
      side,
      at: of.map((rows) => rows.reduce((sum, i) => sum + solved.at[i]!, 0)) as unknown as Vec3,
      within: AXES.map((axis) => Math.sqrt(Math.max(0, covariance[axis]![axis]!))) as unknown as Vec3,
      covariance: covariance as unknown as MeasuredPoint["covariance"],
      standing: of.map((rows) => standingOf(unknowns, solved, rows)) as unknown as MeasuredPoint["standing"],
    };
  });
  return carriedAlong(points, (point, axis) => start[unknowns.left(point) + axis]!);
}

function standingOf({ list, within }: Unknowns, solved: SolvedEquations, rows: readonly number[]): Standing {
  const before = Math.sqrt(rows.reduce((sum, i) => sum + within[i]! ** 2, 0));
  const open = Math.sqrt(
    Math.max(
      0,
      rows.reduce(
        (sum, i) => sum + rows.reduce((all, k) => all + solved.open[i]![k]! * within[i]! * within[k]!, 0),
        0,
      ),
    ),
  );
  const { origin } = list[rows[0]!]!;
  const untold: Standing = origin === "given" ? "given" : "assumed";
  if (open > UNTOLD * before) return untold;
  const now = Math.sqrt(Math.max(0, spread(solved.covariance, rows, rows)));
  if (open < TOLD * before && (origin !== "assumed" || now < HARDLY * before)) return "measured";
  return now > UNTOLD * before ? untold : "partly";
}

/** Points of a body part that nobody read, moved as those of it that were: an arch keeps its shape. */
function carriedAlong(
  points: readonly MeasuredPoint[],
  began: (point: PointName, axis: number) => number,
): readonly MeasuredPoint[] {
  const shifts = new Map<string, number[][]>();
  for (const { point, side, at, standing } of points) {
    const part = bodyPointOf(point);
    if (part === null) continue;
    const key = `${side}\n${part.part}`;
    const found = shifts.get(key) ?? [[], [], []];
    for (const axis of AXES)
      if (standing[axis] !== "assumed") found[axis]!.push(at[axis]! - began(point, axis));
    shifts.set(key, found);
  }
  return points.map((one) => {
    const part = bodyPointOf(one.point);
    const found = part && shifts.get(`${one.side}\n${part.part}`);
    if (!found) return one;
    const at = AXES.map((axis) => {
      const moved = found[axis]!;
      if (one.standing[axis] !== "assumed" || moved.length === 0) return one.at[axis];
      return one.at[axis] + moved.reduce((sum, value) => sum + value, 0) / moved.length;
    }) as unknown as Vec3;
    return { ...one, at };
  });
}

export function sizesFound(unknowns: Unknowns, solved: SolvedEquations): readonly MeasuredSize[] {
  return [...unknowns.sizes()].map(([size, i]) => ({
    size,
    at: solved.at[i]!,
    within: Math.sqrt(solved.covariance[i]![i]!),
  }));
}

/** The covariance of all coordinates and sizes together. */
export function coordinatesOf(
  unknowns: Unknowns,
  solved: SolvedEquations,
): Pick<Measured, "coordinates" | "covariance"> {
  const rows = [
    ...rowsOf(unknowns).flatMap(({ point, side }) =>
      AXES.map((axis) => ({
        coordinate: { point, side, axis } as Coordinate,
        of: parts(unknowns, point, side, axis),
      })),
    ),
    ...[...unknowns.sizes()].map(([size, i]) => ({ coordinate: { size } as Coordinate, of: [i] })),
  ];
  return {
    coordinates: rows.map(({ coordinate }) => coordinate),
    covariance: rows.map((a) => rows.map((b) => spread(solved.covariance, a.of, b.of))),
  };
}

/** Each equation's residual, + = read more than the points give, over its own standard deviation; null = unchecked. */
export function inSigmas({ residuals, redundancy }: SolvedEquations, i: number): number | null {
  return redundancy[i]! > UNCHECKED ? -residuals[i]! / Math.sqrt(redundancy[i]!) : null;
}

export function residualsOf(
  readings: readonly Reading[],
  equations: readonly Equation[],
  solved: SolvedEquations,
): readonly ReadingResidual[] {
  return readings.map((reading) => {
    const of = equations.flatMap((equation, i) => (equation.reading === reading ? [i] : []));
    const off = of.map((i) => -solved.residuals[i]! * equations[i]!.within);
    const sigmas = of.map((i) => inSigmas(solved, i));
    const worst = of.reduce((a, _, k) => (Math.abs(sigmas[k] ?? 0) > Math.abs(sigmas[a] ?? 0) ? k : a), 0);
    return { reading, off: off[worst] ?? 0, inSigmas: sigmas[worst] ?? null };
  });
}
