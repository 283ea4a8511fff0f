/** What was copied, cell by cell; or what is wrong with it, one sentence without a full stop. */
export type PastedBlock =
  | { readonly ok: true; readonly rows: readonly (readonly string[])[] }
  | { readonly ok: false; readonly mend: string };

const PLAIN_NUMBER = /^[-+−]?(?:\d+\.?\d*|\.\d+)$/;

/**
 * Takes a block of cells apart as spreadsheets, tables and notes give it: rows by lines, cells by tabs, or where there are
 * none by semicolons, or by commas, or by spaces between plain decimals. Inside a cell spaces stay, so that `5 5/8` is one.
 * A first row of words alone is a heading and is dropped, and so is an empty row. null = one cell alone, which is no block.
 * @param columns cells a row may have at most
 */
export function pastedBlock(text: string, columns: number): PastedBlock | null {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== "");
  const split = splitterOf(lines);
  const cells = lines.map((line) => trimmedRow(split(line)));
  const isHeading = cells.length > 1 && cells[0]!.every((cell) => !/\d/.test(cell));
  const rows = isHeading ? cells.slice(1) : cells;
  if (rows.length === 0 || (rows.length === 1 && rows[0]!.length <= 1)) return null;
  const long = rows.findIndex((row) => row.length > columns);
  if (long >= 0) {
    const count = rows[long]!.length;
    return {
      ok: false,
      mend: `pasted row ${long + 1} has ${count} cells, and ${columns} go from here on; copy those alone`,
    };
  }
  const gap = rows.findIndex((row) => row.includes(""));
  if (gap >= 0)
    return { ok: false, mend: `pasted row ${gap + 1} has an empty cell; fill it in before copying` };
  return { ok: true, rows };
}

function splitterOf(lines: readonly string[]): (line: string) => string[] {
  for (const separator of ["\t", ";", ","]) {
    if (lines.some((line) => line.includes(separator))) return (line) => line.split(separator);
  }
  const areNumbers = lines.every((line) =>
    line
      .trim()
      .split(/\s+/)
      .every((word) => PLAIN_NUMBER.test(word)),
  );
  return areNumbers ? (line) => line.trim().split(/\s+/) : (line) => [line];
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
