import { GAP_ROW } from "../../gaps/partGap.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import type { PassedLimit } from "../limits/keptPoses.ts";
import { limitsPassed, limitTravel } from "../limits/limitsPassed.ts";
import type { Model, ModelResult } from "../model/model.ts";
import { type Pair, pairGapTo } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { type CheckEntry, DEFAULT_TOLERANCE, searchPair, searchPairBelow } from "../reports/pairSearch.ts";
import { rangesOf, type SideRange } from "../search/sideRange.ts";
import type { FieldEffect } from "./fieldEffect.ts";
import { allLimits, closingLimit, passedAnywhere } from "./fieldLimits.ts";
import { armsOfBoth, type TravelArms, travelArms, withTravelOf } from "./fieldRanges.ts";
import { OtherBetween } from "./otherBetween.ts";
import { type Setting, type TruckToVary, truckWith } from "./truckOverField.ts";
import type { WindowField } from "./windowField.ts";
import type { Closer, TooNear, Unfinished } from "./windowTypes.ts";

/** What is proven of one pair, or of the limits, about the middle of a stretch of the field; mm or radians. */
export interface Stretch {
  /** Everything within this of the middle keeps its allowance; 0 = nothing is proven. */
  readonly keeps: number;
  /** Within this of the middle something is in the way. */
  readonly misses: number;
  readonly by: Closer | null;
}

/** A truck with the field at one value, with its poses. */
interface At {
  readonly model: Model;
  readonly arms: TravelArms;
}

const NOTHING: Stretch = { keeps: 0, misses: 0, by: null };

/** All poses between two arm angles. */
const OPEN = { steerLow: -1, steerHigh: 1, start: null } as const;

const RANGES_KEPT = 4;

export function tooNear({ part, side, travel, steer, gap, together }: CheckEntry): TooNear {
  return { kind: "part", part, side, travel, steer, gap, ...(together ? { together } : {}) };
}

/** Looks for what is too near with a field at its values. Trucks are put together once a value. */
export class FieldSearch {
  private readonly trucks = new Map<number, ModelResult>();
  private readonly poses = new Map<number, At>();
  private readonly ranges = new Map<number, Readonly<Record<Side, SideRange>>>();
  private readonly passed = new Map<number, readonly PassedLimit[]>();
  /** No limit and no other wheel takes a pose away at any value. */
  private isOpen = false;
  /** Nothing was in the way at the value looked at last. */
  private wasClear = false;
  private passedAll: readonly PassedLimit[] | null = null;
  private readonly others: Partial<Record<Side, OtherBetween>> = {};

  constructor(
    readonly truck: TruckToVary,
    readonly field: WindowField,
    readonly effect: FieldEffect | null,
    readonly budget: Budget,
    /** Other fields that stand at other values throughout. */
    private readonly settings: readonly Setting[] = [],
  ) {}

  /** The truck at a value, or what does not go together there. */
  at(value: number): ModelResult {
    const known = this.trucks.get(value);
    if (known !== undefined) return known;
    const made = truckWith(this.truck, [...this.settings, [this.field, value]]);
    this.trucks.set(value, made);
    return made;
  }

  /** The same field with one more at another value throughout. */
  with(field: WindowField, value: number): FieldSearch {
    return new FieldSearch(this.truck, this.field, null, this.budget, [...this.settings, [field, value]]);
  }

  /** By what rule the truck does not go together at a value; null = it does. */
  notTogetherAt(value: number): Closer | null {
    const made = this.at(value);
    if (made.ok) return null;
    const [issue] = made.issues;
    return { kind: "limit", name: issue === undefined ? "" : `${issue.key}: ${issue.mend}` };
  }

  /**
   * Whether stretches of the field can be proven: where what the field does is known. Of sides that are no mirror images each is
   * taken for itself then: that only adds poses.
   */
  canProve(from: number, to: number, now: number): boolean {
    if (this.effect === null || this.truck.isAligned) return false;
    const model = this.modelAt(now);
    const whole = this.wide(now, from, to);
    this.passedAll =
      whole === null ? allLimits(model) : passedAnywhere(whole, this.isAlone(whole), this.budget);
    if (whole === null || this.passedAll.length > 0) return true;
    const ranges = this.rangesOf(whole);
    this.isOpen = ranges.left.wheel.other === null && ranges.right.wheel.other === null;
    return true;
  }

  /** One pair over the values from `low` to `high`: searched at their middle, over all poses that count at any of them. */
  over(pairAt: number, low: number, high: number): Stretch {
    const middle = 0.5 * (low + high);
    const { setup, pairs } = this.modelAt(middle);
    const pair = pairs[pairAt]!;
    const wide = pair.kind === "together" ? this.modelAt(middle) : this.wide(middle, low, high);
    if (wide === null) return NOTHING;
    const range = this.rangeFor(wide, pair);
    const { most, moves } = this.effect!;
    // Whatever it keeps of its allowance, it keeps at every value.
    if (!moves(pair, setup) && this.keepsAllowance(wide, pair, range))
      return { ...NOTHING, keeps: Number.POSITIVE_INFINITY };
    const entry = searchPair(wide, pair, range, DEFAULT_TOLERANCE, this.budget);
    if (entry === null) return { ...NOTHING, keeps: Number.POSITIVE_INFINITY };
    const reach = (gap: number) =>
      moves(pair, setup) ? gap / most : gap > 0 ? Number.POSITIVE_INFINITY : gap;
    const keeps = entry.bound - setup.allowance;
    if (keeps > 0) return { ...NOTHING, keeps: reach(keeps) };
    const found = this.atBoth(pair, wide, entry, low, high);
    const misses = found === null ? 0 : setup.allowance - found.gap;
    return misses > 0 ? { keeps: 0, misses: reach(misses), by: found } : NOTHING;
  }

  /** The limits over a stretch: something is in the way where every pose passes one. */
  limitsOver(low: number, high: number): Stretch {
    const wide = this.wide(0.5 * (low + high), low, high);
    const by = wide === null ? null : closingLimit(this.passedAll!, this.rangesOf(wide));
    return by === null ? { ...NOTHING, keeps: high - low } : { keeps: 0, misses: high - low, by };
  }

  /**
   * What is in the way at one value, exactly as a check tells it, of some pairs; null = nothing. The first found, unless
   * the worst is asked for.
   */
  closerAt(value: number, pairs: readonly number[], isWorst = false): Closer | Unfinished | null {
    const apart = this.notTogetherAt(value);
    if (apart !== null) return apart;
    const model = this.modelAt(value);
    const ranges = this.checkedAt(value);
    const limit = closingLimit(this.passedAt(value, model), ranges);
    if (limit !== null) return limit;
    let worst: TooNear | null = null;
    let isCut = false;
    for (const [i, pairAt] of pairs.entries()) {
      const pair = model.pairs[pairAt]!;
      // Where something was in the way at the last value, the first likely is; most others keep far off, which is soon proven.
      if ((i > 0 || this.wasClear) && this.keepsAllowance(model, pair, ranges[pair.side])) continue;
      const entry = searchPair(model, pair, ranges[pair.side], DEFAULT_TOLERANCE, this.budget);
      if (entry === null || entry.verdict === "clear") continue;
      if (entry.gap >= model.setup.allowance && this.budget.isSpent(0)) {
        isCut = true;
        continue;
      }
      if (worst === null || entry.gap < worst.gap) worst = tooNear(entry);
      if (!isWorst) break;
    }
    this.wasClear = worst === null;
    return worst ?? (isCut ? { kind: "unfinished" } : null);
  }

  /** Whether it is proven that a pair keeps the allowance, with no look at how much more. */
  private keepsAllowance(model: Model, pair: Pair, range: SideRange): boolean {
    if (pair.kind === "together") return false;
    const { allowance } = model.setup;
    // What ends within its tolerance of that is no less than the allowance.
    const below = allowance + DEFAULT_TOLERANCE;
    return searchPairBelow(model, pair, range, below, DEFAULT_TOLERANCE, this.budget).bound >= allowance;
  }

  /** The same pairs, that of a closer first: what was in the way at one value mostly is at the next. */
  withFirst(pairs: readonly number[], value: number, { part, side }: TooNear): readonly number[] {
    const { pairs: all } = this.modelAt(value);
    const first = pairs.find((at) => all[at]!.name === part && all[at]!.side === side);
    return first === undefined ? pairs : [first, ...pairs.filter((at) => at !== first)];
  }

  /** Every pair's worst gap at a value, in the order of `pairs`; null = it has no pose. */
  gapsAt(value: number, pairs: readonly number[]): readonly (CheckEntry | null)[] {
    const model = this.modelAt(value);
    const ranges = this.checkedAt(value);
    return pairs.map((pairAt) => {
      const pair = model.pairs[pairAt]!;
      return searchPair(model, pair, ranges[pair.side], DEFAULT_TOLERANCE, this.budget);
    });
  }

  /** The truck at a value at which it goes together. */
  modelAt(value: number): Model {
    const made = this.at(value);
    if (!made.ok) throw new TypeError(`FieldSearch: no truck at ${value}`);
    return made.value;
  }

  private otherOf(side: Side, model: Model): OtherBetween {
    this.others[side] ??= new OtherBetween(model, side, this.passedAll!);
    return this.others[side];
  }

  private isAlone({ setup }: Model): boolean {
    return setup.roll !== null;
  }

  /** Each wheel for itself in a proof, where the other one stands otherwise. */
  private isProvenAlone(model: Model): boolean {
    return this.isAlone(model) || !model.mirrored;
  }

  private rangesOf(wide: Model): Readonly<Record<Side, SideRange>> {
    return rangesOf(wide, this.passedAll!, this.isProvenAlone(wide));
  }

  /** The ranges of a check at a value; those of the last values alone are kept, since searches leave a lot in them. */
  private checkedAt(value: number): Readonly<Record<Side, SideRange>> {
    const known = this.ranges.get(value);
    if (known !== undefined) return known;
    const model = this.modelAt(value);
    const found = rangesOf(model, this.passedAt(value, model), this.isAlone(model));
    if (this.ranges.size >= RANGES_KEPT) this.ranges.clear();
    this.ranges.set(value, found);
    return found;
  }

  /** A pair's range of poses; what rides together needs none. */
  private rangeFor(wide: Model, { kind, side }: Pair): SideRange {
    if (!this.isOpen) return this.rangesOf(wide)[side];
    const { frontEnd } = wide;
    const { steering } = frontEnd;
    const innerAt = side === "left" ? 0 : 3;
    const wheel = { side: frontEnd[side], other: null, innerAt, steering } as const;
    if (kind === "together") return { ...OPEN, wheel, armLow: 0, armHigh: 0, low: 0, high: 0 };
    const { low, high } = limitTravel(wide, this.isProvenAlone(wide) ? side : null);
    const [armLow, armHigh] = [armAngleFor(wheel.side, low), armAngleFor(wheel.side, high)];
    return { ...OPEN, wheel, armLow, armHigh, low, high };
  }

  private posesAt(value: number): At | null {
    const known = this.poses.get(value);
    if (known !== undefined) return known;
    const made = this.at(value);
    if (!made.ok) return null;
    const at = { model: made.value, arms: travelArms(made.value, this.isProvenAlone(made.value)) };
    this.poses.set(value, at);
    return at;
  }

  /** The truck at `middle` with every pose that counts anywhere from `low` to `high`; null = that cannot be said. */
  private wide(middle: number, low: number, high: number): Model | null {
    const made = this.at(middle);
    if (!made.ok) return null;
    if (!this.effect!.slides) return made.value;
    const [a, b] = [this.posesAt(low), this.posesAt(high)];
    return a === null || b === null ? null : withTravelOf(made.value, a.arms, b.arms);
  }

  private passedAt(value: number, model: Model): readonly PassedLimit[] {
    const known = this.passed.get(value);
    if (known !== undefined) return known;
    const { limits, airSpring } = model.setup;
    const none = limits === null && airSpring === null;
    const found = none ? [] : limitsPassed(model, this.isAlone(model), this.budget.share(4));
    this.passed.set(value, found);
    return found;
  }

  /** The pose found, moved to where it counts at every value of the stretch, and its gap there; null = it does not. */
  private atBoth(pair: Pair, wide: Model, entry: CheckEntry, low: number, high: number): TooNear | null {
    if (entry.together) return tooNear(entry);
    const { side } = pair;
    const range = this.rangeFor(wide, pair);
    const wheel = wide.frontEnd[side];
    let arm = armAngleFor(wheel, entry.travel);
    if (this.effect!.slides) {
      const [a, b] = [this.posesAt(low), this.posesAt(high)];
      if (a === null || b === null) return null;
      const both = armsOfBoth(a.arms, b.arms, side);
      if (!(both.low <= both.high)) return null;
      arm = Math.min(Math.max(arm, both.low), both.high);
    }
    const ends = new Float64Array(INNER_ENDS_ROW);
    const pose = new Float64Array(POSE_ROW);
    const at = side === "left" ? 0 : 3;
    if (wide.frontEnd.steering.innerEndsTo(ends, entry.steer) !== PoseStatus.Ok) return null;
    const { limits: kept, other: opposite } = range.wheel;
    if (kept !== undefined && !kept.keepsAt(arm, entry.steer)) return null;
    if (opposite !== null && !opposite.stands(arm, ends)) return null;
    if (!wide.mirrored && !this.isOpen && !this.isAlone(wide)) {
      const [a, b] = [this.at(low), this.at(high)];
      if (!a.ok || !b.ok || !this.otherOf(side, wide).keeps(a.value, b.value, arm, entry.steer)) return null;
    }
    const inner = [ends[at]!, ends[at + 1]!, ends[at + 2]!] as const;
    if (poseRowTo(pose, 0, wheel.row, Math.cos(arm), Math.sin(arm), ...inner) !== PoseStatus.Ok) return null;
    return { ...tooNear(entry), gap: pairGapTo(new Float64Array(GAP_ROW), 0, pair, pose, 0) };
  }
}
