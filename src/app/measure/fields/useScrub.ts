import { type PointerEvent, useEffect, useRef } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { workbench } from "../../state/workbench.ts";
import { noteChanged } from "./changedField.ts";
import { stepFrom, stepStart } from "./stepBy.ts";

/** CSS pixels to the side that are one step. */
const PIXELS_A_STEP = 6;

/** Pixels that a click may wander without being a drag. */
const CLICK_SLACK = 4;

/** What a handle needs to scrub a field. */
export interface Scrub {
  onPointerDown(event: PointerEvent<HTMLElement>): void;
  onPointerMove(event: PointerEvent<HTMLElement>): void;
  onPointerUp(event: PointerEvent<HTMLElement>): void;
  onPointerCancel(event: PointerEvent<HTMLElement>): void;
  onClick(event: { preventDefault(): void }): void;
}

interface Drag {
  readonly pointer: number;
  readonly fromX: number;
  readonly start: unknown;
  isDragging: boolean;
}

/** Drags a field's value to the side, as one step to undo; Escape puts it back. A click stays a click. */
export function useScrub(path: KeyPath): Scrub {
  const drag = useRef<Drag | null>(null);
  const wasDrag = useRef(false);
  const onEscape = useRef((event: KeyboardEvent) => {
    if (event.key !== "Escape" || !drag.current) return;
    event.stopPropagation();
    if (drag.current.isDragging) workbench.getState().cancelGesture();
    drag.current = null;
  });
  const stop = () => {
    removeEventListener("keydown", onEscape.current, true);
    if (drag.current?.isDragging) {
      workbench.getState().endGesture();
      // Its range comes now: it would lie over fields in the drag.
      noteChanged(path);
    }
    drag.current = null;
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when the handle goes
  useEffect(() => stop, []);

  return {
    onPointerDown(event) {
      wasDrag.current = false;
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      drag.current = {
        pointer: event.pointerId,
        fromX: event.clientX,
        start: stepStart(path),
        isDragging: false,
      };
      addEventListener("keydown", onEscape.current, true);
    },
    onPointerMove(event) {
      const now = drag.current;
      if (now?.pointer !== event.pointerId) return;
      const dx = event.clientX - now.fromX;
      if (!now.isDragging) {
        if (Math.abs(dx) < CLICK_SLACK) return;
        now.isDragging = wasDrag.current = true;
        workbench.getState().beginGesture();
      }
      stepFrom(path, now.start, Math.round(dx / PIXELS_A_STEP));
    },
    onPointerUp: stop,
    onPointerCancel() {
      // The page scrolls with the finger instead: what it moved on the way is put back.
      if (drag.current?.isDragging) workbench.getState().cancelGesture();
      drag.current = null;
      stop();
    },
    onClick(event) {
      if (wasDrag.current) event.preventDefault();
    },
  };
}
