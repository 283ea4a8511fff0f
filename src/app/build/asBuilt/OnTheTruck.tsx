import { useMemo } from "react";
import { alignedFrom } from "../../../studies/alignment/modelAsked.ts";
import { asBuiltJson } from "../../../studies/documents/asBuiltJson.ts";
import { answerState } from "../../../studies/doubts/doubt.ts";
import { type AsBuiltSides, builtKnuckles } from "../../../studies/jig/asBuiltReport.ts";
import { modelOnKnuckles } from "../../../studies/jig/asBuiltTruck.ts";
import type { JigSheet } from "../../../studies/jig/jigSheet.ts";
import {
  gapSentences,
  mendSentences,
  TRUCK_COLUMNS,
  trackSentence,
  truckCells,
  truckRows,
  truckWithinSentences,
  worstGapSentence,
} from "../../../studies/wording/asBuiltTruckWords.ts";
import { knucklesSentence } from "../../../studies/wording/asBuiltWords.ts";
import { correctionSentences } from "../../../studies/wording/correctionWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { knuckleFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { ColumnHeads } from "../../parts/ScrollTable.tsx";
import { StateMark } from "../../parts/StateMark.tsx";
import { StandingChoice } from "../../parts/standing.tsx";
import type { Truck } from "../../state/truck.ts";
import { useDoubtsAsBuilt } from "../../state/useDoubts.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { useAnswer } from "../../work/useAnswer.ts";

export type OnTheTruckProps = {
  /** As bolted on, on the knuckle as ordered. */
  truck: Truck;
  sides: AsBuiltSides;
  sheet: JigSheet;
  format: LengthFormat;
  isAligned: boolean;
};

/** What the knuckles as built do on the truck before they ship, as bolted on or aligned. */
export function OnTheTruck({
  onChoose,
  ...props
}: OnTheTruckProps & { onChoose: (isAligned: boolean) => void }) {
  return (
    <section className="on-the-truck" aria-label="On the truck">
      <h3>On the truck</h3>
      <StandingChoice name="Truck as built" isAligned={props.isAligned} onChoose={onChoose} />
      <OrderedAndBuilt {...props} />
    </section>
  );
}

/** The answer, before all that it is made of: whether the knuckles pass, what to correct, and whether the truck still clears on them. */
export function BuiltAnswer({ truck, sides, sheet, format, isAligned }: OnTheTruckProps) {
  const shown = useFormat();
  const doubtsOf = useDoubtsAsBuilt();
  const { onTruck, built, ordered, failure } = useOnTruck(truck, sides, isAligned);
  const read = [sides.left, sides.right].filter((side) => side !== null);
  const passes = read.every(({ allPass }) => allPass);
  const isThere = onTruck?.ok === true && built.ok;
  const doubts = doubtsOf(truck);
  return (
    <>
      <p>
        <StateMark word={passes ? "clear" : "rubs"} /> <b>{knucklesSentence(read)}</b>
      </p>
      {correctionSentences(read, sheet, format).map((sentence) => (
        <p key={sentence}>{keepTogether(sentence)}</p>
      ))}
      {isThere ? (
        <>
          <p>
            <StateMark word={answerState(onTruck.asBuilt.check, doubts)} />{" "}
            {keepTogether(gapSentences(onTruck, { ordered, built: built.model }, doubts, shown)[1]!)}
          </p>
          <p>{keepTogether(worstGapSentence(onTruck, shown))}</p>
        </>
      ) : (
        <p>
          {built.ok && failure === null
            ? "Does the truck still clear? All travel, both locks…"
            : "What it does on the truck is not known: see below."}
        </p>
      )}
    </>
  );
}

function useOnTruck(truck: Truck, sides: AsBuiltSides, isAligned: boolean) {
  const answered = useAnswer("asBuilt", truck, { question: { isAligned } });
  const built = useMemo(() => {
    const { setup } = truck.model;
    return modelOnKnuckles(setup, builtKnuckles(setup, sides), truck.file, isAligned);
  }, [truck, sides, isAligned]);
  const ordered = useMemo(
    () => (isAligned ? alignedFrom(truck.model, truck.file) : null) ?? truck.model,
    [truck, isAligned],
  );
  const report = answered?.answer ?? null;
  const onTruck = report?.onTheTruck ?? null;
  return { answered, built, ordered, report, onTruck, failure: answered?.failure ?? null };
}

/** As ordered beside as built. */
function OrderedAndBuilt({ truck, sides, sheet, format, isAligned }: OnTheTruckProps) {
  const { answered, built, ordered, report, onTruck, failure } = useOnTruck(truck, sides, isAligned);
  const doubtsOf = useDoubtsAsBuilt();
  const shown = useFormat();
  if (onTruck === null || !built.ok || !onTruck.ok) {
    const refused = built.ok ? null : built;
    return (
      <p role="status" className="as-built-wait">
        {refused
          ? `The ${refused.side} knuckle read here does not go on this truck: ${refused.issues[0]?.mend}.`
          : failure !== null
            ? `What it does on the truck could not be worked out: ${failure}`
            : "Putting the knuckles as built on the truck: all travel, both locks…"}
      </p>
    );
  }
  const read = [sides.left, sides.right].filter((side) => side !== null);
  return (
    <>
      {answered && <CutShort study="check" of={[answered]} />}
      {report && (
        <SaveMenu
          of="the readings and what they do"
          files={[knuckleFile(truck, "as-built", "As built", () => asBuiltJson(report, truck.model.setup))]}
        />
      )}
      {read.map(({ side }) => (
        <table key={side} className="truck-table">
          <caption>
            {side === "left" ? "Left" : "Right"} wheel, straight ahead
            {isAligned ? ", aligned" : " as measured"}
          </caption>
          <thead>
            <tr>
              <td />
              <ColumnHeads of={TRUCK_COLUMNS} />
            </tr>
          </thead>
          <tbody>
            {truckRows(onTruck, side).map((row) => (
              <tr key={row.name}>
                <th scope="row">
                  {row.name} {row.note !== undefined && <small>{row.note}</small>}
                </th>
                {truckCells(row, format).map((cell, i) => (
                  <td key={TRUCK_COLUMNS[i]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      <ul className="as-built-mends">
        {[
          trackSentence(onTruck, format),
          ...gapSentences(onTruck, { ordered, built: built.model }, doubtsOf(truck), shown),
          worstGapSentence(onTruck, shown),
          ...truckWithinSentences(onTruck, read, format),
          ...mendSentences(read, onTruck, sheet.knuckle, truck.model, format),
        ]
          .filter((sentence) => sentence !== "")
          .map((sentence) => (
            <li key={sentence}>{keepTogether(sentence)}</li>
          ))}
      </ul>
    </>
  );
}
