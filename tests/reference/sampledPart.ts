import type { PartInput } from "../../src/gaps/partShape.ts";
import { addScaled, sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";

/** A bit of a part as a map from the unit interval, square or cube onto it. */
interface Patch {
  readonly dimensions: 1 | 2 | 3;
  /** Size, mm, along each parameter: no point moves farther than that when the parameter goes from 0 to 1. */
  readonly sizes: readonly number[];
  readonly at: (u: number, v: number, w: number) => Vec3;
}

/** The least value found on a part. */
export interface SampledLeast {
  /** Of the grid: above the true least by at most `step`, never below. */
  readonly coarse: number;
  /** No point of the part is farther than this from a grid point, mm; so the error of a 1-Lipschitz function. */
  readonly step: number;
  /** After local search from the best grid points: closer, and still never below the true least. */
  readonly refined: number;
}

const size = (a: Vec3, b: Vec3) => Math.hypot(...sub(a, b));

function patchesOf(part: PartInput): Patch[] {
  if (part.kind === "box") {
    const sizes = part.max.map((high, i) => high - part.min[i]!);
    const at = (u: number, v: number, w: number): Vec3 => [
      part.min[0] + u * sizes[0]!,
      part.min[1] + v * sizes[1]!,
      part.min[2] + w * sizes[2]!,
    ];
    return [{ dimensions: 3, sizes, at }];
  }
  if (part.kind === "path") {
    const ends = part.points.length === 1 ? [part.points[0]!, part.points[0]!] : part.points;
    return ends.slice(1).map((to, i): Patch => {
      const from = ends[i]!;
      return { dimensions: 1, sizes: [size(from, to)], at: (u) => addScaled(from, sub(to, from), u) };
    });
  }
  return Array.from({ length: part.triangles.length / 3 }, (_, i): Patch => {
    const [a, b, c] = [0, 1, 2].map((corner) =>
      vecAt(part.positions, 3 * part.triangles[3 * i + corner]!),
    ) as [Vec3, Vec3, Vec3];
    // A square drawn together to one corner at u = 0.
    return {
      dimensions: 2,
      sizes: [Math.max(size(a, b), size(a, c)), size(b, c)],
      at: (u, v) => addScaled(addScaled(a, sub(b, a), u), sub(c, b), u * v),
    };
  });
}

/** A repeatable stream of numbers in [0, 1) (Park and Miller's minimal standard generator, 1988, from memory). */
function stream(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Grid points along one side of a patch of that many dimensions. */
const GRID = [0, 161, 41, 17] as const;
/** Local searches started, from the best grid points. */
const STARTS = 4;
/** Random trials around the best point before the search draws closer. */
const TRIALS = [0, 10, 24, 48] as const;

/**
 * The least of `f` (1-Lipschitz, mm per mm) over the points of a part, less the radius of a path: a solid
 * box with all its inside, a mesh as its surface. Sampling can only miss the least, so both answers are
 * upper bounds; `coarse − step` is a lower one.
 */
export function sampledLeast(part: PartInput, f: (point: Vec3) => number): SampledLeast {
  const radius = part.kind === "path" ? part.radius : 0;
  let coarse = Number.POSITIVE_INFINITY;
  let step = 0;
  const starts: { value: number; patch: Patch; at: number[] }[] = [];
  for (const patch of patchesOf(part)) {
    const count = GRID[patch.dimensions];
    const [n, m, k] = [count, patch.dimensions > 1 ? count : 1, patch.dimensions > 2 ? count : 1];
    step = Math.max(step, Math.hypot(...patch.sizes.map((s) => (0.5 * s) / (count - 1))));
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < m; j++) {
        for (let l = 0; l < k; l++) {
          const at = [i / (n - 1), m > 1 ? j / (m - 1) : 0, k > 1 ? l / (k - 1) : 0];
          const value = f(patch.at(at[0]!, at[1]!, at[2]!)) - radius;
          coarse = Math.min(coarse, value);
          if (starts.length < STARTS || value < starts.at(-1)!.value) {
            // One start a neighborhood: the better of two near ones stays.
            const near = starts.findIndex(
              (s) => s.patch === patch && s.at.every((x, d) => Math.abs(x - at[d]!) < 3.5 / (count - 1)),
            );
            if (near >= 0 && starts[near]!.value <= value) continue;
            if (near >= 0) starts.splice(near, 1);
            starts.push({ value, patch, at });
            starts.sort((a, b) => a.value - b.value);
            if (starts.length > STARTS) starts.pop();
          }
        }
      }
    }
  }
  let refined = coarse;
  for (const start of starts) {
    const better = localSearch(start.patch, (point) => f(point) - radius, start.at, start.value);
    refined = Math.min(refined, better);
  }
  return { coarse, step, refined };
}

/** Random local search in a shrinking window, down to a nanometer. Never worse than where it starts. */
function localSearch(
  patch: Patch,
  f: (point: Vec3) => number,
  from: readonly number[],
  value: number,
): number {
  const { dimensions, sizes } = patch;
  const random = stream(20_011);
  const at = [...from];
  let best = value;
  let window = 2 / (GRID[dimensions] - 1);
  const largest = Math.max(...sizes, 1e-9);
  while (window * largest > 1e-6) {
    let moved = false;
    for (let trial = 0; trial < TRIALS[dimensions]; trial++) {
      const next = at.map((x, d) =>
        d < dimensions ? Math.min(1, Math.max(0, x + window * (2 * random() - 1))) : 0,
      );
      const found = f(patch.at(next[0]!, next[1]!, next[2]!));
      if (found < best) {
        best = found;
        for (let d = 0; d < 3; d++) at[d] = next[d]!;
        moved = true;
      }
    }
    if (!moved) window *= 0.6;
  }
  return best;
}
