import type { AsBuiltSide } from "../../../studies/jig/asBuiltReport.ts";
import type { JigSheet } from "../../../studies/jig/jigSheet.ts";
import {
  BUILT_COLUMNS,
  builtCells,
  builtRows,
  residualLines,
} from "../../../studies/wording/asBuiltWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { ColumnHeads } from "../../parts/ScrollTable.tsx";
import { KeepBuilt } from "./KeepBuilt.tsx";

export type BuiltTableProps = {
  side: AsBuiltSide;
  /** Of the knuckle as ordered. */
  sheet: JigSheet;
  format: LengthFormat;
};

/** The knuckle that was really built beside the one ordered, each dimension with its standard deviation, and how well its readings agree. */
export function BuiltTable({ side, sheet, format }: BuiltTableProps) {
  return (
    <>
      <table className="built-table">
        <caption>{side.side === "left" ? "Left" : "Right"} knuckle, as the readings tell it</caption>
        <thead>
          <tr>
            <td />
            <ColumnHeads of={BUILT_COLUMNS} />
          </tr>
        </thead>
        <tbody>
          {builtRows(side.fit, sheet.knuckle).map((row) => (
            <tr key={row.key}>
              <th scope="row">{row.name}</th>
              {builtCells(row, format).map((cell, i) => (
                <td key={BUILT_COLUMNS[i]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <details>
        <summary>How well the {side.side} knuckle’s readings agree</summary>
        <ul>
          {residualLines(side.fit, sheet, format).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
      <KeepBuilt side={side} />
    </>
  );
}
