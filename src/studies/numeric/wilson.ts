import { normalQuantile } from "./normalQuantile.ts";

/** Between what a share lies, with the confidence asked for. */
export interface ShareInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * Wilson's score interval of a share of which so many of `of` were counted (E. B. Wilson, J. Am. Stat. Assoc. 22, 1927), as
 * for draws at random. Also where all or none were.
 * @param confidence strictly between 0 and 1
 */
export function wilsonInterval(counted: number, of: number, confidence: number): ShareInterval {
  if (of === 0) return { low: 0, high: 1 };
  const z = normalQuantile(0.5 + 0.5 * confidence);
  const share = counted / of;
  const middle = share + (z * z) / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of));
  const whole = 1 + (z * z) / of;
  return { low: Math.max(0, (middle - half) / whole), high: Math.min(1, (middle + half) / whole) };
}
