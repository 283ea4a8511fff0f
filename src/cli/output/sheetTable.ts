import type { Setup } from "../../setup/types/types.ts";
import type { WrittenSheet } from "../../studies/documents/sheetJson.ts";
import type { ShopDrawings } from "../../studies/drawings/shopDrawings.ts";
import { cutFormat, DRAWING_CAUTIONS, unwrittenSentence } from "../../studies/wording/drawingWords.ts";
import { CUT_LIST_NOTES, cutRows, endRemarks } from "../../studies/wording/pieceWords.ts";
import { heading, textTable } from "./textTable.ts";

/** What was written and the cut list, as a person reads it. */
export function sheetTable(
  { pieces, unwritten }: ShopDrawings,
  written: readonly WrittenSheet[],
  setup: Setup,
): string {
  const format = cutFormat(setup.units);
  const { header, rows } = cutRows(pieces, format);
  const list = textTable(
    header.map((one) => ({ header: one, align: "left" as const })),
    rows,
  );
  const remarks = pieces.flatMap((piece) =>
    piece.ends.flatMap((end) => endRemarks(end, format).map((text) => `${piece.name}: ${text}\n`)),
  );
  const notes = [...CUT_LIST_NOTES, unwrittenSentence(unwritten), ...DRAWING_CAUTIONS]
    .filter((text) => text !== "")
    .map((text) => `${text}\n`)
    .join("");
  return [
    `${heading(setup)}\n`,
    writtenTable(written),
    ...(pieces.length > 0 ? [list] : []),
    remarks.join("") + notes,
  ].join("\n");
}

/** Drawings that were written, a line each. */
export function writtenTable(written: readonly WrittenSheet[]): string {
  return textTable(
    ["Written", "What", "Scale", "Paper", "Bytes"].map((header, i) => ({
      header,
      align: i < 4 ? ("left" as const) : ("right" as const),
    })),
    written.map(({ file, kind, scale, paper, bytes }) => [
      file,
      kind,
      scale ?? "–",
      paper ?? "–",
      String(bytes.length),
    ]),
  );
}
