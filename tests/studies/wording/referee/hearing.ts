import { heightStop } from "../../../../src/studies/limits/heightWay.ts";
import { limitsOf } from "../../../../src/studies/limits/limitsOf.ts";
import { steerLimits } from "../../../../src/studies/map/steerLimits.ts";
import type { Model } from "../../../../src/studies/model/model.ts";
import { Budget } from "../../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../../src/studies/reports/check.ts";
import type { TruckAnswer } from "../../../../src/studies/wording/counterFacts.ts";
import { judgeCards, judgeNumbers, judgeSheet, judgeVerdict } from "./judgeAnswers.ts";
import { judgeLimits } from "./judgeLimits.ts";
import { judgePictures } from "./judgePictures.ts";
import { judgeCovered, judgeMap, judgePose } from "./judgePoses.ts";
import { judgeHeight, judgeLow } from "./judgeWays.ts";
import { Truth } from "./truth.ts";

/** What a truck is asked. */
export interface Questions {
  /** Heights, mm, each with all that is told at it. */
  readonly stances: readonly { readonly name: string; readonly travel: number }[];
  readonly steers: readonly number[];
  /** Steers at which it is asked how low the truck comes. */
  readonly lows: readonly number[];
  /** Poses of the whole range, as shares of it, that the check must cover. */
  readonly samples: readonly (readonly [travelShare: number, steer: number])[];
  /** Looks at the clock that check and limits have each: the same work on any machine. null = to their own end. */
  readonly looks: number | null;
}

/** Asks a truck everything, and judges every answer. @returns the complaints; none when all agree with the solver */
export function hearing(model: Model, who: string, asked: Questions): readonly string[] {
  const truth = new Truth(model, who);
  const { stances, steers, lows, samples } = asked;
  const travels = stances.map(({ travel }) => travel);
  const report = checkClearance(model, { budget: counted(asked.looks) });
  const steering = steerLimits(model, travels);
  const heights = travels.map((travel) => heightStop(model, travel));
  const answer: TruckAnswer = { report, steering, heights, failure: null };
  judgeVerdict(truth, report);
  judgeCards(truth, answer, travels);
  judgeSheet(truth, answer, stances);
  judgeSheet(truth, { ...answer, report: null }, stances);
  judgeNumbers(truth);
  judgeMap(truth, report);
  const poses = travels.flatMap((travel) => steers.map((steer) => [travel, steer] as const));
  for (const [travel, steer] of poses) judgePose(truth, travel, steer, report);
  steering.forEach((one, i) => {
    judgeHeight(truth, one, heights[i]!);
    judgePictures(truth, one);
  });
  for (const steer of lows) judgeLow(truth, steer);
  const { droop, bump } = model.setup.travel;
  const isWhole = (report.limitedBy ?? []).length === 0;
  for (const [share, steer] of samples) {
    const travel = droop + share * (bump - droop);
    if (truth.at(travel, steer) !== null && (isWhole || truth.canBe(travel, steer)))
      judgeCovered(truth, report, travel, steer);
  }
  const { limits, airSpring } = model.setup;
  if (limits !== null || airSpring !== null)
    judgeLimits(truth, limitsOf(model, counted(asked.looks), 2, 2), poses);
  return truth.complaints;
}

/** A budget of so many looks at its clock, which goes on by a second at each. */
function counted(looks: number | null): Budget {
  if (looks === null) return Budget.endless();
  let now = 0;
  return Budget.of(looks, () => 1000 * now++);
}
