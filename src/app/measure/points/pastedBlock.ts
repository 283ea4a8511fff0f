import { parseLength } from "../../../units/parseLength.ts";

/** A number as people and programs write it, with no space in it. */
const PLAIN_NUMBER = /^[-+−]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[-+]?\d+)?$/i;

/**
 * Takes a block of cells apart as spreadsheets, tables and notes give it: rows by lines, cells by tabs, or where there are
 * none by semicolons, or by spaces between plain numbers, or by commas. Inside a cell spaces stay, so that `5 5/8` is one.
 * A first row of words alone is a heading and is dropped, and so are an empty row and a first column of names before as
 * many cells as go from here on.
 * @param columns cells a row may have at most
 * @returns null = one cell alone, which is no block
 */
export function pastedBlock(text: string, columns: number): readonly (readonly string[])[] | null {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== "");
  const split = splitterOf(lines);
  const cells = lines.map((line) => trimmedRow(split(line)));
  const isHeading = cells.length > 1 && cells[0]!.every((cell) => !/\d/.test(cell));
  const rows = withoutNames(isHeading ? cells.slice(1) : cells, columns);
  return rows.length === 0 || (rows.length === 1 && rows[0]!.length <= 1) ? null : rows;
}

function splitterOf(lines: readonly string[]): (line: string) => string[] {
  for (const separator of ["\t", ";"])
    if (lines.some((line) => line.includes(separator))) return (line) => line.split(separator);
  const words = (line: string) => line.trim().split(/\s+/);
  // One number with a comma in it is a number, and so is each of several with spaces between.
  if (lines.every((line) => words(line).every((word) => PLAIN_NUMBER.test(word)))) return words;
  if (lines.some((line) => line.includes(","))) return (line) => line.split(",");
  return (line) => [line];
}

/** Points often come with their names before them: `P1 383 12.5 6`. */
function withoutNames(rows: readonly (readonly string[])[], columns: number): readonly (readonly string[])[] {
  const areNamed = rows.every(
    (row) => row.length === columns + 1 && !parseLength(row[0]!, "mm").ok && /\p{L}/u.test(row[0]!),
  );
  return areNamed ? rows.map((row) => row.slice(1)) : rows;
}

/** Without space around cells, and without empty cells at the end: a selection is often a column too wide. */
function trimmedRow(row: readonly string[]): readonly string[] {
  const cells = row.map((cell) =>
    cell.trim().replace(/^"(.*)"$/, (_, inner: string) => inner.replaceAll('""', '"')),
  );
  let end = cells.length;
  while (end > 1 && cells[end - 1] === "") end -= 1;
  return cells.slice(0, end);
}
