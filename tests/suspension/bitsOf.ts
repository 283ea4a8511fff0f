import type { PoseResult } from "../../src/suspension/solvePose.ts";

/** Every number of a pose written out in full (NaN, infinities and −0 too), for comparing bit for bit. */
export function bitsOf(pose: PoseResult): string {
  return JSON.stringify(pose, (_, value: unknown) => {
    if (value instanceof Float64Array) return Array.from(value, (v) => (Object.is(v, -0) ? "-0" : String(v)));
    return typeof value === "number" ? (Object.is(value, -0) ? "-0" : String(value)) : value;
  });
}
