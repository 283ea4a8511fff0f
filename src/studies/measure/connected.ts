import type { Equation } from "./equations.ts";

/** Numbers that readings tie together, and those readings. */
interface Connected {
  /** Positions of the numbers, rising. */
  readonly numbers: readonly number[];
  /** Positions of the equations, rising. */
  readonly members: readonly number[];
}

/** Equations and numbers in groups that have nothing to do with one another; numbers that no equation takes are in none. */
export function connected(count: number, equations: readonly Equation[]): readonly Connected[] {
  const group = Array.from({ length: count }, (_, i) => i);
  const headOf = (i: number): number => {
    let head = i;
    while (group[head] !== head) head = group[head]!;
    group[i] = head;
    return head;
  };
  for (const { of } of equations) for (const i of of) group[headOf(i)] = headOf(of[0]!);
  const found = new Map<number, { numbers: number[]; members: number[] }>();
  equations.forEach(({ of }, i) => {
    const head = headOf(of[0]!);
    const one = found.get(head) ?? { numbers: [], members: [] };
    one.members.push(i);
    found.set(head, one);
  });
  for (let i = 0; i < count; i++) found.get(headOf(i))?.numbers.push(i);
  return [...found.values()];
}
