import type { Setup } from "../../setup/types/types.ts";
import { type Bounds, boundsOf } from "../../studies/drawings/drawnView.ts";
import { knuckleSolid } from "../../studies/knuckleSolid/knuckleSolid.ts";
import { projectedView } from "../../studies/views/hiddenLines.ts";
import { VIEWS } from "../../studies/views/viewAxes.ts";

/** A small picture of a knuckle from the front, mm of the knuckle: outboard to the right, up the steering axis. */
export interface KnuckleView {
  /** Each x0, y0, x1, y1, … */
  readonly lines: readonly Float64Array[];
  readonly bounds: Bounds;
}

/** The picture of a setup's build; null = it has no body. */
export function knuckleViewOf({ build, knuckle }: Setup): KnuckleView | null {
  const bodies = build === null ? [] : knuckleSolid(build, knuckle);
  if (bodies.length === 0) return null;
  const { seen } = projectedView(
    bodies.map(({ mesh }) => mesh),
    VIEWS.front,
  );
  return { lines: seen, bounds: boundsOf(seen) };
}
