import type { Vec3 } from "../../geometry/vec.ts";
import type { Reading } from "../../setup/types/readingTypes.ts";
import type { Budget } from "../numeric/budget.ts";
import { inSigmas } from "./found.ts";
import type { PointMove, Suspect } from "./measured.ts";
import { type MeasureProblem, solveProblem } from "./measureProblem.ts";
import type { SolvedEquations } from "./solveEquations.ts";

/**
 * A standardized residual past this is looked into: one in a thousand sound readings is as far off (the w-test of Baarda, A
 * testing procedure for use in geodetic networks, 1968, with his level of 0.001; from memory).
 */
const SUSPECT = 3.29;

/** How many of the readings farthest off are left out on trial. */
const MOST_TRIALS = 6;

/** The same where there are so many numbers to be solved for that each trial takes long. */
const MANY_NUMBERS = 150;
const FEW_TRIALS = 2;

/** Sums of squares that differ by less than this share tell two readings not apart. */
const ALIKE = 0.02;

/** mm: a point that moves by less has not moved. */
const MOVED = 0.1;

/**
 * The reading most likely wrong: of those that are farthest off, the one without which the rest goes together best. Null =
 * all go together, or the budget ended before any was left out.
 */
export function suspectOf(problem: MeasureProblem, solved: SolvedEquations, budget: Budget): Suspect | null {
  const { equations } = problem;
  const worst = new Map<Reading, number>();
  equations.forEach(({ reading }, i) => {
    const off = inSigmas(solved, i) ?? 0;
    if (Math.abs(off) >= Math.abs(worst.get(reading) ?? 0)) worst.set(reading, off);
  });
  const byFar = [...worst].sort(([, a], [, b]) => Math.abs(b) - Math.abs(a));
  const most = Math.abs(byFar[0]?.[1] ?? 0);
  if (most < SUSPECT) return null;
  const trials = byFar
    .slice(0, solved.at.length > MANY_NUMBERS ? FEW_TRIALS : MOST_TRIALS)
    .filter(([, off]) => Math.abs(off) > most / 3)
    .flatMap(([reading, off]) => {
      if (budget.cut) return [];
      const left = solveProblem(problem, budget, (equation) => equation.reading !== reading);
      // A trial that was not solved tells nothing.
      return budget.cut ? [] : [{ reading, off, left, cost: squared(left.residuals) }];
    })
    .sort((a, b) => a.cost - b.cost);
  const [best, ...others] = trials;
  if (best === undefined) return null;
  const fell = squared(solved.residuals) - best.cost;
  const own = equations.filter(({ reading }) => reading === best.reading);
  return {
    reading: best.reading,
    inSigmas: best.off,
    wouldBe: own.length === 1 && "is" in best.reading ? own[0]!.value(best.left.at) : null,
    alike: others.filter(({ cost }) => cost - best.cost < ALIKE * fell).map(({ reading }) => reading),
    without: {
      mostSigmas: best.left.residuals.reduce(
        (sum, _, i) => Math.max(sum, Math.abs(inSigmas(best.left, i) ?? 0)),
        0,
      ),
      moves: movesBetween(problem, solved.at, best.left.at),
    },
  };
}

function movesBetween(
  { unknowns }: MeasureProblem,
  from: readonly number[],
  to: readonly number[],
): readonly PointMove[] {
  const by = (first: number): Vec3 => [
    to[first]! - from[first]!,
    to[first + 1]! - from[first + 1]!,
    to[first + 2]! - from[first + 2]!,
  ];
  const moves = [...unknowns.points()].flatMap(([point, first]): PointMove[] => {
    const left = by(first);
    const moved: PointMove[] = [{ point, side: "left", by: left }];
    if (!unknowns.hasRight(point)) return moved;
    const more = by(unknowns.more(point));
    return [
      ...moved,
      { point, side: "right", by: [left[0] + more[0], left[1] + more[1], left[2] + more[2]] },
    ];
  });
  const far = ({ by: [x, y, z] }: PointMove) => Math.hypot(x, y, z);
  return moves.filter((one) => far(one) > MOVED).sort((a, b) => far(b) - far(a));
}

function squared(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
