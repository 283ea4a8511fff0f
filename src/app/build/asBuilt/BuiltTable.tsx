import type { AsBuiltSide } from "../../../studies/jig/asBuiltReport.ts";
import type { BuiltKnuckle } from "../../../studies/jig/jigReadings.ts";
import { builtRows, withinText } from "../../../studies/wording/asBuiltWords.ts";
import { jigText } from "../../../studies/wording/jigWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
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
            <th scope="col">Ordered</th>
            <th scope="col">As built</th>
            <th scope="col">One standard deviation</th>
          </tr>
        </thead>
        <tbody>
          {builtRows(side.fit, ordered).map((row) => (
            <tr key={row.key}>
              <th scope="row">{row.name}</th>
              <td>{jigText(row.ordered, row.measure, format)}</td>
              <td>{row.within === null ? "–" : jigText(row.built, row.measure, format)}</td>
              <td>{withinText(row, format)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <KeepBuilt side={side} />
    </>
  );
}
