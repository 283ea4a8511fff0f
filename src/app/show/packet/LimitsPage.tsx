import { useMemo } from "react";
import { limitMargins } from "../../../studies/limits/limitsOf.ts";
import { LIMIT_CAUTIONS } from "../../../studies/wording/cautions.ts";
import { limitMark, limitPlace, limitRows, limitsState } from "../../../studies/wording/limitRows.ts";
import {
  bindsText,
  firstMetText,
  leastMarginText,
  limitsStateSentence,
  placeText,
} from "../../../studies/wording/limitTexts.ts";
import { STILL_WORKING } from "../../../studies/wording/packetTexts.ts";
import { lockText } from "../../../studies/wording/poseWords.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";

/** Every limit with the least that is left of it over the whole range, and what is met first at each stance. */
export function LimitsPage({ truck, limits }: { truck: Truck; limits: Answered<"limits"> }) {
  const format = useFormat();
  const report = limits.answer;
  const pose = useMemo(() => limitMargins(truck.model, 0, 0), [truck]);
  if (report === null) return <p>{limits.failure ?? STILL_WORKING}</p>;
  return (
    <>
      <p>{limitsStateSentence(limitsState(report))}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">Limit, the least share in hand first</th>
            <th scope="col">Least over the range</th>
            <th scope="col">Where</th>
          </tr>
        </thead>
        <tbody>
          {limitRows(pose, report.overall).map((row) => (
            <tr key={row.name}>
              <th scope="row">
                <StateMark word={limitMark(row)} /> {row.name}
                {row.overall && !row.isLeastAlike && ` ${row.overall.side}`}
              </th>
              <td>{row.overall ? leastMarginText(row.overall, format) : "–"}</td>
              <td>{row.overall ? placeText(limitPlace(row.overall, format), truck.setup, format) : "–"}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>What is met first at each stance</h3>
      {report.stances.map(({ name, travel, poses, first }) => (
        <p key={name}>
          <strong>{name}:</strong>{" "}
          {poses.map((one) => `${lockText(one.steer)}, ${bindsText(one, format)}`).join("; ")}.{" "}
          {first && firstMetText(first, travel, format)}
        </p>
      ))}
      <p className="packet-caution">{LIMIT_CAUTIONS}</p>
    </>
  );
}
