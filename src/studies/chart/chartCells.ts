import type { LengthUnit } from "../../setup/types/types.ts";
import type { Budget } from "../numeric/budget.ts";
import { type CellDocument, cellDocument } from "./chartDocument.ts";
import type { ChartSearch } from "./chartSearch.ts";

/** Every `of`-th cell of a chart, from the `at`-th on. */
export interface ShareOfCells {
  readonly at: number;
  readonly of: number;
}

/** Cells between two tellings of how far it is. */
const TOLD_EVERY = 16;

/** Of what is left of the budget a cell has this part at most. */
const MOST_PART = 8;

/** The numbers of a share's cells, row by row. @param count of the whole chart */
export function cellsOfShare({ at, of }: ShareOfCells, count: number): readonly number[] {
  return Array.from({ length: Math.max(0, Math.ceil((count - at) / of)) }, (_, i) => at + i * of);
}

/** A share of a chart's cells by number, coarse to fine until the budget is spent. @param onProgress told the part done, 0 … 1 */
export function chartCells(
  search: ChartSearch,
  share: ShareOfCells,
  units: LengthUnit,
  budget: Budget,
  onProgress: (done: number) => void,
): ReadonlyMap<number, CellDocument> {
  const wanted = new Set(cellsOfShare(share, search.count));
  const cells = new Map<number, CellDocument>();
  for (const cell of search.order()) {
    if (!wanted.has(cell)) continue;
    if (cells.size % TOLD_EVERY === 0) onProgress(cells.size / wanted.size);
    const part = budget.share(Math.min(MOST_PART, wanted.size - cells.size));
    cells.set(cell, cellDocument(search.cellAt(cell, part), units));
  }
  return cells;
}
