import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";

/** What of panels is cut away, as the stage draws it while somebody looks at it; no part of any setup. */
export interface TrimView {
  /** Closed lines, x, y, z in turn, vehicle axes, mm. */
  readonly outlines: readonly Float64Array[];
}

export const trimView = createStore<TrimView>()(() => ({ outlines: [] }));

/** Follows it. The selector must give a primitive or something that already existed. */
export function useTrimView<T>(selector: (view: TrimView) => T): T {
  return useStore(trimView, selector);
}
