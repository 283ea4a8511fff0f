import { useMemo } from "react";
import type { Setup } from "../../../setup/types/types.ts";
import { asBuiltRead, asBuiltSides } from "../../../studies/jig/asBuiltReport.ts";
import type { JigRow, JigSheet } from "../../../studies/jig/jigSheet.ts";
import { failText } from "../../../studies/wording/asBuiltWords.ts";
import { JIG_COLUMNS, jigCells, jigReadText, readingWords } from "../../../studies/wording/jigWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { ColumnHeads } from "../../parts/ScrollTable.tsx";

export type JigTableProps = {
  sheet: JigSheet;
  /** Whose the part is: on paper the table has a page of its own. */
  of: string;
  /** Has the readings there are already. */
  setup: Pick<Setup, "knuckle" | "jig" | "asBuilt">;
  format: LengthFormat;
};

const SIDES = ["left", "right"] as const;

/** What must be read, with its tolerance and, a column a knuckle, what was read or room to write it. */
export function JigTable({ sheet, of, setup, format }: JigTableProps) {
  const sides = useMemo(() => asBuiltSides(setup), [setup]);
  return (
    <table className="jig-table">
      <caption>
        What must be read, on either knuckle<span className="jig-paper">: {of}</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">Reading</th>
          <ColumnHeads of={JIG_COLUMNS} />
          <th scope="col" className="jig-written">
            Left
          </th>
          <th scope="col" className="jig-written">
            Right
          </th>
        </tr>
      </thead>
      <tbody>
        {sheet.rows.map((row) => {
          const { name, how } = readingWords(row.key, sheet, format);
          return (
            <tr key={row.key}>
              <th scope="row">
                {name} <small>{how}</small>
              </th>
              {jigCells(row, format).map((cell, i) => (
                <td key={JIG_COLUMNS[i]}>{cell}</td>
              ))}
              {SIDES.map((side) => (
                <td key={side} className="jig-written">
                  {readText(setup, side, row, format)}{" "}
                  <small>
                    {failText(
                      sides?.[side]?.passes.find((one) => one.key === row.key),
                      format,
                    )}
                  </small>
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** What was read; nothing where there is room to write. */
function readText(
  setup: JigTableProps["setup"],
  side: "left" | "right",
  row: JigRow,
  format: LengthFormat,
): string {
  const is = asBuiltRead(setup, side, row.key);
  return is === null ? "" : jigReadText(row, is, format);
}
