import { GAP, GAP_ROW } from "../../gaps/partGap.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW } from "../../suspension/poseRow.ts";
import type { Model } from "../model/model.ts";
import { type Pair, pairGapTo, pairMotion } from "../model/pairs.ts";

/**
 * mm. A pair is asked for its gap even where it is farther than the worst by this much: it costs little more than to
 * hear that it is farther, and lasts for many poses. A quarter of a wheel's radius does best on the demo truck. Not
 * so once something is pressed in: how deep something else is pressed is dear to know.
 */
const MARGIN = 80;

// Leaf scratch of `worst`.
const other = new Float64Array(GAP_ROW);

/** mm. Added to what a gap can be at most, so that rounding and the gap's own tolerance cannot hide it. */
const BEAT_SLACK = 0.01;

/**
 * The pairs of one side whose gap changes with the pose, followed from pose to pose: of each is kept what its gap
 * was at least, and where. A pair whose gap cannot have shrunk below what matters since then (`pairMotion`) is not
 * looked at again, so near poses cost little more than the one pair that decides. Answers do not depend on the
 * order of the poses beyond the tolerance of a gap.
 */
export class PairTrack {
  /** Each pair's place in `model.pairs`. */
  readonly numbers: Int16Array;
  /** A `GAP` row, left-hand frame of the side: what `worst` or `below` found. */
  readonly row = new Float64Array(GAP_ROW);
  private readonly pairs: readonly Pair[];
  /** Of each pair: its gap where it was seen last, or what it is at least there; 1 = the gap itself. */
  private readonly least: Float64Array;
  private readonly exact: Uint8Array;
  private readonly seen: Float64Array;
  /** The pair that decided last. */
  private lead = 0;

  constructor(model: Model, side: Side) {
    const numbers: number[] = [];
    model.pairs.forEach((pair, i) => {
      if (pair.side === side && pair.kind !== "together") numbers.push(i);
    });
    this.numbers = Int16Array.from(numbers);
    this.pairs = numbers.map((i) => model.pairs[i]!);
    this.least = new Float64Array(numbers.length).fill(Number.NEGATIVE_INFINITY);
    this.exact = new Uint8Array(numbers.length);
    this.seen = new Float64Array(numbers.length * POSE_ROW);
  }

  /**
   * The worst gap of all pairs at a pose (a row of `poseRowTo` at `poseAt`); `row` holds it with its points.
   * @returns the pair's place in `model.pairs`, −1 when there is no pair: `row[GAP.gap]` is then +Infinity.
   */
  worst(pose: Float64Array, poseAt: number): number {
    const { pairs, least, row } = this;
    const count = pairs.length;
    if (count === 0) {
      row[GAP.gap] = Number.POSITIVE_INFINITY;
      return -1;
    }
    let worst = this.lead;
    let best = this.gapOfLead(pose, poseAt);
    for (let k = 0; k < count; k++) {
      if (k === this.lead) continue;
      const pair = pairs[k]!;
      if (least[k]! - pairMotion(pair, this.seen, k * POSE_ROW, pose, poseAt) >= best) continue;
      const beat = best < 0 ? best : best + MARGIN;
      const gap = pairGapTo(other, 0, pair, pose, poseAt, beat);
      this.keep(k, gap, gap < beat, pose, poseAt);
      if (!(gap < best)) continue;
      best = gap;
      worst = k;
      for (let i = 0; i < GAP_ROW; i++) row[i] = other[i]!;
    }
    this.lead = worst;
    return this.numbers[worst]!;
  }

  /**
   * The first pair found whose gap at a pose is below its own `limits` (one for each pair, in the order of
   * `numbers`), the last offender first; `row` holds its gap and points. @returns its place among the pairs, or −1.
   */
  below(limits: Float64Array, pose: Float64Array, poseAt: number): number {
    const { pairs, least, row } = this;
    const count = pairs.length;
    for (let i = 0; i < count; i++) {
      const k = i === 0 ? this.lead : i <= this.lead ? i - 1 : i;
      const pair = pairs[k]!;
      const limit = limits[k]!;
      if (least[k]! - pairMotion(pair, this.seen, k * POSE_ROW, pose, poseAt) >= limit) continue;
      const beat = limit + MARGIN;
      const gap = pairGapTo(row, 0, pair, pose, poseAt, beat);
      this.keep(k, gap, gap < beat, pose, poseAt);
      if (gap < limit) {
        this.lead = k;
        return k;
      }
    }
    return -1;
  }

  /** A pair of this side, by its place among the pairs. */
  pair(k: number): Pair {
    return this.pairs[k]!;
  }

  private gapOfLead(pose: Float64Array, poseAt: number): number {
    const k = this.lead;
    const pair = this.pairs[k]!;
    let gap = Number.POSITIVE_INFINITY;
    let beat = Number.POSITIVE_INFINITY;
    // Knowing what it can be at most rules out far pieces of a large part.
    if (this.exact[k] === 1) {
      beat = this.least[k]! + pairMotion(pair, this.seen, k * POSE_ROW, pose, poseAt) + BEAT_SLACK;
      gap = pairGapTo(this.row, 0, pair, pose, poseAt, beat);
    }
    if (!(gap < beat)) gap = pairGapTo(this.row, 0, pair, pose, poseAt);
    this.keep(k, gap, true, pose, poseAt);
    return gap;
  }

  private keep(k: number, gap: number, exact: boolean, pose: Float64Array, poseAt: number): void {
    this.least[k] = gap;
    this.exact[k] = exact ? 1 : 0;
    const { seen } = this;
    const at = k * POSE_ROW;
    for (let i = 0; i < POSE_ROW; i++) seen[at + i] = pose[poseAt + i]!;
  }
}

/** What rides together and stands nearest on one side: its place in `model.pairs` and its gap, mm; −1 and +Infinity without any. */
export function leastTogether(model: Model, side: Side): { readonly pair: number; readonly gap: number } {
  let pair = -1;
  let gap = Number.POSITIVE_INFINITY;
  for (const [i, each] of model.pairs.entries()) {
    if (each.side !== side || each.kind !== "together" || !(each.row[GAP.gap]! < gap)) continue;
    pair = i;
    gap = each.row[GAP.gap]!;
  }
  return { pair, gap };
}
