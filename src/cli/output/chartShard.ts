import { cellsOfShare, type ShareOfCells } from "../../studies/chart/chartCells.ts";
import type { CellDocument, ChartHead } from "../../studies/chart/chartDocument.ts";
import { BROKEN_SHARD, NO_SHARD } from "../../studies/wording/fileMends.ts";

/** One piece of a chart, as it stands in a file: JSON lines, the first about the chart, then a line a cell. */
export interface ShardFile extends ShareOfCells {
  readonly head: ChartHead;
  /** What stands beside a chart in its document. */
  readonly beside: object;
  /** By number, row by row. */
  readonly cells: ReadonlyMap<number, CellDocument>;
}

const FORMAT = "wellsweep-chart-piece";

export function shardText({ at, of, head, beside, cells }: ShardFile): string {
  const first = { format: FORMAT, version: 1, piece: at + 1, of, chart: head, beside };
  const rest = [...cells].sort(([a], [b]) => a - b).map(([cell, told]) => ({ cell, ...told }));
  return `${[first, ...rest].map((line) => JSON.stringify(line)).join("\n")}\n`;
}

/** Reads what `shardText` wrote, or says what is wrong with it. */
export function readShard(text: string): ShardFile | string {
  const [first, ...rest] = text.split("\n").filter((line) => line.trim() !== "");
  const start = objectOf(first ?? "");
  if (start?.format !== FORMAT || start.version !== 1) return NO_SHARD;
  const { piece, of, chart, beside } = start as unknown as {
    piece: number;
    of: number;
    chart: ChartHead;
    beside: object;
  };
  if (!isHead(chart) || typeof beside !== "object" || beside === null) return NO_SHARD;
  const shard = { at: piece - 1, of };
  if (!(Number.isInteger(piece) && Number.isInteger(of) && piece >= 1 && piece <= of)) return NO_SHARD;
  const cells = new Map<number, CellDocument>();
  for (const line of rest) {
    const { cell, ...told } = objectOf(line) ?? {};
    if (typeof cell !== "number" || cells.has(cell) || !isCell(told)) return BROKEN_SHARD;
    cells.set(cell, told);
  }
  const wanted = cellsOfShare(shard, chart.x.values.length * chart.y.values.length);
  if (wanted.length !== cells.size || wanted.some((cell) => !cells.has(cell))) return BROKEN_SHARD;
  return { ...shard, head: chart, beside, cells };
}

function objectOf(line: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === "object" && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}

function isHead(head: unknown): head is ChartHead {
  const { of, units, x, y, travel, lock, allowance, present } = (head ?? {}) as Partial<ChartHead>;
  const numbers = [
    travel?.from,
    travel?.to,
    lock,
    allowance,
    ...(present == null ? [] : [present.column, present.row]),
  ];
  return (
    typeof of === "string" &&
    (units === "in" || units === "mm") &&
    isAxis(x) &&
    isAxis(y) &&
    numbers.every((number) => typeof number === "number") &&
    present !== undefined
  );
}

function isAxis(axis: unknown): boolean {
  const { field, name, values, labels } = (axis ?? {}) as Partial<ChartHead["x"]>;
  return (
    typeof field === "string" &&
    typeof name === "string" &&
    Array.isArray(values) &&
    Array.isArray(labels) &&
    labels.length === values.length &&
    labels.every((label) => typeof label === "string")
  );
}

function isCell(told: object): told is CellDocument {
  if ("issue" in told) return typeof told.issue === "string";
  if ("unfinished" in told) return told.unfinished === true;
  const { verdict, gap, bound, part, side } = told as Partial<Record<string, unknown>>;
  const isNumber = (value: unknown) => value === null || typeof value === "number";
  return (
    ["clear", "close", "rubs"].includes(String(verdict)) &&
    isNumber(gap) &&
    isNumber(bound) &&
    (part === null || typeof part === "string") &&
    (side === null || side === "left" || side === "right")
  );
}
