import { wheelDrawing } from "../../../../src/app/show/counter/wheelDrawing.ts";
import type { NoLimits, SteerLimits } from "../../../../src/studies/map/steerLimits.ts";
import { pictureFacts, tellingPose } from "../../../../src/studies/wording/pictureFacts.ts";
import { gapLabel, gapNote } from "../../../../src/studies/wording/pictureTexts.ts";
import type { Side } from "../../../../src/suspension/frontEnd.ts";
import { nameOf, TOUCH, type Truth } from "./truth.ts";

/** mm. A gap this small is told as touching. */
const JUST = 0.05;

/** Both pictures at a height: which wheel and steer is looked at, what is marked, what its label says. */
export function judgePictures(truth: Truth, steering: SteerLimits | NoLimits): void {
  const { travel } = steering;
  const stands = truth.canBe(travel, 0);
  const telling = tellingPose(stands ? [{ model: truth.model, steering }] : [], travel);
  const { touches, side, steer } = telling;
  if (touches !== null) {
    const gap = truth.gapOf(travel, steer, side, touches.name);
    truth.claim(
      gap !== null && (touches.isNowhere ? gap < 1 : Math.abs(gap) < 1),
      `the picture says ${touches.name} touches, ${gap} mm off`,
    );
    const least = truth.at(travel, steer)?.gaps[0]?.gap ?? 0;
    truth.claim(touches.isNowhere || least >= -TOUCH, `the picture is past the first touch: ${least}`);
  }
  judgePicture(truth, travel, 0, side, null);
  judgePicture(truth, travel, steer, side, touches?.name ?? null);
}

function judgePicture(truth: Truth, travel: number, steer: number, side: Side, named: string | null): void {
  const found = truth.at(travel, steer);
  if (found === null) return;
  const { pose, gaps } = found;
  const { model, format, always } = truth;
  const facts = pictureFacts(model, pose, side, named);
  const what = `the picture at ${travel.toFixed(1)} mm, steer ${steer.toFixed(3)}`;
  truth.claim(facts.stands === truth.canBe(travel, steer), `${what} stands: ${facts.stands}`);
  truth.claim(facts.stands || facts.mark === null, `${what} marks where the truck cannot be`);
  truth.claim(
    gapNote([{ letter: "A", ...facts }]).includes("cannot come to this pose") === !facts.stands,
    `${what} says otherwise in its note`,
  );
  const { mark } = facts;
  if (mark === null) return;
  const { entry } = mark;
  truth.claim(entry.side === side, `${what} marks the other side`);
  truth.claim(entry.gap === truth.gapOf(travel, steer, side, entry.part), `${what} marks another gap`);
  const rubsAlong = gaps.filter((one) => one.side === side && always.has(nameOf(one)));
  const body = new Set(model.setup.truck.body.map(({ name }) => name));
  const nearest = gaps.find((one) => one.side === side && body.has(one.part));
  const isRight =
    rubsAlong.length > 0
      ? entry.gap === rubsAlong[0]!.gap
      : entry.part === named || entry.gap === nearest?.gap;
  truth.claim(isRight, `${what} marks ${entry.part}, not ${rubsAlong[0]?.part ?? named ?? nearest?.part}`);
  const { word, said } = gapLabel(entry.gap, model.setup.allowance, format);
  truth.claim(
    Math.abs(entry.gap) < JUST ? said === "touches" && word === "rubs" : word === truth.stateOf(entry.gap),
    `${what} says ${said} of ${entry.gap} mm`,
  );
  const drawn = wheelDrawing(model, pose, side, "front", pose[side].wheelCenter[0], mark).gap!;
  const apart = Math.hypot(drawn.onPart[0] - drawn.onRing[0], drawn.onPart[1] - drawn.onRing[1]);
  truth.claim(apart <= Math.abs(entry.gap) + 1e-6, `${what} draws ${entry.gap} mm as ${apart}`);
}
