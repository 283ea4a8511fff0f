import { type ClipboardEvent, type ReactNode, useId, useState } from "react";
import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { useExampleWord, useIsFromExample } from "../fields/useIsFromExample.ts";
import { ZERO_WAYS } from "../sketches/zeroSketches.tsx";
import { CoordinateRow } from "./CoordinateRow.tsx";
import { type Pasted, pastedBlock, pasteInto, pasteNote } from "./pasteInto.ts";
import { useZero, WhereZero } from "./WhereZero.tsx";

export interface TableRow {
  readonly label: string;
  /** A list of values, one a column. */
  readonly path: KeyPath;
}

export type CoordinateTableProps = {
  /** What the table is of, for those who hear it. */
  caption: string;
  /** What a row is called over the first column, such as "point"; "" = nothing. */
  rowHead: string;
  columns: readonly string[];
  rows: readonly TableRow[];
  /** The list whose entries the rows are, all of them: pasting may then add rows. Default none, the rows are fixed. */
  list?: KeyPath;
  /** Row pointed out. Default none. */
  current?: number;
  onRow?: (row: number) => void;
  /** Under the table. */
  children?: ReactNode;
};

/** Points in a table, a cell for each coordinate. A block of cells copied from a spreadsheet can be pasted into any cell. */
export function CoordinateTable(props: CoordinateTableProps) {
  const { caption, rowHead, columns, rows, list, current, onRow } = props;
  const id = useId();
  const units = useWorkbench((s) => lengthFormat(s).units);
  const [note, setNote] = useState<{ readonly text: string; readonly isFault: boolean } | null>(null);
  const isLengths = ["length", "signedLength"].includes(
    (rows[0] && fieldAt([...rows[0].path, 0], shownDocument(workbench.getState()))?.kind) ?? "",
  );
  const zero = useZero(rows[0]?.path ?? []);
  const ways = zero === null ? {} : ZERO_WAYS[zero];

  const onPaste = (event: ClipboardEvent<HTMLInputElement>, row: number, column: number) => {
    const block = pastedBlock(event.clipboardData.getData("text/plain"), columns.length - column);
    if (block === null) return;
    event.preventDefault();
    const pasted = paste(rows, list, block, row, column);
    const isFault = pasted.unread.length + pasted.leftOver.length > 0;
    setNote({ text: pasteNote(block.length, pasted, columns), isFault });
  };
  return (
    <div className={list ? "points point-list" : "points"}>
      <table>
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            {rowHead === "" ? <td /> : <th scope="col">{rowHead}</th>}
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
                {isLengths && <small> {units}</small>}
                {ways[column] !== undefined && <small className="points-way">{ways[column]}</small>}
              </th>
            ))}
          </tr>
        </thead>
        {rows.map((row, i) => (
          <CoordinateRow
            key={row.path.join(".")}
            label={row.label}
            path={row.path}
            columns={columns}
            isNumbered={list !== undefined}
            isCurrent={i === current}
            onFocus={() => onRow?.(i)}
            onPaste={(event, column) => onPaste(event, i, column)}
          />
        ))}
      </table>
      <p id={`${id}-note`} role="status" className={note?.isFault ? "points-note fault" : "points-note"}>
        {note?.isFault && <span aria-hidden="true">✕ </span>}
        {note?.text}
      </p>
      {list && <SignNote list={list} />}
      {props.children}
      {zero && <WhereZero zero={zero} />}
    </div>
  );
}

/** What the sign beside the number of a row says, where one has it. */
function SignNote({ list }: { list: KeyPath }) {
  const word = useExampleWord();
  return useIsFromExample(list) ? (
    <p className="points-from" aria-hidden="true">
      ⋯ {word}
    </p>
  ) : null;
}

/** Pastes rows as one step; text that could not be read stays at its cell, to be mended there. */
function paste(
  rows: readonly TableRow[],
  list: KeyPath | undefined,
  cells: readonly (readonly string[])[],
  row: number,
  column: number,
): Pasted {
  const state = workbench.getState();
  const document = shownDocument(state);
  const fields = [0, 1, 2].flatMap((j) => fieldAt([...(rows[0]?.path ?? []), j], document) ?? []);
  const points = list
    ? ((valueAt(document, list) ?? []) as readonly (readonly unknown[])[])
    : rows.map(({ path }) => (valueAt(document, path) ?? []) as readonly unknown[]);
  const fileUnits = fileUnitsOf(document);
  const offset = list ? Number(rows[0]?.path.at(-1) ?? 0) : 0;
  const pasted = pasteInto({
    points,
    rows: cells,
    row: row + offset,
    column,
    fields,
    mayGrow: list !== undefined,
    fileUnits,
    bareUnits: lengthFormat(state).units,
  });
  state.beginGesture();
  if (list) state.editField(list, pasted.points);
  else for (const [i, { path }] of rows.entries()) state.editField(path, pasted.points[i]);
  for (const { row: at, column: cell, text } of pasted.unread) {
    const point = list ? [...list, at] : rows[at]?.path;
    if (point) state.editField([...point, cell], text);
  }
  state.endGesture();
  return pasted;
}
