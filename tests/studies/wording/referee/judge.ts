import { GAP, GAP_ROW } from "../../../../src/gaps/partGap.ts";
import { KEPT } from "../../../../src/studies/limits/frontEndLimit.ts";
import { heightStop } from "../../../../src/studies/limits/heightWay.ts";
import { limitMargins } from "../../../../src/studies/limits/limitsOf.ts";
import { mapOf } from "../../../../src/studies/map/clearanceMap.ts";
import { contoursOf } from "../../../../src/studies/map/contours.ts";
import { lowestTravels } from "../../../../src/studies/map/lowestTravels.ts";
import { type SteerLimits, steerLimits } from "../../../../src/studies/map/steerLimits.ts";
import type { Model } from "../../../../src/studies/model/model.ts";
import { pairGapTo } from "../../../../src/studies/model/pairs.ts";
import { type CheckReport, verdictOf } from "../../../../src/studies/reports/check.ts";
import { type GapEntry, gapsAt } from "../../../../src/studies/reports/gapsAt.ts";
import { steeringFacts } from "../../../../src/studies/wording/comparisonWords.ts";
import { poseFacts } from "../../../../src/studies/wording/poseFacts.ts";
import { safeAngle } from "../../../../src/studies/wording/safeSide.ts";
import { lowStop, type SteerStop, steerStop } from "../../../../src/studies/wording/stopFacts.ts";
import { verdictFacts } from "../../../../src/studies/wording/verdictFacts.ts";
import { solvePose } from "../../../../src/suspension/solvePose.ts";
import type { LengthFormat } from "../../../../src/units/formatLength.ts";

/** mm. What a gap is off by where a way was marched to its end: it may come this near to its level and count as there. */
const TOUCH = 0.01;
/** Poses looked at along a way. */
const LOOKS = 9;

/** Every complaint about what is told of a truck; none when the words' facts and the solver agree. */
export class Judge {
  readonly complaints: string[] = [];
  private readonly format: LengthFormat;

  constructor(
    private readonly model: Model,
    private readonly who: string,
  ) {
    this.format = { units: model.setup.units };
  }

  private claim(holds: boolean, what: string): void {
    if (!holds) this.complaints.push(`${this.who}: ${what}`);
  }

  /** All gaps of a pose, smallest first; null out of reach. */
  private gaps(travel: number, steer: number): readonly GapEntry[] | null {
    const pose = solvePose(this.model.frontEnd, travel, steer);
    return pose.ok ? [...gapsAt(this.model, pose)].sort((a, b) => a.gap - b.gap) : null;
  }

  private keepsLimits(travel: number, steer: number): boolean {
    const pose = limitMargins(this.model, travel, steer);
    return pose.ok && pose.margins.every(({ margin }) => margin >= -KEPT);
  }

  /** Whatever is told free of a pose: it can be, and nothing touches there. */
  private free(travel: number, steer: number, what: string): void {
    const least = this.gaps(travel, steer)?.[0];
    const at = `${travel.toFixed(2)} mm, steer ${steer.toFixed(3)}`;
    this.claim(this.keepsLimits(travel, steer), `${what} told free, but cannot stand at ${at}`);
    this.claim(
      least === undefined || least.gap >= -TOUCH,
      `${what} told free, but ${least?.part} rubs at ${at}`,
    );
  }

  /** What rides with the wheel and rubs, by the pairs themselves. */
  private alwaysRubs(): readonly string[] {
    const row = new Float64Array(GAP_ROW);
    const pose = solvePose(this.model.frontEnd, 0, 0);
    if (!pose.ok) return [];
    return this.model.pairs
      .filter((pair) => pair.kind === "together" && pairGapTo(row, 0, pair, pose[pair.side].row, 0) < 0)
      .filter(() => row[GAP.gap] !== undefined)
      .map(({ name }) => name);
  }

  /** One pose: the nearest part, its state, how many more, and which limits are passed. */
  pose(travel: number, steer: number): void {
    const pose = solvePose(this.model.frontEnd, travel, steer);
    const gaps = this.gaps(travel, steer);
    if (!pose.ok || gaps === null) return;
    const facts = poseFacts(gaps, pose, this.model);
    const always = this.alwaysRubs();
    const [least] = gaps;
    if (least !== undefined) {
      const { entry, verdict } = facts.nearest!;
      this.claim(
        always.length > 0 ? always.includes(entry.part) : entry.gap === least.gap,
        `the pose tells of ${entry.part}, the nearest is ${least.part}`,
      );
      this.claim(
        verdict === verdictOf(entry.gap, entry.gap, this.model.setup.allowance),
        `the pose tells ${verdict} of a gap of ${entry.gap} mm`,
      );
    }
    const tooNear = gaps.filter(({ gap }) => gap < this.model.setup.allowance).length;
    this.claim(facts.others === Math.max(0, tooNear - 1), `the pose counts ${facts.others} more`);
    this.claim((facts.past.length === 0) === this.keepsLimits(travel, steer), "the pose passes other limits");
  }

  /** A height: whether the truck can stand there, how far it steers, and what a picture of it may mark. */
  height(travel: number): SteerLimits | null {
    const stop = heightStop(this.model, travel);
    const [steering] = steerLimits(this.model, [travel])!;
    const facts = steeringFacts(steering!, stop, this.model, this.format);
    this.claim(facts.stands === this.keepsLimits(travel, 0), `height ${travel} told as ${facts.stands}`);
    if (!facts.stands) {
      const { at } = facts.height;
      if (at !== null) {
        this.claim(this.keepsLimits(at, 0), `told to come to ${at} mm, which passes a limit`);
        this.claim(Math.abs(at) <= Math.abs(travel), `stopped at ${at} mm on the way to ${travel}`);
      }
      return null;
    }
    if (!steering?.ok) return null;
    for (const turn of [steering.leftTurn, steering.rightTurn]) {
      const way = turn === steering.leftTurn ? 1 : -1;
      this.way(steerStop(turn.touch.either, travel, this.model), turn.touch.either.at, way, travel);
    }
    return steering;
  }

  private way(stop: SteerStop, at: number, way: 1 | -1, travel: number): void {
    const always = this.alwaysRubs();
    const what = `steering to ${stop.percent}% at ${travel.toFixed(1)} mm (${stop.stop})`;
    this.claim(stop.isAlways === always.length > 0, `${what}: rides with the wheel and rubs: ${always}`);
    if (stop.isAlways) {
      this.claim(always.includes(stop.name) && stop.gap! < 0, `${what} tells of ${stop.name}`);
      return;
    }
    if (!stop.isNowhere) {
      const end = stop.stop === "end" ? 1 : stop.percent / 100;
      for (let i = 0; i < LOOKS; i++) this.free(travel, (way * end * i) / (LOOKS - 1), what);
    }
    const pose = solvePose(this.model.frontEnd, travel, at * (1 - 1e-9));
    if (pose.ok && stop.angle !== null) {
      const wheel = stop.side ?? (way > 0 ? "left" : "right");
      const angle = Math.abs(pose[wheel].steerAngle);
      this.claim(stop.angle <= angle + 1e-4, `${what} tells ${stop.angle} of ${angle}`);
      this.claim(stop.angle === safeAngle(angle, "down"), `${what} spells its angle otherwise`);
    }
    const past = way * Math.min(1, Math.abs(at) + 1e-3);
    if (stop.stop === "limit")
      this.claim(!this.keepsLimits(travel, past), `${what}: ${stop.name} is kept past it`);
    if (stop.stop === "end") this.claim(Math.abs(at) === 1, `${what} is not the lock`);
  }

  /** How low it comes at a steer. */
  low(steer: number): void {
    const [row] = lowestTravels(this.model, [steer])!;
    if (!row?.ok) return;
    const stop = lowStop(row.touch, steer, this.model, this.format);
    const what = `coming down to ${stop.travel.toFixed(2)} mm at steer ${steer} (${stop.stop})`;
    this.claim(stop.isAlways === (stop.stop !== "limit" && this.alwaysRubs().length > 0), `${what}: always`);
    if (stop.isNowhere) return;
    this.claim(stop.travel <= row.touch.either.at + 0.004, `${what} is lower than ${row.touch.either.at}`);
    for (let i = 0; i < LOOKS; i++) {
      const travel = stop.from + ((stop.travel - stop.from) * i) / (LOOKS - 1);
      if (stop.travel >= stop.from) this.free(travel, steer, what);
    }
  }

  /** The answer over the whole range: against the pose it names, what always rubs, and poses it says are clear. */
  verdict(report: CheckReport): void {
    const facts = verdictFacts(report, this.model);
    const always = this.alwaysRubs();
    if (facts.told === null) {
      this.claim(report.parts.length === 0, "nothing told of what is measured");
      return;
    }
    const { entry } = facts.told;
    this.claim(
      entry.verdict === facts.verdict,
      `the verdict ${facts.verdict} is told by one that is ${entry.verdict}`,
    );
    if (always.length > 0)
      this.claim(
        facts.verdict === "rubs" && always.includes(entry.part),
        `first comes ${entry.part}, not ${always}`,
      );
    else
      this.claim(
        report.parts.every(({ gap }) => entry.gap <= gap),
        `told by ${entry.part}, which is not the least`,
      );
    this.claim(
      facts.scope !== "all" || (report.limits.length === 0 && (report.limitedBy ?? []).length === 0),
      "told over the whole range, where less is counted",
    );
    const there = this.gaps(entry.travel, entry.steer)?.find(
      ({ part, side }) => part === entry.part && side === entry.side,
    );
    if (there)
      this.claim(Math.abs(there.gap - entry.gap) < 0.02, `${entry.part} told ${entry.gap}, is ${there.gap}`);
  }

  /** Cells of the map with what they are marked, and the lines between them. @param report null = not at hand */
  map(report: CheckReport | null): void {
    const map = mapOf(this.model, { rows: 4, cols: 5 })!;
    const all = (report?.limitedBy ?? []).length === 0;
    map.travels.forEach((travel, row) => {
      map.steers.forEach((steer, col) => {
        const cell = row * map.steers.length + col;
        const least = this.gaps(travel, steer)?.[0]?.gap ?? Number.NaN;
        const told = Math.min(map.left.gap[cell]!, map.right.gap[cell]!);
        const at = `${travel.toFixed(1)} mm, steer ${steer}`;
        if (Number.isNaN(least)) {
          this.claim(!Number.isFinite(told), `the map tells ${told} where none stands`);
          return;
        }
        this.claim(
          Math.abs(told - least) < 0.02,
          `the map tells ${told} at ${at}, the least gap is ${least}`,
        );
        const kept = this.keepsLimits(travel, steer);
        if (map.pastLimit !== null)
          this.claim(map.pastLimit.passed[cell]! < 0 === kept, `the map marks limits otherwise at ${at}`);
        if (report !== null && (kept || all) && least < -0.02)
          this.claim(report.verdict === "rubs", `${report.verdict}, but the map rubs by ${-least} at ${at}`);
      });
    });
    for (const side of ["left", "right"] as const) {
      const isBelow = map[side].gap.every((gap) => Number.isNaN(gap) || gap < 0);
      this.claim(!isBelow || contoursOf(map, map[side], 0).length === 0, "a line where all is below it");
    }
  }
}
