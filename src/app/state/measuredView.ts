import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Vec3 } from "../../geometry/vec.ts";

/** A point that readings or a typed ± tell, as the stage draws it: where it lies and how far from there it may be. Vehicle axes, mm. */
export interface EllipseView {
  /** What it is called; "" = no word is written at it. */
  readonly name: string;
  readonly at: Vec3;
  /**
   * What carries a ball of radius 1 to the ellipsoid of one standard deviation: the lower triangle L of the covariance
   * L Lᵀ, row by row.
   */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** Something of it is a guess still: it is drawn dashed and named. */
  readonly isAssumed: boolean;
  /** It is told by what is typed beside numbers: exact where nothing is. Default false. */
  readonly isTyped?: boolean;
}

/** What the form shows on the stage, only while it is open; no part of any setup. */
export interface MeasuredView {
  /** Of the worksheet. */
  readonly ellipses: readonly EllipseView[];
  /** Of scans' matched points, by the path of each list of them. */
  readonly matched: Readonly<Record<string, readonly EllipseView[]>>;
}

/** Followed by the stage. */
export const measuredView = createStore<MeasuredView>()(() => ({ ellipses: [], matched: {} }));

/** Follows it. The selector must give a primitive or something that already existed. */
export function useMeasuredView<T>(selector: (view: MeasuredView) => T): T {
  return useStore(measuredView, selector);
}

/** The axes of an ellipsoid that lies along the vehicle's own. @param within one standard deviation of each, mm */
export function axesOf([x, y, z]: Vec3): EllipseView["axes"] {
  return [
    [x, 0, 0],
    [0, y, 0],
    [0, 0, z],
  ];
}
