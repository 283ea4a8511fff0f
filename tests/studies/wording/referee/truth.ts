import { GAP, GAP_ROW } from "../../../../src/gaps/partGap.ts";
import { KEPT } from "../../../../src/studies/limits/frontEndLimit.ts";
import { type LimitMargin, limitMargins } from "../../../../src/studies/limits/limitsOf.ts";
import type { Model } from "../../../../src/studies/model/model.ts";
import { pairGapTo } from "../../../../src/studies/model/pairs.ts";
import type { Verdict } from "../../../../src/studies/reports/check.ts";
import { type GapEntry, gapsAt } from "../../../../src/studies/reports/gapsAt.ts";
import type { Side } from "../../../../src/suspension/frontEnd.ts";
import { type SolvedPose, solvePose } from "../../../../src/suspension/solvePose.ts";
import type { LengthFormat } from "../../../../src/units/formatLength.ts";

/** mm. What a gap is off by where a way was marched to its end: it may come this near to its level and count as there. */
export const TOUCH = 0.01;

/** mm. What a search leaves open, or two ways to one gap differ by. */
export const NEAR = 0.02;

/** A pair on one side, as a word to compare by. */
export const nameOf = ({ part, side }: { readonly part: string; readonly side: Side }) => `${side} ${part}`;

/** What is true of a truck, by the solver alone; and every complaint about what is told of it. */
export class Truth {
  readonly complaints: string[] = [];
  readonly format: LengthFormat;
  /** What rides with the wheel and rubs, by the pairs themselves: side and name. */
  readonly always: ReadonlySet<string>;
  private readonly solved = new Map<
    string,
    { readonly pose: SolvedPose; readonly gaps: readonly GapEntry[] } | null
  >();
  private readonly kept = new Map<string, readonly LimitMargin[] | null>();

  constructor(
    readonly model: Model,
    private readonly who: string,
  ) {
    this.format = { units: model.setup.units };
    const row = new Float64Array(GAP_ROW);
    const rest = solvePose(model.frontEnd, 0, 0);
    const rubs = model.pairs.filter((pair) => {
      if (pair.kind !== "together" || !rest.ok) return false;
      pairGapTo(row, 0, pair, rest[pair.side].row, 0);
      return row[GAP.gap]! < 0;
    });
    this.always = new Set(rubs.map(({ name, side }) => nameOf({ part: name, side })));
  }

  claim(holds: boolean, what: string): void {
    if (!holds) this.complaints.push(`${this.who}: ${what}`);
  }

  /** The pose with all its gaps, smallest first; null out of reach. */
  at(
    travel: number,
    steer: number,
  ): { readonly pose: SolvedPose; readonly gaps: readonly GapEntry[] } | null {
    const key = `${travel} ${steer}`;
    const known = this.solved.get(key);
    if (known !== undefined) return known;
    const pose = solvePose(this.model.frontEnd, travel, steer);
    const found = pose.ok
      ? { pose, gaps: [...gapsAt(this.model, pose)].sort((a, b) => a.gap - b.gap) }
      : null;
    this.solved.set(key, found);
    return found;
  }

  gapOf(travel: number, steer: number, side: Side, part: string): number | null {
    return this.at(travel, steer)?.gaps.find((one) => one.side === side && one.part === part)?.gap ?? null;
  }

  /** Every limit at a pose; null out of reach. */
  margins(travel: number, steer: number): readonly LimitMargin[] | null {
    const key = `${travel} ${steer}`;
    const known = this.kept.get(key);
    if (known !== undefined) return known;
    const pose = limitMargins(this.model, travel, steer);
    const found = pose.ok ? pose.margins : null;
    this.kept.set(key, found);
    return found;
  }

  /** Both wheels reach it and every limit is kept. */
  canBe(travel: number, steer: number): boolean {
    return this.margins(travel, steer)?.every(({ margin }) => margin >= -KEPT) ?? false;
  }

  /** Whatever is told free of a pose: it can be, and nothing touches there. */
  free(travel: number, steer: number, what: string): void {
    const least = this.at(travel, steer)?.gaps[0];
    const at = `${travel.toFixed(2)} mm, steer ${steer.toFixed(3)}`;
    this.claim(this.canBe(travel, steer), `${what} told free, but cannot stand at ${at}`);
    this.claim(
      least === undefined || least.gap >= -TOUCH,
      `${what} told free, but ${least?.part} rubs at ${at}`,
    );
  }

  /** What a gap is, by the words of the shop: below 0 it rubs, below the allowance it is close. */
  stateOf(gap: number): Verdict {
    if (gap < 0) return "rubs";
    return gap < this.model.setup.allowance ? "close" : "clear";
  }
}
