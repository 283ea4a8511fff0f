import { contours } from "d3-contour";
import type { ClearanceMap } from "../../../studies/map/clearanceMap.ts";
import type { DrawnMap, MapSideName } from "../../work/drawnMap.ts";
import type { MapFrame } from "./mapFrame.ts";

/** Parts of the map as SVG paths, "" where there is none. What none of them covers is drawn as rubbing. */
export interface MapRegions {
  /** From touch on, from the allowance on, and each twice as far as the one before; one within the other. */
  readonly bands: readonly string[];
  /** Where the budget was spent before it was looked at, and `unreached` with it, which is drawn over it: so no gap is between. */
  readonly open: string;
  /** Where the linkage cannot go. */
  readonly unreached: string;
  /** Where a limit is passed. */
  readonly past: string;
}

/**
 * As far from its threshold as a cell without a gap is for the tones: the line between a cell that clears and one without a
 * gap is the same seen from both, and nothing shows between them as rubbing.
 */
const FAR = 1e6;

/** @param allowance mm the shop wants to keep */
export function mapRegions(
  drawn: DrawnMap,
  side: MapSideName,
  allowance: number,
  frame: MapFrame,
): MapRegions {
  const { map } = drawn;
  const gap = drawn.gap[side];
  const steps = [0, allowance, 2 * allowance, 4 * allowance, 8 * allowance];
  const isUnreached = (cell: number) => map.reach.status[cell] !== 0;
  const region = (of: (cell: number) => number) =>
    bandPaths(map, Float64Array.from(gap.keys(), of), [0], frame)[0]!;
  const { pastLimit } = map;
  return {
    bands: bandPaths(map, gap, allowance > 0 ? steps : [0], frame),
    open: map.cutShort ? region((cell) => (isUnreached(cell) || isOpen(map, gap, cell) ? FAR : -1)) : "",
    unreached: region((cell) => (isUnreached(cell) ? FAR : -1)),
    past:
      pastLimit === null || pastLimit.limits.length === 0 ? "" : region((cell) => -pastLimit.share[cell]!),
  };
}

/** Whether a cell of the map is in reach and has no gap because the budget was spent first. @param gap of each cell, mm */
export function isOpen(map: ClearanceMap, gap: Float64Array, cell: number): boolean {
  return map.cutShort === true && map.reach.status[cell] === 0 && Number.isNaN(gap[cell]);
}

/**
 * Outlines of the parts of the map where values are at least each threshold, as SVG paths. d3's contours count cells
 * from their corners and values stand at their middles; a value that is no number is below every threshold.
 */
export function bandPaths(
  { travels, steers }: ClearanceMap,
  values: Float64Array,
  thresholds: readonly number[],
  frame: MapFrame,
): string[] {
  const rows = travels.length;
  const cols = steers.length;
  const travelAt = (at: number) =>
    travels[0]! + ((at - 0.5) / (rows - 1)) * (travels[rows - 1]! - travels[0]!);
  const steerAt = (at: number) => steers[0]! + ((at - 0.5) / (cols - 1)) * (steers[cols - 1]! - steers[0]!);
  const outline = contours().size([cols, rows]);
  const numbers = Array.from(values, (v) => (Number.isFinite(v) ? v : v > 0 ? 1e6 : -1e6));
  return thresholds.map((threshold) =>
    outline
      .contour(numbers, threshold)
      .coordinates.flat()
      .map(
        (line) =>
          `M${line.map(([c, r]) => `${at(frame.x(steerAt(c!)))} ${at(frame.y(travelAt(r!)))}`).join("L")}Z`,
      )
      .join(""),
  );
}

function at(value: number): string {
  return value.toFixed(1);
}
