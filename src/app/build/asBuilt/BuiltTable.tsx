import type { AsBuiltSide } from "../../../studies/jig/asBuiltReport.ts";
import type { BuiltKnuckle } from "../../../studies/jig/jigReadings.ts";
import { BUILT_COLUMNS, builtCells, builtRows } from "../../../studies/wording/asBuiltWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { ColumnHeads } from "../../parts/ScrollTable.tsx";
import { KeepBuilt } from "./KeepBuilt.tsx";

export type BuiltTableProps = {
  side: AsBuiltSide;
  ordered: BuiltKnuckle;
  format: LengthFormat;
};

/** The knuckle that was really built beside the one ordered, each dimension with its standard deviation. */
export function BuiltTable({ side, ordered, format }: BuiltTableProps) {
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
          {builtRows(side.fit, ordered).map((row) => (
            <tr key={row.key}>
              <th scope="row">{row.name}</th>
              {builtCells(row, format).map((cell, i) => (
                <td key={BUILT_COLUMNS[i]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <KeepBuilt side={side} />
    </>
  );
}
