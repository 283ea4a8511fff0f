import type { Setup } from "../../setup/types/types.ts";
import type { WrittenSheet } from "../../studies/documents/sheetJson.ts";
import type { ShopDrawings } from "../../studies/drawings/shopDrawings.ts";
import { cutFormat, DRAWING_CAUTIONS, unwrittenSentence } from "../../studies/wording/drawingWords.ts";
import { drawingTitles, paperHead, paperLines } from "../../studies/wording/paperHead.ts";
import { CUT_LIST_NOTES, cutRemarks, cutRows } from "../../studies/wording/pieceWords.ts";
import { textTable } from "./textTable.ts";

/** What was written and the cut list, as a person reads it. */
export function sheetTable(
  { cutList, unwritten }: ShopDrawings,
  written: readonly WrittenSheet[],
  setup: Setup,
): string {
  const format = cutFormat(setup.units);
  const { header, rows } = cutRows(cutList, format);
  const list = textTable(
    header.map((one) => ({ header: one, align: "left" as const })),
    rows,
  );
  const remarks = cutRemarks(cutList, format).map((text) => `${text}\n`);
  const notes = [...CUT_LIST_NOTES, unwrittenSentence(unwritten), ...DRAWING_CAUTIONS]
    .filter((text) => text !== "")
    .map((text) => `${text}\n`)
    .join("");
  return [`${headLines(setup)}\n`, writtenTable(written), list, remarks.join("") + notes].join("\n");
}

/** What the part is and whose, as on its papers. */
function headLines(setup: Setup): string {
  const head = paperHead(setup);
  return [drawingTitles(head).drawing, ...paperLines(head)].join("\n");
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
