import { normalQuantile } from "../numeric/normalQuantile.ts";
import { ScatteredPoints } from "../numeric/scatteredPoints.ts";

/** How the least of some numbers is spread. */
export interface LeastSpread {
  /** One standard deviation. */
  readonly sigma: number;
  /** How often each of them is the least, as a share of all. */
  readonly shares: readonly number[];
}

const DRAWS = 4096;
const SEED = 1;

/**
 * The spread of the least of normal numbers that go together: by draws that fill the space evenly, the same each time.
 * @param means of each; @param covariance of them, row by row
 */
export function leastOf(means: readonly number[], covariance: readonly (readonly number[])[]): LeastSpread {
  const count = means.length;
  const factor = rootOf(covariance);
  const points = new ScatteredPoints(count, SEED);
  const normal = new Float64Array(count);
  const times = means.map(() => 0);
  let [sum, squares] = [0, 0];
  for (let draw = 0; draw < DRAWS; draw++) {
    points.pointTo(normal, draw);
    for (let i = 0; i < count; i++) normal[i] = normalQuantile(normal[i]!);
    const values = means.map((mean, i) => factor[i]!.reduce((value, f, k) => value + f * normal[k]!, mean));
    const least = Math.min(...values);
    times[values.indexOf(least)]! += 1;
    const off = least - means[0]!;
    sum += off;
    squares += off * off;
  }
  const variance = (squares - (sum * sum) / DRAWS) / (DRAWS - 1);
  return { sigma: Math.sqrt(Math.max(0, variance)), shares: times.map((n) => n / DRAWS) };
}

/** Lower triangle L with L · Lᵀ = the covariance (Cholesky); what is told by others already has no part of its own. */
function rootOf(covariance: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const rows: number[][] = [];
  covariance.forEach((row, i) => {
    const made: number[] = [];
    for (let k = 0; k < i; k++) {
      const rest = row[k]! - made.reduce((sum, value, m) => sum + value * rows[k]![m]!, 0);
      made.push(rows[k]![k]! > 0 ? rest / rows[k]![k]! : 0);
    }
    const own = row[i]! - made.reduce((sum, value) => sum + value * value, 0);
    rows.push([...made, own > ROUNDING * row[i]! ? Math.sqrt(own) : 0]);
  });
  return rows;
}

/** Share of a variance that is rounding. */
const ROUNDING = 1e-9;
