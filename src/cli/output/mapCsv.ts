import type { MapReport } from "../../studies/map/mapReport.ts";
import type { Model } from "../../studies/model.ts";
import { jointOf, type PoseStatus } from "../../suspension/poseStatus.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";

/**
 * A map in comma-separated values (RFC 4180, but lines end with a line feed alone), one line a side and cell. The
 * header names every unit. A cell out of reach has its joint under `status` and no numbers but travel and steer.
 */
export function mapCsv({ map }: MapReport, model: Model): string {
  const { units } = model.setup;
  const length = (mm: number) => String(unitsFromMm(mm, units) + 0); // + 0 turns −0 into 0
  const lines = [
    [
      "side",
      `travel (${units})`,
      "steer (share of lock)",
      `gap (${units})`,
      "part",
      ...["x", "y", "z"].map((axis) => `${axis} (${units})`),
      "status",
    ],
  ];
  const cols = map.steers.length;
  for (const side of ["left", "right"] as const) {
    const { gap, pair, point } = map[side];
    for (let cell = 0; cell < gap.length; cell++) {
      const place = [side, length(map.travels[Math.floor(cell / cols)]!), String(map.steers[cell % cols]!)];
      const status = map.reach.status[cell] as PoseStatus;
      const stuck = `${map.reach.side[cell] === 0 ? "left" : "right"} ${jointOf(status)} out of reach`;
      const found =
        pair[cell]! < 0
          ? ["", "", "", "", ""]
          : [
              length(gap[cell]!),
              model.pairs[pair[cell]!]!.name,
              length(point[3 * cell]!),
              length(point[3 * cell + 1]!),
              length(point[3 * cell + 2]!),
            ];
      lines.push([...place, ...found, status === 0 ? "ok" : stuck]);
    }
  }
  return `${lines.map((cells) => cells.map(quoted).join(",")).join("\n")}\n`;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
