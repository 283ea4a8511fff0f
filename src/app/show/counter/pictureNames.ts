import { PICTURE_NAMES } from "../../../studies/wording/pictureTexts.ts";
import type { BodyDrawing } from "./bodyDrawing.ts";
import type { DrawingFrame } from "./drawingFrame.ts";
import type { Pictured } from "./pictures.ts";
import type { DrawingView, SheetPoint } from "./wheelDrawing.ts";

/** A name with what it is the name of. */
export interface PictureName {
  readonly text: string;
  /** Where its leader ends. */
  readonly to: SheetPoint;
  /** Where its middle stands up and down the sheet, mm. */
  readonly v: number;
}

/** Pixels between two names. */
const STEP = 34;

/**
 * What stands on a picture, by name, left of it and each beside what it names as near as the others let it: by the first truck. A
 * body part that a gap is marked to is named there.
 */
export function pictureNames(
  view: DrawingView,
  { drawing, mark }: Pictured,
  body: readonly BodyDrawing[],
  frame: DrawingFrame,
): readonly PictureName[] {
  const { perPx, top, height } = frame;
  const { hubFaceLine, upperBallJoint, lowerBallJoint, wheel, cut, contactPatch } = drawing;
  const names: { readonly text: string; readonly to: SheetPoint }[] = [];
  const add = (text: string, to: SheetPoint) => names.push({ text, to });
  if (cut[0]) add(PICTURE_NAMES.tire, leftmost(cut[0]));
  if (view === "front") {
    add(PICTURE_NAMES.wheel, between(wheel[0]!, wheel[3]!, 0.12));
    add(PICTURE_NAMES.hubFace, hubFaceLine[0]);
    add(PICTURE_NAMES.ballJointLine, between(upperBallJoint, lowerBallJoint, 0.7));
    add(PICTURE_NAMES.floor, [frame.names + 4 * perPx, contactPatch[1]]);
  }
  for (const { name, cuts } of body) {
    const [line] = cuts;
    const to = line && leftmost(line.points);
    // What is cut beside the picture is not on it.
    if (to && name !== mark?.entry.part && to[0] > frame.names) add(name, to);
  }
  names.sort((a, b) => a.to[1] - b.to[1]);
  // Each as near as it can be under the one before, then all from the foot up.
  const step = STEP * perPx;
  const places: number[] = [];
  for (const { to } of names)
    places.push(Math.max(to[1], top + 20 * perPx, (places.at(-1) ?? -Infinity) + step));
  let most = top + height - 14 * perPx;
  for (let i = places.length - 1; i >= 0; i--) {
    places[i] = Math.min(places[i]!, most);
    most = places[i]! - step;
  }
  return names.map((one, i) => ({ ...one, v: places[i]! }));
}

function leftmost(points: readonly SheetPoint[]): SheetPoint {
  return points.reduce((least, point) => (point[0] < least[0] ? point : least));
}

function between([u0, v0]: SheetPoint, [u1, v1]: SheetPoint, share: number): SheetPoint {
  return [u0 + share * (u1 - u0), v0 + share * (v1 - v0)];
}
