import type { AsBuiltSides } from "../../../studies/jig/asBuiltReport.ts";
import type { JigRow, JigSheet } from "../../../studies/jig/jigSheet.ts";
import { jigAskedLength, jigCells, jigWay, readingWords } from "../../../studies/wording/jigWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { PassMark, ReadingCell } from "./ReadingCell.tsx";

export type ReadingTableProps = {
  sheet: JigSheet;
  /** null = nothing was read. */
  sides: AsBuiltSides | null;
  format: LengthFormat;
};

const SIDES = ["left", "right"] as const;

/** A row a reading: what must be read, and a field a knuckle to type what was, with whether it passes. */
export function ReadingTable({ sheet, sides, format }: ReadingTableProps) {
  const passOf = (side: "left" | "right", key: JigRow["key"]) =>
    sides?.[side]?.passes.find((row) => row.key === key) ?? null;
  return (
    <table className="reading-table">
      <caption>Read off the jig</caption>
      <thead>
        <tr>
          <th scope="col">Reading</th>
          <th scope="col">Must read</th>
          <th scope="col">Left</th>
          <th scope="col">Right</th>
        </tr>
      </thead>
      <tbody>
        {sheet.rows.map((row) => {
          const { key } = row;
          const { name, how, between } = readingWords(key, sheet, format);
          const [mustRead, tolerance] = jigCells(row, format);
          return (
            <tr key={key}>
              <th scope="row" title={how}>
                {name}
                {between !== undefined && <small>{keepTogether(between)}</small>}
              </th>
              <td>
                {keepTogether(mustRead)} <small>{tolerance}</small>
              </td>
              {SIDES.map((side) => (
                <td key={side}>
                  {key === "difference" ? (
                    <PassMark pass={passOf(side, key)} format={format} />
                  ) : (
                    <ReadingCell
                      side={side}
                      reading={key}
                      name={`${name}, ${side} knuckle`}
                      isTurned={jigWay(row) < 0}
                      pass={passOf(side, key)}
                      residual={sides?.[side]?.fit.residuals.find((one) => one.key === key) ?? null}
                      format={format}
                    />
                  )}
                </td>
              ))}
            </tr>
          );
        })}
        <tr>
          <th scope="row" title="where the straightedge stood when the tapes were read, if not at pin height">
            Straightedge clamped at
          </th>
          <td>{keepTogether(jigAskedLength(sheet.clampAt, sheet, format))}</td>
          {SIDES.map((side) => (
            <td key={side}>
              <ReadingCell
                side={side}
                reading="clampedAt"
                name={`Straightedge clamped at, ${side} knuckle`}
                isTurned={false}
                pass={null}
                residual={null}
                format={format}
              />
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  );
}
