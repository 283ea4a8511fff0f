/** mm, rad, share of lock. The two sides of a mirrored truck differ by rounding alone. */
const ROUNDING = 1e-6;

/** mm, rad. Two exact numbers this near each other read the same with any number of digits shown. */
const READ = 1e-4;

/** mm, rad. Two numbers that were searched for may differ by what the searches leave open. */
const FOUND = { length: 0.05, angle: 1e-3 } as const;

/** Whether both sides do the very same, rounding aside. */
export function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) < ROUNDING;
}

/** Whether two exact numbers read the same. */
export function readsAlike(a: number, b: number): boolean {
  return Math.abs(a - b) < READ;
}

/** Whether two numbers that were searched for are one to any tape or gauge. */
export function isFoundAlike(a: number, b: number, measure: keyof typeof FOUND): boolean {
  return Math.abs(a - b) < FOUND[measure];
}
