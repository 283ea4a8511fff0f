import { jointOf, type PoseStatus } from "../../suspension/poseStatus.ts";
import { csvGap, csvNumber, STEER_COLUMN } from "../../units/csvRows.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { ClearanceMap } from "../map/clearanceMap.ts";
import type { MapReport } from "../map/mapReport.ts";
import type { Model } from "../model/model.ts";
import { withStandingColumn } from "./documentText.ts";

/**
 * A map in comma-separated values (RFC 4180, but lines end with a line feed alone), one line a side and cell. The
 * header names every unit; the last column is there when the setup gives limits. A cell out of reach has its joint under `status` and no numbers but travel and steer. An
 * aligned truck says so in a last column.
 */
export function mapCsv({ map }: MapReport, model: Model): string {
  const { units } = model.setup;
  const length = (mm: number) => csvNumber(unitsFromMm(mm, units), units);
  const lines = [
    [
      "side",
      `travel (${units})`,
      STEER_COLUMN,
      `gap (${units})`,
      "part",
      ...["x", "y", "z"].map((axis) => `${axis} (${units})`),
      "status",
      ...(map.pastLimit === null ? [] : ["limit passed"]),
    ],
  ];
  const cols = map.steers.length;
  for (const side of ["left", "right"] as const) {
    const { gap, pair, point } = map[side];
    for (let cell = 0; cell < gap.length; cell++) {
      const place = [
        side,
        length(map.travels[Math.floor(cell / cols)]!),
        csvNumber(map.steers[cell % cols]!),
      ];
      const status = map.reach.status[cell] as PoseStatus;
      const stuck = `${map.reach.side[cell] === 0 ? "left" : "right"} ${jointOf(status)} out of reach`;
      const found =
        pair[cell]! < 0
          ? ["", "", "", "", ""]
          : [
              csvGap(unitsFromMm(gap[cell]!, units), units),
              model.pairs[pair[cell]!]!.name,
              length(point[3 * cell]!),
              length(point[3 * cell + 1]!),
              length(point[3 * cell + 2]!),
            ];
      lines.push([
        ...place,
        ...found,
        status !== 0 ? stuck : Number.isNaN(gap[cell]!) ? "not looked at" : "ok",
        ...limitCells(map, cell),
      ]);
    }
  }
  return `${withStandingColumn(lines, model.setup)
    .map((cells) => cells.map(quoted).join(","))
    .join("\n")}\n`;
}

/** Both wheels share it. */
function limitCells({ pastLimit }: ClearanceMap, cell: number): string[] {
  if (pastLimit === null) return [];
  const limit = pastLimit.limits[pastLimit.passed[cell]!];
  return [limit === undefined ? "" : `${limit.side} ${limit.name}`];
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
