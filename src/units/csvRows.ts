/** What a column of steering inputs is called, −1 … +1: the sign is in its name. */
export const STEER_COLUMN = "steer to the left (share of lock)";

/** Rows of cells, or what is wrong with the text and what would be right (no full stop). */
export type CsvRows =
  | { readonly ok: true; readonly rows: readonly (readonly string[])[] }
  | { readonly ok: false; readonly mend: string };

const BYTE_ORDER_MARK = "\uFEFF";

/**
 * Reads a table of separated values (RFC 4180): cells in quotes may hold separators, line ends and doubled quotes. Cells are
 * told apart by whatever of comma, semicolon and tab the first line has most of. Empty lines are left out, cells are trimmed.
 */
export function csvRows(text: string): CsvRows {
  const plain = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
  const separator = separatorOf(plain);
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  const endRow = () => {
    if (row.some((cell) => cell !== "")) rows.push(row);
    row = [];
  };
  while (at < plain.length) {
    const cell = cellAt(plain, at, separator);
    if (cell === null)
      return { ok: false, mend: `row ${rows.length + 1} has a quote that is never closed; close it` };
    row.push(cell.text);
    at = cell.end;
    if (plain[at] === separator) {
      at++;
      if (at === plain.length) row.push("");
      continue;
    }
    at += plain.startsWith("\r\n", at) ? 2 : 1;
    endRow();
  }
  endRow();
  return { ok: true, rows };
}

function separatorOf(text: string): string {
  const [first] = text.split(/\r?\n/, 1);
  const count = (separator: string) => first!.split(separator).length;
  return [",", ";", "\t"].reduce((best, one) => (count(one) > count(best) ? one : best));
}

/** One cell from `at` on, and where it ends: at a separator, a line end or the end. Null = its quote is never closed. */
function cellAt(text: string, at: number, separator: string): { text: string; end: number } | null {
  let end = at;
  while (text[end] === " ") end++;
  if (text[end] !== '"') {
    end = at;
    while (end < text.length && text[end] !== separator && text[end] !== "\n" && text[end] !== "\r") end++;
    return { text: text.slice(at, end).trim(), end };
  }
  let inner = "";
  for (let i = end + 1; i < text.length; i++) {
    if (text[i] !== '"') {
      inner += text[i];
      continue;
    }
    if (text[i + 1] === '"') {
      inner += '"';
      i++;
      continue;
    }
    let after = i + 1;
    while (after < text.length && text[after] !== separator && text[after] !== "\n" && text[after] !== "\r")
      after++;
    return { text: `${inner}${text.slice(i + 1, after)}`.trim(), end: after };
  }
  return null;
}

/**
 * A table as comma-separated values (RFC 4180, but lines end with a line feed alone). Text that a spreadsheet would take for a
 * formula begins with '.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return `${rows.map((row) => row.map(csvCell).join(",")).join("\n")}\n`;
}

/** Decimals that tell all that is known of a length, by its unit, and of any other number. */
const DECIMALS = { in: 5, mm: 3 } as const;

/** A number as a cell holds it: as fine as it is known, with no digits past that. @param units of a length; left out = of none */
export function csvNumber(value: number, units: keyof typeof DECIMALS = "in"): string {
  // + 0 turns −0 into 0
  return String(Number(value.toFixed(DECIMALS[units])) + 0);
}

/** Steps within which a gap is on one: what rounding in the computer is off by. */
const SAME_STEP = 1e-6;

/** A gap, or what is proven of one, as a cell holds it: as fine as it is known, and never more than it is. */
export function csvGap(gap: number, units: keyof typeof DECIMALS): string {
  const perUnit = 10 ** DECIMALS[units];
  const near = Math.round(gap * perUnit);
  const whole = Math.abs(gap * perUnit - near) <= SAME_STEP ? near : Math.floor(gap * perUnit);
  return csvNumber(whole / perUnit, units);
}

function csvCell(text: string): string {
  const plain = /^[=+@\t\r]|^-(?![\d.])/.test(text) ? `'${text}` : text;
  return /[",\n\r]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
