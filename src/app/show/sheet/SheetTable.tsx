import { sheetRows } from "../../../studies/wording/sheetRows.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { keepTogether } from "../../words/keyWords.ts";
import type { Contender, NamedTravel } from "../counter/useComparison.ts";

export type SheetTableProps = {
  told: readonly Contender[];
  stances: readonly NamedTravel[];
  format: LengthFormat;
};

/** The sheet's numbers, a column a truck. */
export function SheetTable({ told, stances, format }: SheetTableProps) {
  return (
    <table className="sheet-table">
      <thead>
        <tr>
          <th scope="col">
            <span className="sr-only">What</span>
          </th>
          {told.map(({ letter, name }) => (
            <th key={letter} scope="col">
              {keepTogether(told.length === 1 ? name : `${letter} · ${name}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {sheetRows(told, stances, format).map(({ label, plus, cells }) => (
          <tr key={label}>
            <th scope="row">
              {label} {plus !== "" && <small>{plus}</small>}
            </th>
            {cells.map(({ text, word }, i) => (
              <td key={told[i]!.letter}>
                {word && <StateMark word={word} />} {keepTogether(text)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
