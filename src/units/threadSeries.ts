/**
 * Threads an inch of the Unified series by size in inches: ASME B1.1, table of standard series, from memory. A pitch that
 * is in none of them is a special (UNS) or of a constant-pitch series (UN).
 */
export const UNIFIED_SERIES: Readonly<Record<"UNC" | "UNF" | "UNEF", ReadonlyMap<number, number>>> = {
  // biome-ignore format: a table
  UNC: new Map([
    ...([[0.25, 20], [0.3125, 18], [0.375, 16], [0.4375, 14], [0.5, 13], [0.5625, 12], [0.625, 11]] as const),
    ...([[0.75, 10], [0.875, 9], [1, 8], [1.125, 7], [1.25, 7], [1.375, 6], [1.5, 6]] as const),
  ]),
  // biome-ignore format: a table
  UNF: new Map([
    ...([[0.25, 28], [0.3125, 24], [0.375, 24], [0.4375, 20], [0.5, 20], [0.5625, 18], [0.625, 18]] as const),
    ...([[0.75, 16], [0.875, 14], [1, 12], [1.125, 12], [1.25, 12], [1.375, 12], [1.5, 12]] as const),
  ]),
  // biome-ignore format: a table
  UNEF: new Map([
    ...([[0.25, 32], [0.3125, 32], [0.375, 32], [0.4375, 28], [0.5, 28], [0.5625, 24], [0.625, 24]] as const),
    ...([[0.75, 20], [0.875, 20], [1, 20], [1.125, 18], [1.25, 18], [1.375, 18], [1.5, 18]] as const),
  ]),
};

/** Threads an inch of the numbered sizes, whose diameter is 0.060 in + 0.013 in a number: ASME B1.1, from memory. */
export const NUMBERED_SIZES: ReadonlyMap<number, readonly number[]> = new Map([
  [0, [80]],
  [1, [64, 72]],
  [2, [56, 64]],
  [3, [48, 56]],
  [4, [40, 48]],
  [5, [40, 44]],
  [6, [32, 40]],
  [8, [32, 36]],
  [10, [24, 32]],
  [12, [24, 28, 32]],
]);

/** Inches, of a numbered size. */
export function numberedDiameter(number: number): number {
  return (60 + 13 * number) / 1000;
}

/** Pitch of the coarse series by diameter, mm: ISO 261, from memory. A metric callout without a pitch means it. */
// biome-ignore format: a table
export const METRIC_COARSE: ReadonlyMap<number, number> = new Map([
  ...([[3, 0.5], [4, 0.7], [5, 0.8], [6, 1], [8, 1.25], [10, 1.5], [12, 1.75], [14, 2], [16, 2]] as const),
  ...([[18, 2.5], [20, 2.5], [22, 2.5], [24, 3], [27, 3], [30, 3.5], [33, 3.5], [36, 4]] as const),
]);
