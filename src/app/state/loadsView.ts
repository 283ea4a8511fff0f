import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { length, type Vec3 } from "../../geometry/vec.ts";

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
  /** Straight ahead at the height it drives at; as shown on the stage; each case where it is worst. */
  readonly pose: "home" | "now" | "worst";
  /** What the stage draws: only while the forces are those of the pose it shows. */
  readonly arrows: readonly LoadArrow[];
}

/** mm of the longest arrow; the others by their force. */
const LONGEST = 220;

/** The one scale of all arrows drawn, mm for a newton. */
export function mmPerNewton(arrows: readonly LoadArrow[]): number {
  return LONGEST / Math.max(...arrows.map(({ force }) => length(force)), 1e-9);
}

export const loadsView = createStore<LoadsView>()(() => ({ case: null, pose: "home", arrows: [] }));

/** Changes some of it. */
export const setLoadsView = loadsView.setState;

/** Follows it. The selector must give a primitive or something that already existed. */
export function useLoadsView<T>(selector: (view: LoadsView) => T): T {
  return useStore(loadsView, selector);
}
