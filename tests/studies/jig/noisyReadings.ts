import type { JigReadings, ReadingKey } from "../../../src/setup/types/asBuiltTypes.ts";
import { DEFAULT_READING_ACCURACY as WITHIN } from "../../../src/setup/types/defaults.ts";
import { sigmaOf } from "../../../src/studies/jig/fitKnuckle.ts";

/** Normal numbers by Box and Muller from a small generator of whole numbers (mulberry32). */
export function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Readings as they are taken: each off by its own standard deviation at random. */
export function noisy(exact: JigReadings, normal: () => number): JigReadings {
  return Object.fromEntries(
    Object.entries(exact).map(([key, value]) => [
      key,
      value! + sigmaOf(key as ReadingKey, WITHIN) * normal(),
    ]),
  );
}
