import { createStore } from "zustand/vanilla";

/** Whether a pointer is held down anywhere on the page: while something is dragged, what is told beside it stays as it is. */
export const pointerHeld = createStore<{ readonly isHeld: boolean }>()(() => ({ isHeld: false }));

/** Follows the pointers of a page, before anything on it hears of them. @returns ends that */
export function followPointers(page: EventTarget): () => void {
  const held = new Set<number>();
  const follow = (event: Event) => {
    const { pointerId, type, button } = event as PointerEvent;
    // Of other buttons than the first a page is not always told that they are let go.
    if (type === "pointerdown" && button === 0) held.add(pointerId);
    else held.delete(pointerId);
    pointerHeld.setState({ isHeld: held.size > 0 });
  };
  const types = ["pointerdown", "pointerup", "pointercancel"];
  for (const type of types) page.addEventListener(type, follow, true);
  return () => {
    for (const type of types) page.removeEventListener(type, follow, true);
  };
}

/** Runs something when no pointer is held: at once, or when the last one is let go. */
export function whenLetGo(run: () => void): void {
  if (!pointerHeld.getState().isHeld) {
    run();
    return;
  }
  const stop = pointerHeld.subscribe(({ isHeld }) => {
    if (isHeld) return;
    stop();
    run();
  });
}
