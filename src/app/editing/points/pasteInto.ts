import { readTyped } from "../../../setup/editing/readTyped.ts";
import type { SetupField } from "../../../setup/setupField.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";

/** A list of points as the file holds it, and what is put over it. */
export interface Paste {
  readonly points: readonly (readonly unknown[])[];
  readonly rows: readonly (readonly string[])[];
  /** Where the first cell goes, from 0. */
  readonly row: number;
  readonly column: number;
  /** The field of each column. */
  readonly fields: readonly SetupField[];
  /** Rows past the end become points. */
  readonly mayGrow: boolean;
  readonly fileUnits: FileUnits;
  /** Unit of bare lengths in what is pasted: the one shown. */
  readonly bareUnits: FileUnits;
}

/** The points after it, or what is wrong with a cell, one sentence without a full stop. Nothing is taken in part. */
export type Pasted =
  | { readonly ok: true; readonly points: readonly (readonly unknown[])[] }
  | { readonly ok: false; readonly mend: string };

/** Puts a block of cells over points from one cell on, as a spreadsheet does. New points take cells not given from the last. */
export function pasteInto(paste: Paste): Pasted {
  const { rows, row, column, fields, mayGrow, fileUnits, bareUnits } = paste;
  const points = paste.points.map((point) => [...point]);
  if (!mayGrow && row + rows.length > points.length) {
    return { ok: false, mend: `${rows.length} rows were pasted, and only ${points.length - row} are here` };
  }
  for (const [i, cells] of rows.entries()) {
    const before = points[row + i - 1];
    const point = points[row + i] ?? (before ? [...before] : fields.map(() => 0));
    points[row + i] = point;
    for (const [j, cell] of cells.entries()) {
      const field = fields[column + j];
      if (!field) return { ok: false, mend: `pasted row ${i + 1} has more cells than go from here on` };
      const read = readTyped(field, cell, fileUnits, bareUnits);
      if (!read.ok) return { ok: false, mend: `pasted row ${i + 1}, ${field.label}: “${cell}” ${read.mend}` };
      point[column + j] = read.value;
    }
  }
  return { ok: true, points };
}
