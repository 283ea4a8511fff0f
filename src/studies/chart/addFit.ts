import { readTyped } from "../../setup/editing/readTyped.ts";
import { fieldAt } from "../../setup/fieldCatalogue.ts";
import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import { csvRows } from "../../units/csvRows.ts";
import { mmFromInches } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { describeTireSizeForms, parseTireSize } from "../../units/tireSize.ts";
import { offsetFromBackspacing } from "../../units/wheelOffset.ts";
import { hasWithin } from "../../units/withinText.ts";
import type { AxisSubject } from "./readAxis.ts";
import { fitsText, readFits, unitCell } from "./readFits.ts";

/** A wheel and tire as a person types them. */
export interface TypedFit {
  readonly size: string;
  readonly rimWidth: string;
  /** By what the mounting face is told. */
  readonly by: "backspacing" | "offset";
  readonly at: string;
  /** "" = what it is, in words. */
  readonly name: string;
}

/** What is wrong of what was typed, or of the list; a sentence each without its full stop. */
export type FitFaults = Readonly<Partial<Record<"size" | "rimWidth" | "at" | "name" | "list", string>>>;

/** What is wrong of a field in which nothing was typed. */
export const REQUIRED = "required";

export type AddedFit =
  | { readonly ok: true; readonly list: string; readonly name: string }
  | { readonly ok: false; readonly faults: FitFaults };

/** What a line is called that was given no name, mm. */
export type FitNaming = (fit: {
  readonly tire: Setup["tire"];
  readonly wheel: Omit<Setup["wheel"], "barrelDiameter" | "center">;
}) => string;

/**
 * A shop's list with one wheel and tire more. The rim's diameter is the tire's. Each is checked as the setup's own field is.
 * @param list as `readFits` takes it; "" = there is none yet
 * @param bareUnits of lengths typed without a unit, but a rim typed as `15 x 8` is in inches; in the list each has its own
 */
export function addFit(
  list: string,
  typed: TypedFit,
  bareUnits: LengthUnit,
  subject: AxisSubject,
  naming: FitNaming,
): AddedFit {
  const { units } = subject.setup;
  const faults: Partial<Record<keyof FitFaults, string>> = {};
  const read = (path: KeyPath, text: string, as: keyof FitFaults, bare = bareUnits): string => {
    const got = hasWithin(text)
      ? ({ ok: false, mend: "must be the value alone, without ±" } as const)
      : readTyped(fieldAt(path, subject.document)!, text.trim(), units, bare);
    if (got.ok && text.trim() !== "") return unitCell(path, got.value, subject.document);
    faults[as] = got.ok || text.trim() === "" ? REQUIRED : got.mend;
    return "";
  };
  const size = read(["tire", "size"], typed.size, "size");
  const rim = rimOf(typed.rimWidth);
  // Rims are sold in inches everywhere: 15 x 8 is both.
  const rimWidth = read(["wheel", "rimWidth"], rim.width, "rimWidth", rim.code === null ? bareUnits : "in");
  const at = read(["wheel", typed.by], typed.at, "at");
  const tire = parseTireSize(size);
  if (tire === null) faults.size ??= describeTireSizeForms;
  if (tire !== null && rim.code !== null && rim.code !== tire.rimCode)
    faults.rimWidth ??= `is of a ${rim.code} in rim, and the tire is for ${tire.rimCode} in`;
  const rows = rowsOf(list);
  if (typeof rows === "string") faults.list = rows;
  if (tire === null || typeof rows === "string" || Object.keys(faults).length > 0)
    return { ok: false, faults };

  const mm = (cell: string) => {
    const length = parseLength(cell, units);
    return length.ok ? length.mm : 0;
  };
  const offset = typed.by === "offset" ? mm(at) : offsetFromBackspacing(mm(at), mm(rimWidth));
  const wheel = { rimDiameter: mmFromInches(tire.rimCode), rimWidth: mm(rimWidth), offset };
  const name = typed.name.trim() || naming({ tire: { kind: "size", size, loadedRadius: null }, wheel });
  const nameAt = rows[0]!.findIndex((cell) => cell.toLowerCase() === "name");
  if (rows.slice(1).some((row) => row[nameAt] === name))
    return {
      ok: false,
      faults: { name: `the list has “${name}” already; choose it there, or give another name` },
    };

  const cells: Readonly<Record<string, string>> = {
    [rows[0]![nameAt]!]: name,
    "tire.size": size,
    "wheel.rimDiameter": `${tire.rimCode} in`,
    "wheel.rimWidth": rimWidth,
    [`wheel.${typed.by}`]: at,
  };
  const header = [...rows[0]!, ...Object.keys(cells).filter((key) => !rows[0]!.includes(key))];
  const longer = [
    header,
    ...rows.slice(1).map((row) => header.map((_, i) => row[i] ?? "")),
    header.map((key) => cells[key] ?? ""),
  ];
  const text = fitsText(longer);
  const fits = readFits(text, subject);
  return fits.ok ? { ok: true, list: text, name } : { ok: false, faults: { list: fits.issues[0]!.mend } };
}

/** A rim's width, and its diameter in inches where it is typed as rims are sold: `15 x 8`; null = the width alone. */
function rimOf(text: string): { readonly code: number | null; readonly width: string } {
  const both = /^\s*(\d+(?:\.\d+)?)\s*[x×]\s*(\d.*)$/i.exec(text);
  return both ? { code: Number(both[1]), width: both[2]! } : { code: null, width: text };
}

/** The rows of a list, its header first; or what is wrong with it. */
function rowsOf(list: string): readonly (readonly string[])[] | string {
  if (list.trim() === "") return [["name"]];
  const table = csvRows(list);
  if (!table.ok) return table.mend;
  const isNamed = table.rows[0]?.some((cell) => cell.toLowerCase() === "name");
  return isNamed ? table.rows : "the first row of the list must name its columns, and one of them name";
}
