import type { MouseEvent, PointerEvent } from "react";
import { useHeldDrag } from "../../parts/useHeldDrag.ts";
import type { ScreenPoint } from "../overlay/gapMark.ts";
import { focusHandle, handleStore } from "./handleStore.ts";
import { carryStagePoint } from "./moveStagePoint.ts";
import { onPicture, type Picture, type PicturePlane } from "./picturePlane.ts";
import type { StagePoint } from "./stagePoints.ts";

interface Held {
  readonly pointer: number;
  readonly point: StagePoint;
  readonly from: ScreenPoint;
}

/** Takes hold of the point that was pressed and moves it in the picture's plane: one step to undo; Escape puts it back. */
export function useHandleDrag(
  points: readonly StagePoint[],
  picture: Picture | null,
  plane: PicturePlane | null,
) {
  const { held, begin, take, stop } = useHeldDrag<Held>();

  return {
    onPointerDown(event: PointerEvent<SVGSVGElement>) {
      const pressed = (event.target as Element).closest("[data-point]")?.getAttribute("data-point");
      if (event.button !== 0 || !pressed || !picture) return;
      const from = { x: event.clientX, y: event.clientY };
      const point = nearest(points, picture, event.currentTarget.getBoundingClientRect(), from, pressed);
      if (!point) return;
      event.preventDefault();
      event.currentTarget.setPointerCapture(event.pointerId);
      begin();
      take({ pointer: event.pointerId, point, from });
      handleStore.setState({ current: point.key });
      focusHandle(event.currentTarget, point.key);
    },
    // The press has given the focus already, to the nearest.
    onMouseDown: (event: MouseEvent) => event.preventDefault(),
    onPointerMove(event: PointerEvent<SVGSVGElement>) {
      const drag = held.current;
      if (drag?.pointer !== event.pointerId || !picture || !plane) return;
      const { across, along } = plane;
      const shift = (axis: number, pixels: number, perMm: number) => {
        const isMirrored = axis === 1 && drag.point.seen[1] !== drag.point.at[1];
        return { axis, mm: (isMirrored ? -1 : 1) * (pixels / perMm) };
      };
      carryStagePoint(drag.point, [
        shift(across, event.clientX - drag.from.x, picture.axes[across]!.x),
        shift(along, event.clientY - drag.from.y, picture.axes[along]!.y),
      ]);
    },
    onPointerUp: () => stop("end"),
    onPointerCancel: () => stop("cancel"),
  };
}

/** Of the points under the pointer the nearest; the one pointed out already goes first where two stand on one spot. */
function nearest(
  points: readonly StagePoint[],
  picture: Picture,
  frame: DOMRect,
  from: ScreenPoint,
  pressed: string,
): StagePoint | undefined {
  const { current } = handleStore.getState();
  const distance = (point: StagePoint) => {
    const { x, y } = onPicture(picture, point.seen);
    const off = Math.hypot(frame.left + x - from.x, frame.top + y - from.y);
    return point.key === current ? off - ON_ONE_SPOT : off;
  };
  let best = points.find(({ key }) => key === pressed);
  for (const point of points) if (best && distance(point) < distance(best)) best = point;
  return best;
}

/** Pixels by which the point pointed out counts as nearer. */
const ON_ONE_SPOT = 6;
