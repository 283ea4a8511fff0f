import { canStand } from "../../../studies/limits/heightWay.ts";
import {
  nearestBodyGap,
  type PictureFacts,
  pictureFacts,
  type TellingPose,
  tellingPose,
} from "../../../studies/wording/pictureFacts.ts";
import { floorOf } from "../../../studies/wording/poseWords.ts";
import { type SolvedPose, solvePose } from "../../../suspension/solvePose.ts";
import { type BodyDrawing, bodyDrawing } from "./bodyDrawing.ts";
import { framePoints, pointsJustOver, slidOutline } from "./drawingFrame.ts";
import type { Comparison, Contender } from "./useComparison.ts";
import type { HubFaceRange } from "./whatIf.ts";
import { type DrawingView, type SheetPoint, type WheelDrawing, wheelDrawing } from "./wheelDrawing.ts";

/** What one picture shows. */
export interface PictureContent {
  readonly pictured: readonly Pictured[];
  readonly body: readonly BodyDrawing[];
  /** Where it is cut, mm: from the front at this x, from above so high over the floor; null = nothing is drawn. */
  readonly cutAt: number | null;
}

/** Both pictures of a comparison: from the front straight ahead, and from above steered to where it matters. */
export interface Pictures {
  readonly telling: TellingPose;
  readonly front: PictureContent;
  readonly above: PictureContent;
}

/** Draws a comparison at its height. A truck that cannot stand there is left out. */
export function picturesOf(comparison: Comparison): Pictures {
  const { first, second, stances, travel } = comparison;
  const at = stances.findIndex((stance) => stance.travel === travel);
  const contenders = [first, second].filter((one) => one !== null);
  const telling = tellingPose(
    contenders
      .filter(({ truck }) => canStand(truck.model, travel, 0))
      .map(({ truck, answer }) => ({ model: truck.model, steering: answer.steering?.[at] ?? null })),
    travel,
  );
  const shown = shownOf(comparison);
  return {
    telling,
    front: contentOf(shown, "front", travel, 0, telling, null),
    above: contentOf(shown, "above", travel, telling.steer, telling, null),
  };
}

/** The same from above, steered otherwise and cut where it was; and points that hold it however it is steered. */
export function steeredPicture(comparison: Comparison, { telling }: Pictures, steer: number): PictureContent {
  const { travel } = comparison;
  return contentOf(shownOf(comparison), "above", travel, steer, telling, telling.steer);
}

/**
 * Points about both wheels on the front picture, about the second wherever the slider puts its hub face, and of parts cut just over all
 * that: a frame about them stays where it is as the slider goes.
 * @param slider null = there is none
 */
export function frontAround(
  { pictured, body }: PictureContent,
  slider: HubFaceRange | null,
): readonly SheetPoint[] {
  const wheels = pictured.flatMap(({ drawing }) => framePoints(drawing, true));
  const second = pictured.at(-1);
  const tried = second ? triedOutlines(second.drawing, second.hubFace, slider) : [];
  const points = [...wheels, ...tried];
  return [...points, ...pointsJustOver(points, body)];
}

/** A wheel's edge at both ends of the slider. */
function triedOutlines(
  drawing: WheelDrawing,
  hubFace: number,
  slider: HubFaceRange | null,
): readonly SheetPoint[] {
  if (!slider) return [];
  const { least, most, step } = slider;
  return [least, most].flatMap((at) => slidOutline(drawing, hubFace, at * step));
}

/** Points about both wheels lock to lock, and at both ends of the slider: a frame about them stays where it is as they turn. */
export function steeredAround(comparison: Comparison, { telling, above }: Pictures): readonly SheetPoint[] {
  const { travel, slider } = comparison;
  const { side } = telling;
  const shown = shownOf(comparison);
  return shown.flatMap(({ truck }, i) =>
    [-1, 0, 1].flatMap((steer) => {
      const pose = solvePose(truck.model.frontEnd, travel, steer);
      if (!pose.ok) return [];
      const plane = (above.cutAt ?? 0) + floorOf(pose);
      const drawing = wheelDrawing(truck.model, pose, side, "above", plane);
      const { hubFace } = truck.setup.knuckle;
      const tried = i === shown.length - 1 ? triedOutlines(drawing, hubFace, slider) : [];
      return [...framePoints(drawing, false), ...tried];
    }),
  );
}

/** Both, or the one that both are. */
function shownOf({ first, second, isSame }: Comparison): readonly Contender[] {
  return [first, isSame ? null : second].filter((one) => one !== null);
}

interface Posed extends PictureFacts {
  readonly contender: Contender;
  readonly pose: SolvedPose;
}

/** @param cutSteer where the plane is chosen, if elsewhere than at `steer`: as it is steered on, the plane stays */
function contentOf(
  contenders: readonly Contender[],
  view: DrawingView,
  travel: number,
  steer: number,
  telling: TellingPose,
  cutSteer: number | null,
): PictureContent {
  const { side } = telling;
  const posed = posedAt(contenders, view, travel, steer, telling, cutSteer === null);
  const [first] = posed;
  if (!first) return { pictured: [], body: [], cutAt: null };
  const chosenOf = cutSteer === null ? posed : posedAt(contenders, view, travel, cutSteer, telling, true);
  const plane = planeOf(view, chosenOf.length > 0 ? chosenOf : posed, telling);
  const pictured = posed.map(({ contender, pose, stands, mark }): Pictured => {
    const { letter, name, truck } = contender;
    const drawing = wheelDrawing(truck.model, pose, side, view, plane, mark);
    const { allowance, knuckle } = truck.setup;
    return { letter, name, drawing, stands, mark, hubFace: knuckle.hubFace, allowance };
  });
  const body = bodyDrawing(first.contender.truck.model, side, view, plane);
  return { pictured, body, cutAt: view === "front" ? plane : plane - floorOf(first.pose) };
}

function posedAt(
  contenders: readonly Contender[],
  view: DrawingView,
  travel: number,
  steer: number,
  { side, touches }: TellingPose,
  isTelling: boolean,
): readonly Posed[] {
  return contenders.flatMap((contender) => {
    const { model } = contender.truck;
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) return [];
    // A truck that cannot come to this pose is drawn where it would be, and nothing is marked on it.
    const named = view === "above" && isTelling ? (touches?.name ?? null) : null;
    return [{ contender, pose, ...pictureFacts(model, pose, side, named) }];
  });
}

/** Shares of the tire's radius off the wheel's middle, within which a plane cuts enough of it to be seen. */
const OFF = { front: [-0.75, 0.75], above: [0, 0.85] } as const;

/** Through the least gap, as near as it cuts a tire that can be recognized. */
function planeOf(view: DrawingView, posed: readonly Posed[], { side }: TellingPose): number {
  const axis = view === "front" ? 0 : 2;
  const [first] = posed;
  const nearest = posed.reduce<{ readonly one: Posed; readonly gap: number } | null>((least, one) => {
    const entry = one.mark?.entry;
    return entry && (least === null || entry.gap < least.gap) ? { one, gap: entry.gap } : least;
  }, null);
  const { contender, pose, mark } = nearest?.one ?? first!;
  const { ring } = contender.truck.model;
  const middle = pose[side].wheelCenter[axis];
  const entry = mark?.entry ?? nearestBodyGap(contender.truck.model, pose, side);
  const [least, most] = OFF[view].map((share) => middle + share * ring.freeRadius) as [number, number];
  if (!entry) return view === "front" ? middle : 0.5 * (least + most);
  const through = entry.gap < 0 ? entry.point[axis] : entry.onRing[axis];
  return Math.min(most, Math.max(least, through));
}

/** One of the trucks on a picture. */
export interface Pictured extends PictureFacts {
  readonly letter: "A" | "B";
  readonly name: string;
  readonly drawing: WheelDrawing;
  /** mm. */
  readonly hubFace: number;
  /** mm. */
  readonly allowance: number;
}
