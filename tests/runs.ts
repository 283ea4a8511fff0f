import { inject } from "vitest";

declare module "vitest" {
  interface ProvidedContext {
    /** Whether samples are as large as they get: `npm run test:long`. */
    isLong: boolean;
  }
}

/**
 * How many of a seeded sample are looked at: fewer on every change, all of them in `npm run test:long`, which runs the same
 * claims. The few are the first of the many.
 */
export function runs(usual: number, long: number): number {
  return inject("isLong") ? long : usual;
}

/** Of cases that are looked at once each, the first few on every change, in the long run the others. */
export function ofThisRun<T>(all: readonly T[], few: number): readonly T[] {
  return all.slice(runs(0, few), runs(few, all.length));
}
