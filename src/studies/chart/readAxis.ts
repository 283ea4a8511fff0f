import { readTyped } from "../../setup/editing/readTyped.ts";
import { fieldAt, setupFields } from "../../setup/fieldCatalogue.ts";
import type { SetupField } from "../../setup/fields/setupField.ts";
import { describeValue } from "../../setup/reading/describeValue.ts";
import { keyText } from "../../setup/types/keyPath.ts";
import type { Result, Setup } from "../../setup/types/types.ts";
import { degFromRad, parseAngle } from "../../units/angle.ts";
import { csvRows } from "../../units/csvRows.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { parseNumber } from "../../units/parseNumber.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import { type AxisPlace, axisPlace } from "./chartAxis.ts";
import type { AxisAsk, AxisEntry } from "./chartTypes.ts";

/** What an axis is read against. */
export interface AxisSubject {
  /** As typed, the variant shown applied. */
  readonly document: unknown;
  readonly setup: Setup;
  readonly file: string;
}

/** Entries of one axis: a catalog has hundreds of tires, and every one is a truck to be looked at for each entry of the other. */
const MOST_ENTRIES = 2000;

/** Digits that a step's sum keeps: what is typed as 1/8 stays 1/8. */
const DIGITS = 12;

/** Share of a step by which the last one may miss the end. */
const LAST = 1e-6;

/**
 * An axis as it is typed: `3:6:1/8` for every value from the first to the second by the third, or `3, 3 1/2, 4`; with
 * semicolons where a value holds a comma. Of the tire a list of sizes. Bare lengths are in the file's units, angles degrees.
 */
export function readAxis(key: string, text: string, subject: AxisSubject): Result<AxisAsk> {
  const place = axisPlace(key, subject.document, subject.file);
  if (!place.ok) return place;
  const { field } = place.value;
  const refuse = refusal(key, text, subject);
  const nothing = refusal(key, undefined, subject);
  if (field === null && key !== "tire")
    return nothing(
      `needs a list: a CSV file whose first row names its columns: name, ${keysOf(key).join(", ")}`,
    );
  if (text.trim() === "")
    return nothing(
      key.startsWith("tire.size") || field === null
        ? "is empty; give sizes such as P235/70R15, 31x10.50R15LT"
        : "is empty; give values such as 3:6:1/8 or 3, 3 1/2, 4",
    );
  const parts = text.split(":");
  if (field !== null && parts.length === 3 && isMeasured(field))
    return stepped(key, field, parts as [string, string, string], subject, refuse);
  if (parts.length > 1 && field !== null && isMeasured(field))
    return refuse("must be FROM:TO:STEP, such as 3:6:1/8, or values with commas between them");
  const values = text.split(text.includes(";") || text.includes("\n") ? /[;\n]/ : ",");
  const given = values.map((value) => value.trim()).filter((value) => value !== "");
  if (given.length === 0) return refuse("holds no value; give some such as 3:6:1/8 or 3, 3 1/2, 4");
  if (given.length > MOST_ENTRIES) return refuse(tooManyMend(given.length));
  const entries: AxisEntry[] = [];
  for (const value of given) {
    const read = readEntry(field ?? fieldAt(["tire", "size"], subject.document)!, value, subject);
    if (!read.ok) return refusal(key, value, subject)(read.mend);
    entries.push({ label: value, typed: field === null ? { size: read.value } : read.value });
  }
  return { ok: true, value: { key, entries } };
}

/**
 * An axis as a table of separated values: of a field the column of its last key (or the only one), of `tire` and `wheel` a column
 * for each of their keys; with an optional column `name`.
 * @param mayBeEmpty a row may give no value of a block. Default false
 */
export function readAxisTable(
  key: string,
  text: string,
  subject: AxisSubject,
  mayBeEmpty = false,
): Result<AxisAsk> {
  const place = axisPlace(key, subject.document, subject.file);
  if (!place.ok) return place;
  const refuse = (mend: string, value?: string): Result<never> => refusal(key, value, subject)(mend);
  if (NO_TEXT.test(text)) return refuse("the list is no text; save it as CSV and give that");
  const table = csvRows(text);
  if (!table.ok) return refuse(table.mend);
  const [first] = table.rows;
  if (first === undefined) return refuse("the list is empty; give a row for each entry");
  const named = columnsOf(place.value, first, subject);
  if (typeof named === "string") return refuse(named);
  const rows = named.hasHeader ? table.rows.slice(1) : table.rows;
  if (rows.length === 0) return refuse("the list has a header and no rows; give a row for each entry");
  if (rows.length > MOST_ENTRIES) return refuse(tooManyMend(rows.length));
  const entries: AxisEntry[] = [];
  const under = named.hasHeader ? " under the header" : "";
  for (const [i, row] of rows.entries()) {
    const typed: Record<string, unknown> = {};
    for (const { at, name, field } of named.columns) {
      const cell = row[at] ?? "";
      if (cell === "") continue;
      const read = readEntry(field, cell, subject);
      if (!read.ok) return refuse(`row ${i + 1}${under}, ${name}: ${read.mend}`, cell);
      typed[name] = read.value;
    }
    const cells = named.columns.map(({ at }) => row[at] ?? "").filter((cell) => cell !== "");
    if (cells.length === 0 && !mayBeEmpty)
      return refuse(`row ${i + 1}${under} gives no value; fill it in or take it out`);
    const label = (named.nameAt === null ? "" : (row[named.nameAt] ?? "")) || cells.join(", ");
    const [only] = named.columns;
    entries.push({ label, typed: place.value.field === null ? typed : typed[only!.name] });
  }
  return { ok: true, value: { key, entries } };
}

/** What no text file holds: a zero, or bytes that are no letters. */
const NO_TEXT = /[\0\uFFFD]/;

interface Columns {
  readonly hasHeader: boolean;
  /** Where entries are named; null = nowhere. */
  readonly nameAt: number | null;
  readonly columns: readonly { readonly at: number; readonly name: string; readonly field: SetupField }[];
}

/** What the columns of a table hold; or what is wrong with its header. */
function columnsOf(
  { path, field }: AxisPlace,
  first: readonly string[],
  { document }: AxisSubject,
): Columns | string {
  const header = first.map((cell) => cell.trim());
  const found = header.findIndex((cell) => cell.toLowerCase() === "name");
  const nameAt = found < 0 ? null : found;
  if (field !== null) {
    const name = String(path.at(-1));
    const at = header.findIndex(
      (cell) => cell.toLowerCase() === name.toLowerCase() || cell === keyText(path),
    );
    if (at >= 0) return { hasHeader: true, nameAt, columns: [{ at, name, field }] };
    if (header.length === 1) return { hasHeader: false, nameAt: null, columns: [{ at: 0, name, field }] };
    return `the first row must name its columns, and one of them ${name}`;
  }
  const columns = header.flatMap((cell, at) => {
    if (at === nameAt) return [];
    const name = cell.replace(`${keyText(path)}.`, "");
    const own = fieldAt([...path, name], document);
    return own === null || !isPlain(own) ? [] : [{ at, name, field: own }];
  });
  const known = keysOf(path[0] as string).join(", ");
  const strange = header.find((_, at) => at !== nameAt && !columns.some((column) => column.at === at));
  if (strange !== undefined)
    return `there is no column ${describeValue(strange)}; the columns may be name, ${known}`;
  if (columns.length === 0) return `the first row must name its columns: name, ${known}`;
  return { hasHeader: true, nameAt, columns };
}

function keysOf(block: string): readonly string[] {
  return setupFields()
    .filter((field) => field.pattern.length === 2 && field.pattern[0] === block && isPlain(field))
    .map(({ pattern }) => pattern[1]!);
}

function isPlain({ kind }: SetupField): boolean {
  return kind !== "list" && kind !== "block" && kind !== "point" && kind !== "numbers";
}

function isMeasured({ kind }: SetupField): boolean {
  return kind === "length" || kind === "signedLength" || kind === "angle" || kind === "number";
}

function stepped(
  key: string,
  field: SetupField,
  parts: readonly [string, string, string],
  { setup: { units } }: AxisSubject,
  refuse: (mend: string) => Result<never>,
): Result<AxisAsk> {
  const numbers: number[] = [];
  for (const part of parts) {
    const read = numberOf(field, part.trim(), units);
    if (typeof read === "string") return refuse(read);
    numbers.push(read);
  }
  const [from, to, step] = numbers as [number, number, number];
  if (!(step > 0)) return refuse("the step must be more than 0");
  if (!(from <= to)) return refuse("the first value must not be more than the second");
  const count = Math.floor((to - from) / step + LAST) + 1;
  if (count > MOST_ENTRIES) return refuse(tooManyMend(count));
  const isLength = field.kind === "length" || field.kind === "signedLength";
  const entries = Array.from({ length: count }, (_, i): AxisEntry => {
    const value = from + i * step;
    const typed = Number((isLength ? unitsFromMm(value, units) : value).toPrecision(DIGITS));
    return { label: isLength ? plainLengthText(value, units, units) : String(typed), typed };
  });
  return { ok: true, value: { key, entries } };
}

/** mm, degrees or plain; or what is wrong. */
function numberOf({ kind }: SetupField, text: string, units: Setup["units"]): number | string {
  if (kind === "number") {
    const read = parseNumber(text);
    return read.ok ? read.value : read.mend;
  }
  if (kind === "angle") {
    const angle = parseAngle(text);
    return angle.ok ? degFromRad(angle.rad) : angle.mend;
  }
  const length = parseLength(text, units);
  return length.ok ? length.mm : length.mend;
}

function readEntry(field: SetupField, text: string, { setup: { units } }: AxisSubject) {
  return readTyped(field, text, units);
}

function tooManyMend(count: number): string {
  return `has ${count.toLocaleString("en-US")} entries, and a chart takes ${MOST_ENTRIES.toLocaleString("en-US")} on a side; split the list and make a chart of each piece`;
}

function refusal(key: string, value: unknown, { file }: AxisSubject) {
  const shown = value === undefined ? "" : describeValue(value);
  return (mend: string): Result<never> => ({ ok: false, issues: [{ file, key, value: shown, mend }] });
}
