import type { Vec3 } from "../../geometry/vec.ts";

/** A sheet of a body part laid flat: u to the right as seen from outside the truck, v up it; mm. */
export interface FlatSheet {
  /**
   * `lip`: the panel above a path, taken as a sheet through it that bends along u alone, or, where the path allows none, as the
   * plane that fits it. `face`: one face of a box.
   */
  readonly kind: "lip" | "face";
  /** Where a place of the sheet is on the truck, in the side's left-hand frame. */
  readonly placeTo: (out: Float64Array, u: number, v: number) => void;
  /** Distance on the sheet to the edge of the metal: negative where there is metal. */
  readonly edgeDistance: (u: number, v: number) => number;
  /** The edge as it is, u and v in turn. */
  readonly edge: { readonly points: Float64Array; readonly closed: boolean };
  /** Low and high corner of what is looked at: u, v. */
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
  /** mm. The edge is this thick about its line, and is taken to be so again once it is cut. */
  readonly radius: number;
  /** mm. No point of the path is farther off the sheet. */
  readonly off: number;
  /** Of a lip: its line with what goes on straight beyond either end, u and v in turn, rising along u. */
  readonly border: readonly number[];
  /** Of a lip: its points, one for each of the border but the first and the last. */
  readonly corners: readonly Vec3[];
  /** The path is typed the other way round. */
  readonly isReversed: boolean;
}

/** Distance from a place to a straight piece, all on the sheet. */
export function pieceDistance(
  u: number,
  v: number,
  u0: number,
  v0: number,
  u1: number,
  v1: number,
): { readonly distance: number; readonly share: number } {
  const [du, dv] = [u1 - u0, v1 - v0];
  const square = du * du + dv * dv;
  const share = square > 0 ? Math.min(1, Math.max(0, ((u - u0) * du + (v - v0) * dv) / square)) : 0;
  return { distance: Math.hypot(u0 + share * du - u, v0 + share * dv - v), share };
}
