import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { ScreenPoint } from "../overlay/gapMark.ts";
import type { Picture } from "./picturePlane.ts";

/** What points to be moved share with the picture and with the strip below it. */
export interface HandleState {
  /** As the last frame was drawn; null before the first. */
  readonly picture: Picture | null;
  /** Where the marks are drawn, pixels; empty while there are none. Labels keep off them. */
  readonly marks: readonly ScreenPoint[];
  /** Key of the point pointed out; null = the first. */
  readonly current: string | null;
}

export const handleStore = createStore<HandleState>()(() => ({ picture: null, marks: [], current: null }));

/** Follows it. The selector must give a primitive or something that already existed. */
export function useHandles<T>(selector: (state: HandleState) => T): T {
  return useStore(handleStore, selector);
}

/** Gives a point's mark the focus. @param inside anything in the drawing that holds the marks */
export function focusHandle(inside: Element, key: string): void {
  inside
    .closest("svg")
    ?.querySelector<SVGGElement>(`[data-point="${CSS.escape(key)}"]`)
    ?.focus();
}
