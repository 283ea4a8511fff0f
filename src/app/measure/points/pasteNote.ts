import type { Pasted } from "./pasteInto.ts";

/** Cells or rows named one by one; more are only counted. */
const MOST_NAMED = 3;

/** What a paste did, and what is left to do: `5 rows pasted. Marked to be mended: row 2, y “5 im”.` */
export function pasteNote(rows: number, { unread, leftOver }: Pasted, columns: readonly string[]): string {
  const said = [`${rows} ${rows === 1 ? "row" : "rows"} pasted.`];
  if (unread.length > 0) {
    const cells = unread.map(({ row, column, text }) => `row ${row + 1}, ${columns[column]} “${text}”`);
    said.push(`Marked to be mended: ${named(cells)}.`);
  }
  if (leftOver.length > 0) said.push(`No place here for ${named(leftOver.map((text) => `“${text}”`))}.`);
  return said.join(" ");
}

function named(all: readonly string[]): string {
  const more = all.length - MOST_NAMED;
  return all.slice(0, MOST_NAMED).join("; ") + (more > 0 ? `; and ${more} more` : "");
}
