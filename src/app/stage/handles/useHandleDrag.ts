import type { MouseEvent, PointerEvent } from "react";
import { useHeldDrag } from "../../parts/useHeldDrag.ts";
import type { ScreenPoint } from "../overlay/gapMark.ts";
import { focusHandle, handleStore } from "./handleStore.ts";

/** Takes hold of a mark as it stands: what then carries it so many pixels from there, right and down. */
export type Grab = (key: string) => (right: number, down: number) => void;

interface Held {
  readonly pointer: number;
  readonly carry: (right: number, down: number) => void;
  readonly from: ScreenPoint;
}

/** A mark by its key and place, pixels. */
interface Placed {
  readonly key: string;
  readonly at: ScreenPoint;
}

/** Takes hold of the mark that was pressed and moves it: one step to undo; Escape puts it back. */
export function useHandleDrag(marks: readonly Placed[], grab: Grab) {
  const { held, isDragging, begin, take, stop } = useHeldDrag<Held>();

  const drag = {
    onPointerDown(event: PointerEvent<SVGSVGElement>) {
      const pressed = (event.target as Element).closest("[data-point]")?.getAttribute("data-point");
      if (event.button !== 0 || !pressed) return;
      const from = { x: event.clientX, y: event.clientY };
      const key = nearest(marks, event.currentTarget.getBoundingClientRect(), from, pressed);
      event.preventDefault();
      event.currentTarget.setPointerCapture(event.pointerId);
      begin();
      take({ pointer: event.pointerId, carry: grab(key), from });
      handleStore.setState({ current: key });
      focusHandle(event.currentTarget, key);
    },
    // The press has given the focus already, to the nearest.
    onMouseDown: (event: MouseEvent) => event.preventDefault(),
    onPointerMove(event: PointerEvent<SVGSVGElement>) {
      const drag = held.current;
      if (drag?.pointer === event.pointerId)
        drag.carry(event.clientX - drag.from.x, event.clientY - drag.from.y);
    },
    onPointerUp: () => stop("end"),
    onPointerCancel: () => stop("cancel"),
  };
  return { isDragging, drag };
}

/** Of the marks under the pointer the nearest; the one pointed out already goes first where two stand on one spot. */
function nearest(marks: readonly Placed[], frame: DOMRect, from: ScreenPoint, pressed: string): string {
  const { current } = handleStore.getState();
  const distance = ({ key, at }: Placed) => {
    const off = Math.hypot(frame.left + at.x - from.x, frame.top + at.y - from.y);
    return key === current ? off - ON_ONE_SPOT : off;
  };
  let best = marks.find(({ key }) => key === pressed);
  for (const mark of marks) if (best && distance(mark) < distance(best)) best = mark;
  return best?.key ?? pressed;
}

/** Pixels by which the mark pointed out counts as nearer. */
const ON_ONE_SPOT = 6;
