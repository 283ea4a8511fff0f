import { contours } from "d3-contour";
import type { ClearanceMap } from "../../../studies/map/clearanceMap.ts";
import type { MapFrame } from "./mapFrame.ts";

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
