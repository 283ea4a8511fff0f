import { MAX_DEPTH } from "./limits.ts";

/** Whether objects and lists are nested deeper than `MAX_DEPTH` (which also ends a walk round a circle). */
export function isTooDeep(value: unknown, depthLeft = MAX_DEPTH): boolean {
  if (typeof value !== "object" || value === null) return false;
  if (depthLeft === 0) return true;
  const inner: readonly unknown[] = Array.isArray(value) ? value : Object.values(value);
  return inner.some((item) => isTooDeep(item, depthLeft - 1));
}
