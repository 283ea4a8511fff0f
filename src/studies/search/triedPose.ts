import type { SideModel } from "../../suspension/frontEnd.ts";
import { POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import type { Budget } from "../numeric/budget.ts";
import { OFFER_COARSE } from "./deepTolerance.ts";
import type { Frontier } from "./frontier.ts";
import type { PoseRange, WheelToMove } from "./poseCells.ts";

/** Steers looked at at each end of the arm's reach. */
const END_SAMPLES = 33;

/** Poses looked at before the search, along arm and steer, and rounds of looking closer. */
const FIRST_ARMS = 9;
const FIRST_STEERS = 13;
const FIRST_ROUNDS = 24;

/** mm. How much too large a gap looked at there may be told at first; it falls as the poses close in. */
const FIRST_COARSE = 1;

/** A pose to begin with: lower arm angle, rad, and steer. */
export interface PoseToStart {
  readonly arm: number;
  readonly steer: number;
}

/** Takes the gap at a pose that was tried and stands, if it is the worst. @param coarse mm, how much too large it may be */
export type TakePose = (arm: number, steer: number, coarse: number) => void;

/** Single poses of a wheel tried outside any cell. */
export class TriedPose {
  /** The pose row of the last one that stands. */
  readonly row = new Float64Array(POSE_ROW);
  private readonly ends = new Float64Array(INNER_ENDS_ROW);

  constructor(
    private readonly wheel: WheelToMove,
    private readonly range: PoseRange,
  ) {}

  /** Whether both wheels can take a pose; then `row` is filled. */
  stands(arm: number, steer: number): boolean {
    const { ends } = this;
    const { innerAt, other, side, steering } = this.wheel;
    if (steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return false;
    if (other !== null && !other.stands(arm, ends)) return false;
    return this.put(side, arm, innerAt);
  }

  /** Whether it keeps every limit. */
  keeps(arm: number, steer: number): boolean {
    const { limits } = this.wheel;
    return limits === undefined || limits.keepsAt(arm, steer);
  }

  /** Looks at a grid of poses, then ever closer about the worst of them: a good gap early keeps the search small. */
  lookOver(search: Frontier, take: TakePose, budget: Budget, work: number): void {
    const { armLow, armHigh, steerLow, steerHigh } = this.range;
    let arm = (armHigh - armLow) / (FIRST_ARMS - 1);
    let steer = (steerHigh - steerLow) / (FIRST_STEERS - 1);
    for (let i = 0; i < FIRST_ARMS; i++) {
      for (let j = 0; j < FIRST_STEERS; j++) {
        // Back and forth, so that one pose is near the last.
        const along = i % 2 === 0 ? j : FIRST_STEERS - 1 - j;
        if (budget.isSpent(work)) return;
        this.look(take, armLow + i * arm, steerLow + along * steer, FIRST_COARSE);
      }
    }
    let coarse = FIRST_COARSE;
    for (let round = 0; round < FIRST_ROUNDS; round++) {
      const { best: before, bestArm, bestSteer } = search;
      if (budget.isSpent(4 * work)) return;
      for (let way = -1; way <= 1; way += 2) {
        this.look(take, clamped(bestArm + way * arm, armLow, armHigh), bestSteer, coarse);
        this.look(take, bestArm, clamped(bestSteer + way * steer, steerLow, steerHigh), coarse);
      }
      if (search.best < before) continue;
      arm *= 0.5;
      steer *= 0.5;
      coarse = Math.max(0.5 * coarse, OFFER_COARSE);
    }
  }

  /** Where nothing could be proven at an end of the arm's reach, at least looks at that end itself. */
  lookAtEnds(take: TakePose, budget: Budget, work: number): void {
    const { armLow, armHigh, steerLow, steerHigh } = this.range;
    for (const arm of [armLow, armHigh])
      for (let i = 0; i < END_SAMPLES && !budget.isSpent(work); i++)
        this.look(take, arm, steerLow + ((steerHigh - steerLow) * i) / (END_SAMPLES - 1));
  }

  look(take: TakePose, arm: number, steer: number, coarse = OFFER_COARSE): void {
    if (this.stands(arm, steer)) take(arm, steer, coarse);
  }

  private put({ row }: SideModel, arm: number, at: 0 | 3): boolean {
    const { ends } = this;
    const cos = Math.cos(arm);
    const sin = Math.sin(arm);
    return poseRowTo(this.row, 0, row, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!) === PoseStatus.Ok;
  }
}

function clamped(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}
