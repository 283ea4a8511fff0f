import type { Result } from "../../setup/types/types.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { evenly } from "../numeric/evenly.ts";
import { type Looked, lowestBetween, rootsOver } from "../numeric/rootsOver.ts";
import { type TruckToVary, truckWith } from "../window/truckOverField.ts";
import { type WindowField, windowField } from "../window/windowField.ts";
import { rangeOf } from "../window/windowOf.ts";
import { alsoSolved } from "./alsoSolved.ts";
import { solveGap } from "./solveGap.ts";
import { type Solved, type SolveReport, type SolveTarget, targetTravel } from "./solveTypes.ts";
import { bothBumpSteer, poseNumber } from "./targetOf.ts";
import { widerRange } from "./widerRange.ts";

export interface SolveOptions {
  /** The range to look at, mm or radians; default that of a window. */
  readonly from?: number;
  readonly to?: number;
  /**
   * Where none gives it and the nearest stands at an end of the range, it is looked on there, as far as the file may hold
   * and the linkage goes, up to some times as far. A number at a pose alone. Default false.
   */
  readonly looksOn?: boolean;
  /** Each value tells what it moves besides, which takes checks. Default false. */
  readonly tellsAlso?: boolean;
  readonly budget?: Budget;
  /** Hears the share done, 0 … 1. */
  readonly onProgress?: (share: number) => void;
}

/** Values the range is marched over in. */
const LOOKS = 97;

/** Microseconds, about, of a look at one value. */
const LOOK_WORK = 3_000;

/** mm, rad. A number that changes by less over the whole range is not moved by the field. */
const UNMOVED = 1e-9;

/** mm, rad. A dip this near what is wanted gives it. */
const NEAR = 1e-7;

/** Share of the range down to which a value is looked for where it is no crossing. */
const FINEST = 1e-9;

/**
 * Which values of a field give what is wanted, all else as it is. A number at a pose is exact there; that no other value of the
 * range gives it is not proven, it is marched over. A gap is proven on both sides of each value, as a window's ends are.
 * @param key such as `knuckle.pinAngle`
 * @returns issues where there is no such field
 */
export function solveOf(
  truck: TruckToVary,
  key: string,
  target: SolveTarget,
  options: SolveOptions = {},
): Result<SolveReport> {
  const found = windowField(truck.document, truck.setup, key, truck.file);
  if (!found.ok) return found;
  return { ok: true, value: solveField(truck, found.value, target, options) };
}

/** The same of a field that was looked up. */
export function solveField(
  truck: TruckToVary,
  field: WindowField,
  target: SolveTarget,
  options: SolveOptions = {},
): SolveReport {
  const budget = options.budget ?? Budget.endless();
  const asked = rangeOf(field, options);
  const told = { field: field.key, kind: field.kind, now: field.now, ...asked, target };
  const also = options.tellsAlso === true ? target : null;
  const cut = () => (budget.cut ? { cutShort: true as const } : {});
  if (target.of === "gap") {
    const answer = solveGap(truck, field, target.value, asked, budget);
    const ended = cut();
    return { ...told, ...withAlso(truck, field, answer, also, budget), ...ended };
  }
  let range = asked;
  const march = (over: typeof range): Answer => {
    const made = new FieldMarch(truck, field, over, budget, options.onProgress ?? (() => {}));
    return target.of === "bumpSteer" ? made.least() : made.equal(target);
  };
  let answer = march(range);
  for (let on = 0; options.looksOn === true && on < MOST_ON; on++) {
    const wider = widerRange(field, range, answer);
    if (wider === null || budget.isSpent(LOOKS * LOOK_WORK)) break;
    range = wider;
    answer = march(range);
  }
  const between = { rank: "sampled" as const, step: (range.to - range.from) / (LOOKS - 1) };
  // Of the values alone: what they move besides is left out where its time ended.
  const ended = cut();
  return {
    ...told,
    ...withAlso(truck, field, answer, also, budget),
    ...range,
    ...(range === asked ? {} : { asked }),
    between,
    ...ended,
  };
}

/** Times it is looked on past an end, twice as far each time. */
const MOST_ON = 5;

/** An answer whose values tell what they move besides. @param also null = they are not to */
function withAlso<A extends Pick<SolveReport, "found" | "nearest">>(
  truck: TruckToVary,
  field: WindowField,
  answer: A,
  also: SolveTarget | null,
  budget: Budget,
): A {
  const before = also && truckWith(truck, [[field, field.now]]);
  if (also === null || !before?.ok) return answer;
  const told = (one: Solved): Solved => {
    const after = truckWith(truck, [[field, one.value]]);
    return after.ok ? { ...one, also: alsoSolved(before.value, after.value, also, budget.share(2)) } : one;
  };
  return { ...answer, found: answer.found.map(told), nearest: answer.nearest && told(answer.nearest) };
}

type Answer = Pick<SolveReport, "reachedNow" | "found" | "nearest" | "isUnmoved">;

/** Trucks with a field at values over a range. */
class FieldMarch {
  constructor(
    private readonly truck: TruckToVary,
    private readonly field: WindowField,
    private readonly range: { readonly from: number; readonly to: number },
    private readonly budget: Budget,
    private readonly onProgress: (share: number) => void,
  ) {}

  /** Values at which a number of the pose is what is wanted. */
  equal(target: Exclude<SolveTarget, { readonly of: "gap" | "bumpSteer" }>): Answer {
    const { of, value: wanted } = target;
    const at = targetTravel(target);
    const off = (value: number) => this.read(value, (model) => poseNumber(model, of, at) - wanted);
    const looked = this.look(off);
    const known = looked.filter(({ y }) => !Number.isNaN(y));
    const now = off(this.field.now);
    const reachedNow = Number.isNaN(now) ? null : now + wanted;
    // Where nothing moves it, no value gives it more than another.
    if (isUnmoved(known)) return { reachedNow, found: [], nearest: null, isUnmoved: true };
    const solved = (value: number): Solved => ({ value, reached: off(value) + wanted });
    const roots = rootsOver(off, looked, NEAR, FINEST * (this.range.to - this.range.from));
    const found = roots.map(solved).filter(({ reached }) => Math.abs(reached - wanted) <= NEAR);
    const nearest = known.reduce<Looked | null>(
      (best, one) => (best === null || Math.abs(one.y) < Math.abs(best.y) ? one : best),
      null,
    );
    return {
      reachedNow,
      found,
      nearest:
        found.length > 0 || nearest === null ? null : { value: nearest.x, reached: nearest.y + wanted },
      isUnmoved: false,
    };
  }

  /** The value with the least bump steer. */
  least(): Answer {
    const rms = (value: number) => this.read(value, (model) => bothBumpSteer(model).rms);
    const most = (value: number) => this.read(value, (model) => bothBumpSteer(model).most);
    const looked = this.look(rms).filter(({ y }) => !Number.isNaN(y));
    const now = most(this.field.now);
    const reachedNow = Number.isNaN(now) ? null : now;
    if (isUnmoved(looked) || looked.length === 0)
      return { reachedNow, found: [], nearest: null, isUnmoved: looked.length > 0 };
    const all = looked.map(({ y }) => y);
    const at = all.indexOf(Math.min(...all));
    const [before, after] = [looked[at - 1] ?? looked[at]!, looked[at + 1] ?? looked[at]!];
    const finite = (value: number) => {
      const of = rms(value);
      return Number.isNaN(of) ? Number.POSITIVE_INFINITY : of;
    };
    const finest = FINEST * (this.range.to - this.range.from);
    const value = lowestBetween(finite, before.x, after.x, finest);
    const best = finite(value) < looked[at]!.y ? value : looked[at]!.x;
    return { reachedNow, found: [{ value: best, reached: most(best) }], nearest: null, isUnmoved: false };
  }

  private look(read: (value: number) => number): readonly Looked[] {
    const { from, to } = this.range;
    const looked: Looked[] = [];
    for (const x of evenly(from, to, LOOKS)) {
      if (this.budget.isSpent(LOOK_WORK)) break;
      looked.push({ x, y: read(x) });
      this.onProgress(looked.length / LOOKS);
    }
    return looked;
  }

  /** A number of the truck at a value; NaN where it does not go together. */
  private read(value: number, of: (model: Model) => number): number {
    const made = truckWith(this.truck, [[this.field, value]]);
    return made.ok ? of(made.value) : Number.NaN;
  }
}

function isUnmoved(known: readonly Looked[]): boolean {
  const all = known.map(({ y }) => y);
  return all.length > 1 && Math.max(...all) - Math.min(...all) < UNMOVED;
}
