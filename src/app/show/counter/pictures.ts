import { canStand } from "../../../studies/limits/heightWay.ts";
import {
  nearestBodyGap,
  pictureFacts,
  type TellingPose,
  tellingPose,
} from "../../../studies/wording/pictureFacts.ts";
import { solvePose } from "../../../suspension/solvePose.ts";
import { type BodyLine, bodyDrawing } from "./bodyDrawing.ts";
import type { Comparison, Contender } from "./useComparison.ts";
import type { Pictured } from "./WheelPicture.tsx";
import { type DrawingView, wheelDrawing } from "./wheelDrawing.ts";

/** What one picture shows. */
export interface PictureContent {
  readonly pictured: readonly Pictured[];
  readonly body: readonly BodyLine[];
}

/** Both pictures of a comparison: from the front straight ahead, and from above steered to where it matters. */
export interface Pictures {
  readonly telling: TellingPose;
  readonly front: PictureContent;
  readonly above: PictureContent;
}

/** Draws a comparison at its height. A truck that cannot stand there is left out. */
export function picturesOf({ first, second, stances, travel }: Comparison): Pictures {
  const at = stances.findIndex((stance) => stance.travel === travel);
  const contenders = [first, second].filter((one) => one !== null);
  const telling = tellingPose(
    contenders
      .filter(({ truck }) => canStand(truck.model, travel, 0))
      .map(({ truck, answer }) => ({ model: truck.model, steering: answer.steering?.[at] ?? null })),
    travel,
  );
  const content = (view: DrawingView, steer: number) => contentOf(contenders, view, travel, steer, telling);
  return { telling, front: content("front", 0), above: content("above", telling.steer) };
}

function contentOf(
  contenders: readonly Contender[],
  view: DrawingView,
  travel: number,
  steer: number,
  { side, touches }: TellingPose,
): PictureContent {
  const pictured: Pictured[] = [];
  let body: readonly BodyLine[] = [];
  for (const { letter, name, truck } of contenders) {
    const { model, setup } = truck;
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) continue;
    // A truck that cannot come to this pose is drawn where it would be, and nothing is marked on it.
    const { stands, mark } = pictureFacts(
      model,
      pose,
      side,
      view === "above" ? (touches?.name ?? null) : null,
    );
    const drawing = wheelDrawing(model, pose, side, view, mark);
    if (pictured.length === 0) {
      const nearest = nearestBodyGap(model, pose, side)?.point;
      const cut = view === "front" ? pose[side].wheelCenter[0] : (nearest?.[2] ?? pose[side].wheelCenter[2]);
      body = bodyDrawing(model, side, view, cut);
    }
    const { allowance, knuckle } = setup;
    pictured.push({ letter, name, drawing, stands, mark, hubFace: knuckle.hubFace, allowance });
  }
  return { pictured, body };
}
