import { useMemo, useState } from "react";
import { alignedFrom } from "../../../studies/alignment/modelAsked.ts";
import { asBuiltJson } from "../../../studies/documents/asBuiltJson.ts";
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
} from "../../../studies/wording/asBuiltTruckWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { documentFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { ColumnHeads } from "../../parts/ScrollTable.tsx";
import { StandingChoice } from "../../parts/standing.tsx";
import type { Truck } from "../../state/truck.ts";
import { useDoubts } from "../../state/useDoubts.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { useAnswer } from "../../work/useAnswer.ts";

export type OnTheTruckProps = {
  /** As bolted on, on the knuckle as ordered. */
  truck: Truck;
  sides: AsBuiltSides;
  sheet: JigSheet;
  format: LengthFormat;
};

/** What the knuckles as built do on the truck before they ship, as bolted on or aligned. */
export function OnTheTruck(props: OnTheTruckProps) {
  const [wanted, setWanted] = useState(false);
  const isAligned = wanted && props.truck.setup.alignment.targets !== null;
  return (
    <section className="on-the-truck" aria-label="On the truck">
      <h3>On the truck</h3>
      <StandingChoice name="Truck as built" isAligned={isAligned} onChoose={setWanted} />
      <OrderedAndBuilt {...props} isAligned={isAligned} />
    </section>
  );
}

/** As ordered beside as built. */
function OrderedAndBuilt({
  truck,
  sides,
  sheet,
  format,
  isAligned,
}: OnTheTruckProps & { isAligned: boolean }) {
  const answered = useAnswer("asBuilt", truck, { question: { isAligned } });
  const doubtsOf = useDoubts();
  const shown = useFormat();
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
  const failure = answered?.failure ?? null;
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
          files={[documentFile(truck, "as-built", "As built", () => asBuiltJson(report, truck.model.setup))]}
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
          ...truckWithinSentences(onTruck, read, format),
          ...mendSentences(read, onTruck, sheet.knuckle, truck.model, format),
        ].map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </>
  );
}
