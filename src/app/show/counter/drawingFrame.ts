import type { SheetPoint, WheelDrawing } from "./wheelDrawing.ts";

/** The piece of sheet that is shown, with room for labels to its right and for dimensions below; mm but where it says. */
export interface DrawingFrame {
  /** mm of the truck to a pixel of the page. */
  readonly perPx: number;
  readonly left: number;
  readonly top: number;
  /** Where the labels begin. */
  readonly labels: number;
  readonly right: number;
  /** The lowest of the wheels; dimensions go below. */
  readonly foot: number;
  readonly bottom: number;
}

/** Pixels. */
const LABEL_ROOM = 108;
const DIMENSION_ROOM = 76;
/** mm shown around the wheels. */
const MARGIN = 40;

/**
 * Room for the wheels as they are drawn.
 * @param width of the picture, px; @param slack mm that the outer edge may move, as a slider goes
 */
export function drawingFrame(
  drawings: readonly WheelDrawing[],
  hasDimensions: boolean,
  width: number,
  slack: number,
): DrawingFrame {
  const points: SheetPoint[] = drawings.flatMap((drawing) => [
    ...drawing.outline,
    ...[drawing.upperBallJoint, drawing.lowerBallJoint, drawing.pinStart],
    ...(drawing.gap ? [drawing.gap.onPart] : []),
  ]);
  let [left, top, right, foot] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [u, v] of points) {
    left = Math.min(left, u);
    right = Math.max(right, u);
    top = Math.min(top, v);
    foot = Math.max(foot, v);
  }
  left -= MARGIN;
  top -= MARGIN;
  const labels = right + slack + 0.5 * MARGIN;
  const perPx = (labels - left) / Math.max(80, width - LABEL_ROOM);
  const bottom = foot + (hasDimensions ? DIMENSION_ROOM * perPx : MARGIN);
  return { perPx, left, top, labels, right: labels + LABEL_ROOM * perPx, foot, bottom };
}
