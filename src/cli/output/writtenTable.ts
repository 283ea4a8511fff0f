import type { WrittenSheet } from "../../studies/documents/sheetJson.ts";
import { textTable } from "./textTable.ts";

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
