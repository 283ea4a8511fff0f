import { RIM_FLANGE_WIDTH } from "../../units/wheelOffset.ts";

/** A wheel by straightedge, mm; null = not read. */
export interface StraightedgeWheel {
  /** Between the flanges, where the beads sit. */
  readonly rimWidth: number | null;
  /** Mounting face to inboard rim edge. */
  readonly backspacing: number | null;
}

/**
 * The wheel from a straightedge over its inboard lip (mounting face to straightedge: the backspacing) and over both lips.
 * The beads sit inside the lips by a flange on each side. @param lipToLip outside to outside
 */
export function wheelFromStraightedge(
  backspacing: number | null,
  lipToLip: number | null,
): StraightedgeWheel {
  const rimWidth = lipToLip === null ? null : lipToLip - 2 * RIM_FLANGE_WIDTH;
  return { rimWidth: rimWidth !== null && rimWidth > 0 ? rimWidth : null, backspacing };
}
