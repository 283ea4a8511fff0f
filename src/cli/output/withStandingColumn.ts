import type { Setup } from "../../setup/types/types.ts";
import { standingWords } from "../../studies/wording/standingWords.ts";

/** Rows of a table for a spreadsheet, the first its header; of an aligned truck with a last column that says so. */
export function withStandingColumn(rows: readonly string[][], setup: Setup): readonly string[][] {
  if (setup.alignment.standing === undefined) return rows;
  const words = standingWords(setup) ?? "";
  return rows.map((row, i) => [...row, i === 0 ? "shown" : words]);
}
