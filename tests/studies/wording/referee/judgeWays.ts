import type { HeightStop } from "../../../../src/studies/limits/heightWay.ts";
import { lowestTravels } from "../../../../src/studies/map/lowestTravels.ts";
import type { NoLimits, SteerLimits } from "../../../../src/studies/map/steerLimits.ts";
import { steeringFacts } from "../../../../src/studies/wording/comparisonWords.ts";
import type { HeightFacts } from "../../../../src/studies/wording/heightWords.ts";
import { safeAngle } from "../../../../src/studies/wording/safeSide.ts";
import { turnFacts } from "../../../../src/studies/wording/sheetTexts.ts";
import { lowStop, type SteerStop } from "../../../../src/studies/wording/stopFacts.ts";
import { solvePose } from "../../../../src/suspension/solvePose.ts";
import { nameOf, type Truth } from "./truth.ts";

/** Poses looked at along a way. */
const LOOKS = 7;

/** A height: whether the truck can stand there, and how far it steers, on the sheet, beside the map and at the counter. */
export function judgeHeight(truth: Truth, steering: SteerLimits | NoLimits, stop: HeightStop | null): void {
  const { travel } = steering;
  const { model, format } = truth;
  const sheet = turnFacts(steering, stop, model, format);
  const counter = steeringFacts(steering, stop, model, format);
  truth.claim(
    sheet.stands === truth.canBe(travel, 0),
    `height ${travel} told as ${sheet.stands} by the sheet`,
  );
  truth.claim(counter.stands === sheet.stands, `height ${travel} told otherwise at the counter`);
  if (!sheet.stands) judgeBarred(truth, sheet.height);
  if (!sheet.stands || !counter.stands || !steering.ok) return;
  judgeTurn(truth, sheet.left, steering.leftTurn.touch.either.at, 1, travel);
  judgeTurn(truth, sheet.right, steering.rightTurn.touch.either.at, -1, travel);
  const { first, known } = counter;
  const least = Math.min(sheet.left.percent, sheet.right.percent);
  truth.claim(first.percent === least, `the counter tells ${first.percent}% first, the sheet ${least}%`);
  truth.claim(
    known === null || known.percent >= first.percent,
    `the counter knows a touch before the first stop`,
  );
}

function judgeBarred(truth: Truth, { travel, at }: HeightFacts): void {
  if (at === null) return;
  truth.claim(truth.canBe(at, 0), `told to come to ${at} mm, which passes a limit`);
  truth.claim(Math.abs(at) <= Math.abs(travel), `stopped at ${at} mm on the way to ${travel}`);
}

function judgeTurn(truth: Truth, stop: SteerStop, at: number, way: 1 | -1, travel: number): void {
  const { always, model } = truth;
  const what = `steering to ${stop.percent}% at ${travel.toFixed(1)} mm (${stop.stop})`;
  truth.claim(stop.isAlways === always.size > 0, `${what}: rides with the wheel and rubs: ${[...always]}`);
  if (stop.isAlways) {
    const name = nameOf({ part: stop.name, side: stop.side! });
    truth.claim(always.has(name) && stop.gap! < 0, `${what} tells of ${stop.name}`);
    return;
  }
  if (!stop.isNowhere) {
    const end = stop.stop === "end" ? 1 : stop.percent / 100;
    for (let i = 0; i < LOOKS; i++) truth.free(travel, (way * end * i) / (LOOKS - 1), what);
  }
  const pose = solvePose(model.frontEnd, travel, at * (1 - 1e-9));
  if (pose.ok && stop.angle !== null) {
    const wheel = stop.side ?? (way > 0 ? "left" : "right");
    const angle = Math.abs(pose[wheel].steerAngle);
    truth.claim(stop.angle <= angle + 1e-4, `${what} tells ${stop.angle} of ${angle}`);
    truth.claim(stop.angle === safeAngle(angle, "down"), `${what} spells its angle otherwise`);
  }
  const past = way * Math.min(1, Math.abs(at) + 1e-3);
  switch (stop.stop) {
    case "limit":
      truth.claim(!truth.canBe(travel, past), `${what}: ${stop.name} is kept past it`);
      break;
    case "end":
      truth.claim(Math.abs(at) === 1, `${what} is not the lock`);
      break;
    case "touch": {
      const gap = truth.gapOf(travel, past, stop.side!, stop.name);
      truth.claim(gap === null || gap < 1, `${what}: ${stop.name} is ${gap} mm off just past it`);
      break;
    }
    case "reach":
      truth.claim(truth.at(travel, past) === null, `${what}: ${stop.name} follows past it`);
      break;
    case "unproven":
      break;
  }
}

/** How low it comes at a steer. */
export function judgeLow(truth: Truth, steer: number): void {
  const { model, format, always } = truth;
  const [row] = lowestTravels(model, [steer]);
  if (!row?.ok) return;
  const stop = lowStop(row.touch, steer, model, format);
  const what = `coming down to ${stop.travel.toFixed(2)} mm at steer ${steer} (${stop.stop})`;
  truth.claim(stop.isAlways === (stop.stop !== "limit" && always.size > 0), `${what}: always`);
  if (stop.isNowhere) return;
  truth.claim(stop.travel <= row.touch.either.at + 0.004, `${what} is lower than ${row.touch.either.at}`);
  if (stop.travel < stop.from) return;
  for (let i = 0; i < LOOKS; i++)
    truth.free(stop.from + ((stop.travel - stop.from) * i) / (LOOKS - 1), steer, what);
}
