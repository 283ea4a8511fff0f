import type { SideAlignment, WheelReading } from "../../../studies/alignment/alignSide.ts";
import { angleText } from "../../../studies/wording/lengths.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { leftOverWords } from "./settingFormat.ts";

export type ReadingTableProps = {
  side: SideAlignment;
  /** Which wheel it is, or both. */
  caption: string;
  /** Which of the two the workbench shows. */
  shown: "bolted" | "aligned";
};

const ASKED = [
  ["camber", "Camber", "+ out at top"],
  ["caster", "Caster", "+ back at top"],
  ["toe", "Toe", "+ in, per wheel"],
] as const;

/** One wheel's angles: wanted, as bolted on, aligned, and what is left over; caster also as turn plates read it. */
export function ReadingTable({ side, caption, shown }: ReadingTableProps) {
  const { targets, asBolted, aligned, leftOver, reached } = side;
  const target = (rad: number | null) => (rad === null ? "–" : angleText(rad, 2));
  return (
    <table>
      <caption>{caption}, straight ahead</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">Wanted</th>
          <th scope="col">
            As bolted on{shown === "bolted" && <small className="column-shown"> shown</small>}
          </th>
          <th scope="col">Aligned{shown === "aligned" && <small className="column-shown"> shown</small>}</th>
          <th scope="col">Off target</th>
        </tr>
      </thead>
      <tbody>
        {ASKED.map(([key, name, plus]) => {
          const { amount, words, isGood } = leftOverWords(leftOver[key], reached);
          return (
            <tr key={key}>
              <th scope="row">
                {name} <small className="row-plus">{plus}</small>
              </th>
              <td>{target(targets[key])}</td>
              <td>{angleText(asBolted[key], 2)}</td>
              <td>{angleText(aligned[key], 2)}</td>
              <td>
                {amount}
                <small className="left-over">
                  {isGood !== null && <StateMark word={isGood ? "clear" : "rubs"} />} {words}
                </small>
              </td>
            </tr>
          );
        })}
        <SweepRow name="Caster as a ±20° sweep on turn plates reads it" side={side} read="reading" />
        <SweepRow name="the same, gauge with factor 1.5" side={side} read="roundedReading" />
      </tbody>
    </table>
  );
}

type SweepRowProps = {
  name: string;
  side: SideAlignment;
  read: "reading" | "roundedReading";
};

function SweepRow({ name, side, read }: SweepRowProps) {
  const text = ({ casterSweep }: WheelReading) =>
    casterSweep === null ? "lock short of 20°" : angleText(casterSweep[read], 2);
  return (
    <tr className="sweep-row">
      <th scope="row" colSpan={2}>
        {name}
      </th>
      <td>{text(side.asBolted)}</td>
      <td>{text(side.aligned)}</td>
      <td />
    </tr>
  );
}
