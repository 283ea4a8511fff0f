import { type RefObject, useEffect, useRef, useState } from "react";
import { workbench } from "../state/workbench.ts";

/** Something held by the pointer while it is dragged. */
export interface HeldDrag<Held> {
  /** null = nothing is held. */
  readonly held: RefObject<Held | null>;
  readonly isDragging: boolean;
  /** Begins the gesture: what follows is one step to undo. Call it before the first change. */
  begin(): void;
  take(held: Held): void;
  /** Keeps what was done, or puts it back. */
  stop(how: "end" | "cancel"): void;
}

/** A drag as one step to undo; Escape puts it back, and leaving the page ends it. */
export function useHeldDrag<Held>(): HeldDrag<Held> {
  const held = useRef<Held | null>(null);
  const [isDragging, setIsDragging] = useState(false);
  const stop = (how: "end" | "cancel") => {
    if (held.current === null) return;
    held.current = null;
    setIsDragging(false);
    const { endGesture, cancelGesture } = workbench.getState();
    if (how === "end") endGesture();
    else cancelGesture();
  };
  useEffect(() => {
    if (!isDragging) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === "Escape") stop("cancel");
    };
    addEventListener("keydown", onKey, true);
    return () => removeEventListener("keydown", onKey, true);
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when the drawing goes
  useEffect(() => () => stop("end"), []);
  return {
    held,
    isDragging,
    begin: () => workbench.getState().beginGesture(),
    take(taken) {
      held.current = taken;
      setIsDragging(true);
    },
    stop,
  };
}
