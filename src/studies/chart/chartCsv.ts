import { csvText } from "../../units/csvRows.ts";
import { type CellDocument, type ChartDocument, shortKey } from "./chartDocument.ts";

/** A chart as a table for a spreadsheet, one line a cell, row by row, full precision; the header names every unit. */
export function chartCsv({ units, x, y, cells }: ChartDocument): string {
  const header = [
    shortKey(x.field),
    shortKey(y.field),
    "verdict",
    `gap (${units})`,
    `bound (${units})`,
    "part",
    "side",
    `travel (${units})`,
    "steer (share of lock)",
  ];
  const rows = cells.flatMap((row, j) =>
    row.map((cell, i) => [x.labels[i]!, y.labels[j]!, ...cellValues(cell)]),
  );
  return csvText([header, ...rows]);
}

function cellValues(cell: CellDocument): string[] {
  const empty = ["", "", "", "", "", ""];
  if ("issue" in cell) return [`does not go together: ${cell.issue}`, ...empty];
  if ("unfinished" in cell) return ["not finished", ...empty];
  const { verdict, gap, bound, part, side, travel, steer } = cell;
  const number = (value: number | null | undefined) => (value == null ? "" : String(value + 0));
  return [verdict, number(gap), number(bound), part ?? "", side ?? "", number(travel), number(steer)];
}
