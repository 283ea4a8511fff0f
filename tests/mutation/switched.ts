import type { Mutant } from "./operators.ts";

/** What a switched source asks of which mutant is on, and notes of which it came by. */
export interface Switch {
  /** Number of the mutant that is on; −1 = none: the source as it is. */
  active: number;
  readonly seen: Uint8Array;
}

export interface Numbered {
  readonly number: number;
  readonly mutant: Mutant;
}

/** A source that holds some of its mutants, each behind a switch. Of mutants in one another the outer holds the inner. */
export function switched(text: string, mutants: readonly Numbered[]): string {
  const sorted = [...mutants].sort((a, b) => a.mutant.start - b.mutant.start || b.mutant.end - a.mutant.end);
  const write = (from: number, to: number, inside: readonly Numbered[]): string => {
    let out = "";
    let at = from;
    for (let i = 0; i < inside.length; ) {
      const { number, mutant } = inside[i]!;
      let next = i + 1;
      while (next < inside.length && inside[next]!.mutant.start < mutant.end) next++;
      const original = write(mutant.start, mutant.end, inside.slice(i + 1, next));
      const asked = `(globalThis.mutation.seen[${number}] = 1, globalThis.mutation.active === ${number})`;
      out += `${text.slice(at, mutant.start)}((${asked}) ? (${mutant.to}) : (${original}))`;
      at = mutant.end;
      i = next;
    }
    return out + text.slice(at, to);
  };
  return write(0, text.length, sorted);
}
