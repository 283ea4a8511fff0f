import { scaleLinear } from "d3-scale";

/** The map's drawing, in its own units; the page scales it. */
export const MAP_BOX = { width: 400, height: 272, left: 50, right: 12, top: 12, bottom: 40 } as const;

export interface MapFrame {
  /** Steer to the right: left lock stands at the left, the way the wheels go. */
  readonly x: (steer: number) => number;
  /** Travel upward: bump, the truck low, at the top. */
  readonly y: (travel: number) => number;
  readonly steerAt: (x: number) => number;
  readonly travelAt: (y: number) => number;
}

export function mapFrameOf(droop: number, bump: number): MapFrame {
  const { width, height, left, right, top, bottom } = MAP_BOX;
  const x = scaleLinear([1, -1], [left, width - right]).clamp(true);
  const y = scaleLinear([droop, bump], [height - bottom, top]).clamp(true);
  return { x, y, steerAt: (at) => x.invert(at), travelAt: (at) => y.invert(at) };
}
