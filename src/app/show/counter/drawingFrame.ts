import type { BodyDrawing } from "./bodyDrawing.ts";
import { dimensionShift, type SheetPoint, type WheelDrawing } from "./wheelDrawing.ts";

/** The piece of sheet that is shown, with room for names to its left, gaps to its right and dimensions below; mm but where it says. */
export interface DrawingFrame {
  /** mm of the truck to a pixel of the page. */
  readonly perPx: number;
  /** px. */
  readonly size: PictureSize;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Where names end, and where the labels of gaps begin; px from its left. Nothing is drawn past `inner`. */
  readonly names: number;
  readonly labels: number;
  readonly inner: Box;
  /** The lowest of what is drawn; dimensions go below. */
  readonly foot: number;
}

/** A picture's size on the page, px. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** A piece of the page, px from the frame's corner. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly foot: number;
}

/** Pixels. */
const NAME_ROOM = 78;
/** What names take besides where it is left over: each of the wheel's own stands in one line then. */
const MORE_NAME_ROOM = 24;
const LABEL_ROOM = 140;
const DIMENSION_ROOM = 66;
export const FOOT_ROOM = 30;
const MARGIN = 10;
/** Pixels from the foot of what is drawn to the first hub face dimension, and to the next. */
const DIMENSION_AT = [24, 50] as const;

/** mm. Of a ball joint, as drawn. */
export const BALL_RADIUS = 15;
/** mm below what is drawn where dimensions stand, about. */
const BELOW = 100;

/** Points that the frame must hold of a wheel. @param hasDimensions its hub face's distance is written below it */
export function framePoints(drawing: WheelDrawing, hasDimensions: boolean): readonly SheetPoint[] {
  const { outline, upperBallJoint, lowerBallJoint, pinStart, gap } = drawing;
  const balls = [upperBallJoint, lowerBallJoint].map(([u, v]): SheetPoint => [u - BALL_RADIUS, v]);
  const held = [...outline, ...balls, pinStart, ...(gap ? [gap.onPart] : [])];
  if (!hasDimensions) return held;
  const foot = Math.max(...held.map(([, v]) => v));
  // The dimension leans with the pin.
  return [...held, [pinStart[0] + dimensionShift(drawing, foot + BELOW)[0], foot]];
}

/**
 * A wheel's edge with its hub face elsewhere along the pin; the knuckle stays as it stands.
 * @param hubFace the hub face's distance as drawn, mm
 * @param tried the same elsewhere, mm
 */
export function slidOutline(drawing: WheelDrawing, hubFace: number, tried: number): readonly SheetPoint[] {
  const { outline, pinStart, hubFace: face } = drawing;
  if (hubFace === 0) return outline;
  const share = (tried - hubFace) / hubFace;
  const [du, dv] = [share * (face[0] - pinStart[0]), share * (face[1] - pinStart[1])];
  return outline.map(([u, v]): SheetPoint => [u + du, v + dv]);
}

/** Share of a drawing's height that it grows by for a part just over it. */
const JUST_OVER = 0.12;

/** Points that the frame must hold besides, of parts cut just over the wheels: half a line at its edge would tell nothing. */
export function pointsJustOver(
  points: readonly SheetPoint[],
  body: readonly BodyDrawing[],
): readonly SheetPoint[] {
  const [us, vs] = [points.map(([u]) => u), points.map(([, v]) => v)];
  const [left, right] = [Math.min(...us), Math.max(...us)];
  const [top, foot] = [Math.min(...vs), Math.max(...vs)];
  return body.flatMap(({ cuts }) =>
    cuts.flatMap((cut) =>
      cut.points.filter(
        ([u, v]) => u >= left && u <= right && v < top && v >= top - JUST_OVER * (foot - top),
      ),
    ),
  );
}

/** As large as the picture's size lets it be, in its middle. */
export function drawingFrame(
  points: readonly SheetPoint[],
  hasDimensions: boolean,
  { width, height }: PictureSize,
): DrawingFrame {
  let [left, top, right, foot] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [u, v] of points) {
    left = Math.min(left, u);
    right = Math.max(right, u);
    top = Math.min(top, v);
    foot = Math.max(foot, v);
  }
  const below = hasDimensions ? DIMENSION_ROOM : FOOT_ROOM;
  const perPx = Math.max(
    (right - left) / Math.max(60, width - NAME_ROOM - LABEL_ROOM),
    (foot - top) / Math.max(60, height - below - MARGIN),
  );
  // What is over goes to both sides alike.
  const spare = width * perPx - (right - left) - (NAME_ROOM + LABEL_ROOM) * perPx;
  const over = height * perPx - (foot - top) - (below + MARGIN) * perPx;
  const start = left - NAME_ROOM * perPx - 0.5 * spare;
  const nameRoom = NAME_ROOM + Math.min(MORE_NAME_ROOM, Math.max(0, (0.5 * spare) / perPx));
  return {
    perPx,
    size: { width, height },
    left: start,
    top: top - MARGIN * perPx - 0.5 * over,
    width: width * perPx,
    height: height * perPx,
    names: nameRoom - 8,
    labels: width - LABEL_ROOM + 6,
    inner: {
      left: nameRoom - 4,
      top: 0,
      right: width - LABEL_ROOM + 2,
      foot: hasDimensions ? height : height - FOOT_ROOM,
    },
    foot,
  };
}

/** Puts a point of the sheet on the page, px from the frame's corner. */
export function onPage({ left, top, perPx }: DrawingFrame): (point: SheetPoint) => SheetPoint {
  return ([u, v]) => [(u - left) / perPx, (v - top) / perPx];
}

/** How far down the sheet a hub face's dimension stands at the hub face, mm. @param i its place among them */
export function dimensionAt({ foot, perPx }: DrawingFrame, i: number): number {
  return foot + DIMENSION_AT[i === 0 ? 0 : 1] * perPx;
}
