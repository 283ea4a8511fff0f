import type { SectionField } from "./sectionField.ts";

/** mm. Radii for which bends are tabled: half diagonals of the cubes cut, a little more; a larger one is not. */
const RADII = [1.8, 3.6, 7.2, 14.4, 28.8, 57.6] as const;
/** Places looked at across a radius. */
const PER_RADIUS = 3;

/** Bends about the places of a grid of the meridian plane, one radius. */
interface Level {
  readonly radius: number;
  readonly x0: number;
  readonly r0: number;
  readonly xs: number;
  readonly rs: number;
  readonly perStep: number;
  readonly below: Float32Array;
  readonly above: Float32Array;
}

/**
 * How far the section's distance may leave its tangent within a radius of a place, tabled. Where the section is
 * straight that is next to nothing; beside a corner the distance lies above its tangent, in a groove and
 * inside the section below. What a distance will be nearby rests on these instead of a guess.
 */
export class SectionBends {
  /** What `look` found, mm ≥ 0: how far below the tangent, how far above. */
  readonly found = new Float64Array(2);
  private readonly levels: readonly Level[];

  /** @param least the smallest radius that will be asked for, mm. */
  constructor(field: SectionField, least: number) {
    this.levels = RADII.filter((radius) => radius >= least).map((radius) => levelOf(field, radius));
  }

  /**
   * @param x along the wheel axis from the wheel center, mm; @param r ≥ 0 from the axis; @param radius of the
   * ball in space about the place, mm. The straight way in it bends about the axis, which is reckoned in.
   */
  look(x: number, r: number, radius: number): void {
    const most = 2 * radius;
    this.found[0] = most;
    this.found[1] = most;
    const { levels } = this;
    let at = 0;
    while (at < levels.length && levels[at]!.radius < radius) at++;
    if (at === levels.length || r <= radius) return;
    const level = levels[at]!;
    const i = Math.floor((x - level.x0) * level.perStep);
    const j = Math.floor((r - level.r0) * level.perStep);
    if (!(i >= 0 && j >= 0 && i < level.xs && j < level.rs)) return;
    const round = (0.5 * radius * radius) / (r - radius);
    const k = j * level.xs + i;
    this.found[0] = Math.min(most, level.below[k]! + round);
    this.found[1] = Math.min(most, level.above[k]! + round);
  }
}

function levelOf(field: SectionField, radius: number): Level {
  const step = radius / PER_RADIUS;
  const { low, high } = field.bounds;
  // Nodes of the grid reach a radius past the places answered for.
  const pad = PER_RADIUS + 2;
  const margin = radius + 4;
  const x0 = low[0] - margin;
  const r0 = Math.max(0, low[1] - margin);
  const xs = Math.ceil((high[0] + margin - x0) / step);
  const rs = Math.ceil((high[1] + margin - r0) / step);
  const width = xs + 1 + 2 * pad;
  const height = rs + 1 + 2 * pad;
  const values = new Float32Array(width * height);
  const slopes = new Float32Array(2 * width * height);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      field.look(x0 + (i - pad) * step, Math.max(0, r0 + (j - pad) * step));
      const k = j * width + i;
      values[k] = field.found[0]!;
      slopes[2 * k] = field.found[1]! * step;
      slopes[2 * k + 1] = field.found[2]! * step;
    }
  }
  const disk = diskOf(width);
  const low4 = new Float32Array(width * height);
  const high4 = new Float32Array(width * height);
  for (let j = pad; j <= rs + pad; j++) {
    for (let i = pad; i <= xs + pad; i++) {
      const k = j * width + i;
      let below = 0;
      let above = 0;
      for (let n = 0; n < disk.length; n += 3) {
        const off =
          values[k + disk[n]!]! -
          values[k]! -
          slopes[2 * k]! * disk[n + 1]! -
          slopes[2 * k + 1]! * disk[n + 2]!;
        if (off < below) below = off;
        else if (off > above) above = off;
      }
      low4[k] = -below;
      high4[k] = above;
    }
  }
  const cells = (nodes: Float32Array) => {
    const out = new Float32Array(xs * rs);
    for (let j = 0; j < rs; j++) {
      for (let i = 0; i < xs; i++) {
        const k = (j + pad) * width + i + pad;
        out[j * xs + i] = Math.max(nodes[k]!, nodes[k + 1]!, nodes[k + width]!, nodes[k + width + 1]!);
      }
    }
    return out;
  };
  return { radius, x0, r0, xs, rs, perStep: 1 / step, below: cells(low4), above: cells(high4) };
}

/** Nodes within a radius and the half diagonal of a step: how far on in the grid, steps along x, along r. */
function diskOf(width: number): Int32Array {
  const most = PER_RADIUS + Math.SQRT1_2;
  const out: number[] = [];
  for (let j = -PER_RADIUS; j <= PER_RADIUS; j++) {
    for (let i = -PER_RADIUS; i <= PER_RADIUS; i++) {
      if (i * i + j * j <= most * most) out.push(j * width + i, i, j);
    }
  }
  return Int32Array.from(out);
}
