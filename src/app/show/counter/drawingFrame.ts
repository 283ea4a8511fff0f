import type { SheetPoint, WheelDrawing } from "./wheelDrawing.ts";

/** The piece of sheet that is shown, with room for names to its left, gaps to its right and dimensions below; mm but where it says. */
export interface DrawingFrame {
  /** mm of the truck to a pixel of the page. */
  readonly perPx: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Where names end, and where the labels of gaps begin. */
  readonly names: number;
  readonly labels: number;
  /** The lowest of what is drawn; dimensions go below. */
  readonly foot: number;
}

/** A picture's size on the page, px. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Pixels. */
const NAME_ROOM = 78;
const LABEL_ROOM = 132;
const DIMENSION_ROOM = 66;
const FOOT_ROOM = 30;
const MARGIN = 10;

/** Points that the frame must hold of a wheel. */
export function framePoints({ outline, upperBallJoint, lowerBallJoint, pinStart, gap }: WheelDrawing) {
  return [...outline, upperBallJoint, lowerBallJoint, pinStart, ...(gap ? [gap.onPart] : [])];
}

/**
 * As large as the picture's size lets it be, in its middle.
 * @param slack mm that the outer edge may move, as a slider goes
 */
export function drawingFrame(
  points: readonly SheetPoint[],
  hasDimensions: boolean,
  { width, height }: PictureSize,
  slack: number,
): DrawingFrame {
  let [left, top, right, foot] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [u, v] of points) {
    left = Math.min(left, u);
    right = Math.max(right, u);
    top = Math.min(top, v);
    foot = Math.max(foot, v);
  }
  right += slack;
  const below = hasDimensions ? DIMENSION_ROOM : FOOT_ROOM;
  const perPx = Math.max(
    (right - left) / Math.max(60, width - NAME_ROOM - LABEL_ROOM),
    (foot - top) / Math.max(60, height - below - MARGIN),
  );
  // What is over goes to both sides alike.
  const spare = width * perPx - (right - left) - (NAME_ROOM + LABEL_ROOM) * perPx;
  const over = height * perPx - (foot - top) - (below + MARGIN) * perPx;
  const start = left - NAME_ROOM * perPx - 0.5 * spare;
  return {
    perPx,
    left: start,
    top: top - MARGIN * perPx - 0.5 * over,
    width: width * perPx,
    height: height * perPx,
    names: start + (NAME_ROOM - 8) * perPx,
    labels: start + (width - LABEL_ROOM + 6) * perPx,
    foot,
  };
}
