import { parseKeyText } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { csvGap, csvNumber, csvText, STEER_COLUMN } from "../../units/csvRows.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { AxisAsk, ChartAsk, ChartCell } from "./chartTypes.ts";

/** An axis of a chart's document. */
export interface AxisDocument {
  readonly field: string;
  /** What a form calls it. */
  readonly name: string;
  /** As the setup file would hold them. */
  readonly values: readonly unknown[];
  /** What each is called. */
  readonly labels: readonly string[];
}

/** A cell of a chart's document; lengths in the file's units. */
export type CellDocument =
  | {
      readonly verdict: "clear" | "close" | "rubs";
      readonly gap: number | null;
      readonly bound: number | null;
      readonly part: string | null;
      readonly side: "left" | "right" | null;
      readonly travel?: number;
      readonly steer?: number;
      readonly ride?: "together";
    }
  | { readonly issue: string }
  | { readonly unfinished: true };

/** A chart as a document, but for its cells: lengths in the file's units, full precision. */
export interface ChartHead {
  /** Which setup it is of. */
  readonly of: string;
  readonly units: Setup["units"];
  readonly x: AxisDocument;
  readonly y: AxisDocument;
  /** Heights looked at, as travel. */
  readonly travel: { readonly from: number; readonly to: number };
  /** Share of full lock looked at either way. */
  readonly lock: number;
  readonly allowance: number;
  /** Where the truck as it stands is; null = not on the chart. */
  readonly present: { readonly column: number; readonly row: number } | null;
}

export interface ChartDocument extends ChartHead {
  /** The budget was spent before all cells were worked out. */
  readonly cutShort?: true;
  /** Rows over y. */
  readonly cells: readonly (readonly CellDocument[])[];
}

/** How a chart is called: the setup, and its axes. */
export interface ChartNames {
  readonly of: string;
  readonly x: string;
  readonly y: string;
}

export function chartHead(
  { units, travel: own, allowance }: Setup,
  { x, y, travel, lock }: ChartAsk,
  present: ChartHead["present"],
  names: ChartNames,
): ChartHead {
  return {
    of: names.of,
    units,
    x: axisDocument(x, names.x),
    y: axisDocument(y, names.y),
    travel: {
      from: unitsFromMm(travel?.low ?? own.droop, units),
      to: unitsFromMm(travel?.high ?? own.bump, units),
    },
    lock,
    allowance: unitsFromMm(allowance, units),
    present,
  };
}

/** @param cells row by row, one for each place of the chart */
export function chartDocument(head: ChartHead, cells: readonly CellDocument[]): ChartDocument {
  const columns = head.x.values.length;
  const isCut = cells.some((cell) => "unfinished" in cell);
  return {
    ...head,
    ...(isCut ? { cutShort: true as const } : {}),
    cells: head.y.values.map((_, row) => cells.slice(row * columns, (row + 1) * columns)),
  };
}

function axisDocument({ key, entries }: AxisAsk, name: string): AxisDocument {
  return {
    field: key,
    name,
    values: entries.map(({ typed }) => typed),
    labels: entries.map(({ label }) => label),
  };
}

export function cellDocument(cell: ChartCell, units: Setup["units"]): CellDocument {
  if (cell.kind === "issue") return { issue: cell.issue };
  if (cell.kind === "unfinished") return { unfinished: true };
  const { verdict, gap, bound, part, side, travel, steer, together } = cell;
  const length = (mm: number | null) => (mm === null ? null : unitsFromMm(mm, units));
  const told = { verdict, gap: length(gap), bound: length(bound), part, side };
  if (part === null) return told;
  if (together) return { ...told, ride: "together" };
  return { ...told, travel: unitsFromMm(travel, units), steer };
}

/** The last key of a field: what a column of it is called. */
function shortKey(field: string): string {
  return String(parseKeyText(field)?.at(-1) ?? field);
}

/** A chart as a table for a spreadsheet, one line a cell, row by row; the header names every unit. */
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
    STEER_COLUMN,
  ];
  const rows = cells.flatMap((row, j) =>
    row.map((cell, i) => [x.labels[i]!, y.labels[j]!, ...cellValues(cell, units)]),
  );
  return csvText([header, ...rows]);
}

function cellValues(cell: CellDocument, units: Setup["units"]): string[] {
  const empty = ["", "", "", "", "", ""];
  if ("issue" in cell) return [`does not go together: ${cell.issue}`, ...empty];
  if ("unfinished" in cell) return ["not finished", ...empty];
  const { verdict, gap, bound, part, side, travel, steer } = cell;
  const room = (value: number | null) => (value === null ? "" : csvGap(value, units));
  return [
    verdict,
    room(gap),
    room(bound),
    part ?? "",
    side ?? "",
    travel === undefined ? "" : csvNumber(travel, units),
    steer === undefined ? "" : csvNumber(steer),
  ];
}
