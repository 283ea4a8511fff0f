import { readTyped } from "../../../setup/editing/readTyped.ts";
import type { SetupField } from "../../../setup/fields/setupField.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
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

/** A list of points as the file holds it, and what is put over it. */
export interface Paste {
  readonly points: readonly (readonly unknown[])[];
  readonly rows: readonly (readonly string[])[];
  /** Where the first cell goes, from 0. */
  readonly row: number;
  readonly column: number;
  /** The field of each column. */
  readonly fields: readonly SetupField[];
  /** Rows past the end become points, and whole rows pasted at the top are all the points there are then. */
  readonly mayGrow: boolean;
  readonly fileUnits: FileUnits;
  /** Unit of bare lengths in what is pasted: the one shown. */
  readonly bareUnits: FileUnits;
}

/** A cell that could not be read: what stands at its place stays, and its text is to be mended there. */
export interface UnreadCell {
  /** Among the points, from 0. */
  readonly row: number;
  readonly column: number;
  readonly text: string;
  /** One sentence without a full stop. */
  readonly mend: string;
}

export interface Pasted {
  readonly points: readonly (readonly unknown[])[];
  readonly unread: readonly UnreadCell[];
  /** Rows and cells for which there is no place here, as text. */
  readonly leftOver: readonly string[];
  /** Points that were there after the last pasted row, and are no more. */
  readonly dropped: number;
}

/**
 * Puts a block of cells over points from one cell on, as a spreadsheet does. What reads goes in, whatever stands beside it.
 * New points take cells not given, or not read, from the last.
 */
export function pasteInto(paste: Paste): Pasted {
  const { rows, row, column, fields, mayGrow, fileUnits, bareUnits } = paste;
  const points = paste.points.map((point) => [...point]);
  const unread: UnreadCell[] = [];
  const leftOver: string[] = [];
  for (const [i, cells] of rows.entries()) {
    const at = row + i;
    if (!mayGrow && at >= points.length) {
      leftOver.push(cells.join(" "));
      continue;
    }
    const before = points[at - 1];
    const point = points[at] ?? (before ? [...before] : fields.map(() => 0));
    points[at] = point;
    for (const [j, text] of cells.entries()) {
      const field = fields[column + j];
      if (!field) {
        leftOver.push(cells.slice(j).join(" "));
        break;
      }
      const read = readTyped(field, text, fileUnits, bareUnits);
      if (read.ok) point[column + j] = read.value;
      else unread.push({ row: at, column: column + j, text, mend: read.mend });
    }
  }
  // One row alone is put over one.
  const isWhole =
    rows.length > 1 &&
    mayGrow &&
    row === 0 &&
    column === 0 &&
    rows.every((cells) => cells.length >= fields.length);
  const dropped = isWhole ? Math.max(0, points.length - rows.length) : 0;
  return { points: points.slice(0, points.length - dropped), unread, leftOver, dropped };
}

/** Cells or rows named one by one; more are only counted. */
const MOST_NAMED = 3;

/** What a paste did, and what is left to do: `5 rows pasted. Marked to fix: row 2, y “5 im”.` */
export function pasteNote(rows: number, pasted: Pasted, columns: readonly string[]): string {
  const { unread, leftOver, dropped } = pasted;
  const said = [`${rows} ${rows === 1 ? "row" : "rows"} pasted.`];
  if (dropped > 0)
    said.push(`They are all there are now; ${dropped} after them are gone, and undo brings them back.`);
  if (unread.length > 0) {
    const cells = unread.map(({ row, column, text }) => `row ${row + 1}, ${columns[column]} “${text}”`);
    said.push(`Marked to fix: ${named(cells)}.`);
  }
  if (leftOver.length > 0) said.push(`No place here for ${named(leftOver.map((text) => `“${text}”`))}.`);
  return said.join(" ");
}

function named(all: readonly string[]): string {
  const more = all.length - MOST_NAMED;
  return all.slice(0, MOST_NAMED).join("; ") + (more > 0 ? `; and ${more} more` : "");
}
