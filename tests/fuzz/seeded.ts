/** Random choices that a seed repeats. */
export interface Seeded {
  /** 0 ≤ x < 1. */
  readonly next: () => number;
  readonly between: (least: number, most: number) => number;
  /** A whole number, 0 … count − 1. */
  readonly below: (count: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  readonly chance: (share: number) => boolean;
}

/** A 32-bit counter hashed (the finalizer of MurmurHash3, from memory): the same numbers on every machine. */
export function seeded(seed: number): Seeded {
  let state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b);
  const next = (): number => {
    state = (state + 0x9e3779b9) | 0;
    let h = state ^ (state >>> 16);
    h = Math.imul(h, 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32;
  };
  const below = (count: number): number => Math.floor(next() * count);
  return {
    next,
    between: (least, most) => least + (most - least) * next(),
    below,
    pick: (from) => from[below(from.length)]!,
    chance: (share) => next() < share,
  };
}
