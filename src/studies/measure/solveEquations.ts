import type { Budget } from "../numeric/budget.ts";
import { leastSquares, type ToldDirection } from "../numeric/leastSquares.ts";
import type { Equation } from "./equations.ts";
import type { Tie } from "./knuckleTies.ts";

/** Steps of the first pass: it need not end, only lead home. */
const STEPS_HOME = 25;

/** Steps of the second: readings that go together need a few, and those that contradict each other are told by themselves. */
const MOST_STEPS = 60;

/** Microseconds that one reading's slope by one number takes, with its share of taking the slopes apart. */
const WORK = 2;

/** Numbers to be solved for, and what readings say of them. */
export interface EquationsProblem {
  readonly equations: readonly Equation[];
  readonly start: readonly number[];
  /** How far each number may be from its start, one standard deviation. */
  readonly within: readonly number[];
  /** What is assumed of several numbers together. */
  readonly ties: readonly Tie[];
}

export interface SolvedEquations {
  readonly at: readonly number[];
  /** What readings tell and, where they tell nothing better, how far the start may be off. */
  readonly covariance: readonly (readonly number[])[];
  /** The part of each number's own direction that no reading tells: rows and columns in the numbers' own `within`. */
  readonly open: readonly (readonly number[])[];
  /** Of each equation, over its standard deviation: value − is. */
  readonly residuals: readonly number[];
  /** Share of each equation's own variance that the others check, 0 (nothing does) to 1. */
  readonly redundancy: readonly number[];
  readonly isSettled: boolean;
}

/**
 * Weighted least squares. Numbers that nothing ties together are solved apart. First with every number weakly held to
 * where it began, and a knuckle to its shape, which leads a poor start home; then without, so that what readings tell is told by
 * them alone. A
 * direction that they tell no better than the start does is left where the first pass put it.
 * @param budget once it is spent the numbers stay as near as they came, and are not settled
 */
export function solveEquations(
  { equations, start, within, ties }: EquationsProblem,
  budget: Budget,
): SolvedEquations {
  const at = [...start];
  const open = start.map((_, i): number[] => start.map((_, k) => (i === k ? 1 : 0)));
  const covariance = start.map((_, i): number[] => start.map((_, k) => (i === k ? within[i]! ** 2 : 0)));
  const residuals = equations.map(() => 0);
  const redundancy = equations.map(() => 0);
  let isSettled = true;
  for (const { numbers, members } of connected(start.length, equations, ties)) {
    const own = members.map((i) => equations[i]!);
    const shapes = ties.filter(({ of }) => numbers.includes(of[0]!));
    const scales = numbers.map((i) => within[i]!);
    const values = (some: readonly number[]) => {
      numbers.forEach((i, k) => {
        at[i] = some[k]!;
      });
      return own.map(({ value, is, within: sigma }) => (value(at) - is) / sigma);
    };
    const from = numbers.map((i) => start[i]!);
    // Of a step, the slopes take most: every reading anew for every number, to either side.
    const isSpent = () => budget.isSpent(WORK * own.length * numbers.length);
    const held = leastSquares({
      residuals: (some) => [
        ...values(some),
        ...shapes.map(({ off }) => off(at)),
        ...some.map((value, k) => (value - from[k]!) / scales[k]!),
      ],
      start: from,
      scales,
      mostSteps: STEPS_HOME,
      isSpent,
    });
    const found = leastSquares({
      residuals: values,
      start: held.at,
      scales,
      loosest: 1,
      mostSteps: MOST_STEPS,
      isSpent,
    });
    values(found.at);
    isSettled &&= found.isSettled;
    members.forEach((i, k) => {
      residuals[i] = found.residuals[k]!;
      redundancy[i] = found.redundancy[k]!;
    });
    numbers.forEach((i, row) => {
      numbers.forEach((j, column) => {
        open[i]![j] = (row === column ? 1 : 0) - summed(found.told, row, column, () => 1);
        const spread = open[i]![j]! + summed(found.told, row, column, (direction) => direction.within ** 2);
        covariance[i]![j] = spread * within[i]! * within[j]!;
      });
    });
  }
  return { at, covariance, open, residuals, redundancy, isSettled };
}

function summed(
  told: readonly ToldDirection[],
  row: number,
  column: number,
  weight: (direction: ToldDirection) => number,
): number {
  return told.reduce((sum, one) => sum + one.along[row]! * one.along[column]! * weight(one), 0);
}

/** Numbers that readings tie together, and those readings. */
interface Connected {
  /** Positions of the numbers, rising. */
  readonly numbers: readonly number[];
  /** Positions of the equations, rising. */
  readonly members: readonly number[];
}

/** Equations and numbers in groups that have nothing to do with one another; numbers that nothing takes are in none. */
function connected(
  count: number,
  equations: readonly Equation[],
  ties: readonly Tie[],
): readonly Connected[] {
  const group = Array.from({ length: count }, (_, i) => i);
  const headOf = (i: number): number => {
    let head = i;
    while (group[head] !== head) head = group[head]!;
    group[i] = head;
    return head;
  };
  for (const { of } of [...equations, ...ties]) for (const i of of) group[headOf(i)] = headOf(of[0]!);
  const found = new Map<number, { numbers: number[]; members: number[] }>();
  for (const { of } of [...equations, ...ties]) found.set(headOf(of[0]!), { numbers: [], members: [] });
  for (const [i, { of }] of equations.entries()) found.get(headOf(of[0]!))!.members.push(i);
  for (let i = 0; i < count; i++) found.get(headOf(i))?.numbers.push(i);
  return [...found.values()];
}
