import type { Setup } from "../../setup/types/types.ts";
import {
  type CellDocument,
  type ChartDocument,
  type ChartHead,
  cellDocument,
  chartDocument,
  chartHead,
} from "../../studies/chart/chartDocument.ts";
import { type ChartSearch, chartSearch } from "../../studies/chart/chartSearch.ts";
import type { ChartAsk } from "../../studies/chart/chartTypes.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import { setupHeading } from "../../studies/wording/answerWords.ts";
import { axisName } from "../../studies/wording/chartWords.ts";

/** Some cells of a chart. The document: as typed, with the variant shown, without the body. */
export interface ChartQuestion {
  readonly document: unknown;
  readonly ask: ChartAsk;
  /** Numbers of the cells, row by row. */
  readonly cells: readonly number[];
}

/** What was found of them. */
export interface ChartPiece {
  readonly cells: readonly (readonly [cell: number, told: CellDocument])[];
  readonly present: ChartHead["present"];
}

/** The document of a whole chart by the pieces there are: the one that the command line prints once all are. */
export function chartOfPieces(
  setup: Setup,
  { document, ask }: Omit<ChartQuestion, "cells">,
  pieces: readonly ChartPiece[],
): ChartDocument {
  const [x, y] = [axisName(ask.x.key, document), axisName(ask.y.key, document)];
  const cells = Array.from(
    { length: ask.x.entries.length * ask.y.entries.length },
    (): CellDocument => ({ unfinished: true }),
  );
  for (const piece of pieces) for (const [at, cell] of piece.cells) cells[at] = cell;
  const head = chartHead(setup, ask, pieces[0]?.present ?? null, { of: setupHeading(setup), x, y });
  return chartDocument(head, cells);
}

interface Known {
  readonly model: Model;
  readonly key: string;
  readonly search: ChartSearch;
  readonly present: ChartHead["present"];
}

/** The chart asked about last: its pieces lean on the same trucks. */
let known: Known | null = null;

/** @throws Error where an axis is none */
export function chartPieceOf(
  model: Model,
  { document, ask, cells }: ChartQuestion,
  budget: Budget,
): { readonly answer: ChartPiece; readonly isCut: boolean } {
  const { search, present } = searchOf(model, document, ask);
  const { units } = model.setup;
  const told = cells.map((cell, i) => {
    const share = budget.share(Math.min(2, cells.length - i));
    return [cell, cellDocument(search.cellAt(cell, share), units)] as const;
  });
  // What a budget ended on the way to a verdict that was reached all the same is nothing to search longer for.
  const isCut = told.some(([, cell]) => "unfinished" in cell);
  return { answer: { cells: told, present }, isCut };
}

function searchOf(model: Model, document: unknown, ask: ChartAsk): Known {
  const key = JSON.stringify([document, ask]);
  if (known?.model === model && known.key === key) return known;
  const { setup } = model;
  const truck = { document, setup, file: "", isAligned: setup.alignment.standing !== undefined };
  const made = chartSearch(truck, ask);
  if (!made.ok) throw new Error(made.issues[0]!.mend);
  const search = made.value;
  const [column, row] = [search.presentOn("x"), search.presentOn("y")];
  known = { model, key, search, present: column === null || row === null ? null : { column, row } };
  return known;
}
