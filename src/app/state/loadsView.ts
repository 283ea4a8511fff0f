import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Vec3 } from "../../geometry/vec.ts";

/** A force to be drawn where it acts; vehicle axes (right side y < 0), mm and N. */
export interface LoadArrow {
  readonly name: string;
  readonly at: Vec3;
  readonly force: Vec3;
}

/** Which loads are looked at; no part of any setup, and gone with the page. */
export interface LoadsView {
  /** null = the first one. */
  readonly case: string | null;
  readonly pose: "now" | "worst";
  /** What the stage draws: only while the forces are those of the pose it shows. */
  readonly arrows: readonly LoadArrow[];
}

const view = createStore<LoadsView>()(() => ({ case: null, pose: "now", arrows: [] }));

/** Changes some of it. */
export const setLoadsView = view.setState;

/** Follows it. The selector must give a primitive or something that already existed. */
export function useLoadsView<T>(selector: (view: LoadsView) => T): T {
  return useStore(view, selector);
}
