import { fieldAt } from "../../setup/fieldCatalogue.ts";
import { bareTyped } from "../../setup/reading/typedPair.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { Result, Setup } from "../../setup/types/types.ts";
import { csvRows, csvText } from "../../units/csvRows.ts";
import { parseLength } from "../../units/parseLength.ts";
import { offsetFromBackspacing } from "../../units/wheelOffset.ts";
import { axisPlace, entryChange } from "./chartAxis.ts";
import type { AxisEntry } from "./chartTypes.ts";
import { type AxisSubject, readAxisTable } from "./readAxis.ts";

/** Blocks a line of the list may tell. */
const BLOCKS = ["tire", "wheel"] as const;

/** A wheel with its tire as a shop keeps it: a name, and what the two blocks would hold. */
export interface Fit {
  readonly name: string;
  readonly tire: AxisEntry | null;
  readonly wheel: AxisEntry | null;
}

/**
 * A shop's list of wheels and tires, a table of separated values: a column `name`, and one for each key of the setup's tire and
 * wheel that the list tells, such as `tire.size`, `wheel.rimDiameter`, `wheel.backspacing`. Bare lengths are in the file's units.
 */
export function readFits(text: string, subject: AxisSubject): Result<readonly Fit[]> {
  const refuse = (mend: string): Result<never> => ({
    ok: false,
    issues: [{ file: subject.file, key: "", value: "", mend }],
  });
  const table = csvRows(text);
  if (!table.ok) return refuse(table.mend);
  const [header = [], ...rows] = table.rows;
  const nameAt = header.findIndex((cell) => cell.toLowerCase() === "name");
  if (nameAt < 0) return refuse("the first row must name its columns, and one of them name");
  if (rows.length === 0) return refuse("the list has a header and no rows; give a row for each wheel");
  const strange = header.find(
    (cell, at) => at !== nameAt && !BLOCKS.some((block) => cell.startsWith(`${block}.`)),
  );
  if (strange !== undefined)
    return refuse(
      `there is no column ${JSON.stringify(strange)}; beside name the columns are such as tire.size and wheel.backspacing`,
    );
  const told: Partial<Record<(typeof BLOCKS)[number], readonly AxisEntry[]>> = {};
  for (const block of BLOCKS) {
    const columns = [...header.keys()].filter((at) => at === nameAt || header[at]!.startsWith(`${block}.`));
    if (columns.length === 1) continue;
    const part = [header, ...rows]
      .map((row) => columns.map((at) => quoted(row[at] ?? "")).join(","))
      .join("\n");
    const read = readAxisTable(block, part, subject, true);
    if (!read.ok) return read;
    told[block] = read.value.entries;
  }
  const toldOf = (entry: AxisEntry | undefined) =>
    entry && Object.keys(entry.typed as object).length > 0 ? entry : null;
  const fits = rows.map(
    (row, i): Fit => ({ name: row[nameAt]!, tire: toldOf(told.tire?.[i]), wheel: toldOf(told.wheel?.[i]) }),
  );
  const empty = fits.findIndex(({ tire, wheel }) => tire === null && wheel === null);
  if (empty >= 0)
    return refuse(`row ${empty + 1} under the header gives no value; fill it in or take it out`);
  return { ok: true, value: fits };
}

/** A wheel and tire as they are told in words, mm. */
export interface FitBlocks {
  readonly tire: Setup["tire"];
  readonly wheel: Omit<Setup["wheel"], "barrelDiameter" | "center">;
}

/** The tire and wheel a truck has with a line of the list on it; of what the line leaves out its own. */
export function fitBlocks({ tire, wheel }: Fit, setup: Setup): FitBlocks {
  const mmOf = (entry: AxisEntry | null, key: string): number | null => {
    const typed = valueAt(entry?.typed, [key]);
    const length = typed === undefined ? null : parseLength(typed as string | number, setup.units);
    return length?.ok ? length.mm : null;
  };
  const rimDiameter = mmOf(wheel, "rimDiameter") ?? setup.wheel.rimDiameter;
  const rimWidth = mmOf(wheel, "rimWidth") ?? setup.wheel.rimWidth;
  const backspacing = mmOf(wheel, "backspacing");
  const offset =
    backspacing === null
      ? (mmOf(wheel, "offset") ?? setup.wheel.offset)
      : offsetFromBackspacing(backspacing, rimWidth);
  const size = valueAt(tire?.typed, ["size"]);
  const [diameter, sectionWidth] = [mmOf(tire, "diameter"), mmOf(tire, "sectionWidth")];
  const told: Setup["tire"] | null =
    typeof size === "string"
      ? { kind: "size", size, loadedRadius: null }
      : diameter !== null && sectionWidth !== null
        ? { kind: "dimensions", diameter, sectionWidth, treadWidth: null, loadedRadius: null }
        : null;
  return { tire: told ?? setup.tire, wheel: { rimDiameter, rimWidth, offset } };
}

function quoted(cell: string): string {
  return `"${cell.replaceAll('"', '""')}"`;
}

/** A list without one of its lines; "" = it was the only one. @param at place of the line, as `readFits` gives them */
export function withoutLine(list: string, at: number): string {
  const table = csvRows(list);
  if (!table.ok) return list;
  const rows = table.rows.filter((_, i) => i !== at + 1);
  return rows.length < 2 ? "" : csvText(rows);
}

/**
 * A list to fill in: its columns, and the wheel and tire of a document as the first line. Lengths have their unit: a shop keeps the
 * list for trucks whose files are in another.
 */
export function fitsList(document: unknown): string {
  const keys = BLOCKS.flatMap((block) =>
    Object.entries((valueAt(document, [block]) ?? {}) as Record<string, unknown>).flatMap(([key, typed]) => {
      const value = bareTyped(typed);
      if (typeof value !== "string" && typeof value !== "number") return [];
      return [[`${block}.${key}`, unitCell([block, key], value, document)] as const];
    }),
  );
  const lines = [
    ["name", ...keys.map(([key]) => key)],
    ["as on this truck", ...keys.map(([, value]) => value)],
  ];
  return fitsText(lines);
}

/** A list of rows of cells, its header first; what begins with + or = is written as it is: it is read again. */
export function fitsText(rows: readonly (readonly string[])[]): string {
  return `${rows.map((row) => row.map(quoted).join(",")).join("\r\n")}\r\n`;
}

/** A value of a document as a list for trucks in either unit has it: a bare length with the document's unit. */
export function unitCell(path: KeyPath, value: unknown, document: unknown): string {
  const kind = fieldAt(path, document)?.kind;
  const isBare = (kind === "length" || kind === "signedLength") && !/[a-z"']/i.test(String(value));
  return isBare ? `${value} ${valueAt(document, ["units"]) === "mm" ? "mm" : "in"}` : String(value);
}

/** A document, as typed, with the wheel and tire of a line of the list. The very one that is on it keeps what else is known of it. */
export function withFit(
  document: unknown,
  fit: Fit,
  { file, setup }: { file: string; setup: Setup },
): unknown {
  return BLOCKS.reduce((on, block) => {
    const entry = fit[block];
    const place = axisPlace(block, on, file);
    const isOn =
      entry &&
      Object.entries(entry.typed as object).every(([key, value]) => valueAt(on, [block, key]) === value);
    return entry && !isOn && place.ok ? entryChange(place.value, entry, setup).put(on) : on;
  }, document);
}
