import { readTyped } from "../../../setup/editing/readTyped.ts";
import type { SetupField } from "../../../setup/fields/setupField.ts";
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
  return { points, unread, leftOver };
}
