import { useMemo } from "react";
import { asBuiltJson } from "../../../studies/documents/asBuiltJson.ts";
import { type AsBuiltSides, builtKnuckles } from "../../../studies/jig/asBuiltReport.ts";
import { modelOnKnuckles } from "../../../studies/jig/asBuiltTruck.ts";
import type { JigSheet } from "../../../studies/jig/jigSheet.ts";
import {
  gapSentences,
  mendSentences,
  trackSentence,
  truckChangeText,
  truckRows,
  truckText,
  truckWithinText,
} from "../../../studies/wording/asBuiltTruckWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { documentFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
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

/** What the knuckles as built do on the truck before they ship: as ordered beside as built. */
export function OnTheTruck({ truck, sides, sheet, format }: OnTheTruckProps) {
  const answered = useAnswer("asBuilt", truck);
  const doubtsOf = useDoubts();
  const shown = useFormat();
  const built = useMemo(() => {
    const { setup } = truck.model;
    return modelOnKnuckles(setup, builtKnuckles(setup, sides), truck.file);
  }, [truck, sides]);
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
    <section className="on-the-truck" aria-label="On the truck">
      {answered && <CutShort study="check" of={[answered]} />}
      {report && (
        <SaveMenu
          of="the readings and what they do"
          files={[documentFile(truck, "as-built", "As built", () => asBuiltJson(report, truck.model.setup))]}
        />
      )}
      {read.map(({ side }) => (
        <table key={side}>
          <caption>{side === "left" ? "Left" : "Right"} wheel, straight ahead as measured</caption>
          <thead>
            <tr>
              <td />
              <th scope="col">As ordered</th>
              <th scope="col">As built</th>
              <th scope="col">Change</th>
              <th scope="col">One standard deviation</th>
            </tr>
          </thead>
          <tbody>
            {truckRows(onTruck, side).map((row) => (
              <tr key={row.name}>
                <th scope="row">
                  {row.name} {row.note !== undefined && <small>{row.note}</small>}
                </th>
                <td>{truckText(row.asOrdered, row.measure, format)}</td>
                <td>{truckText(row.asBuilt, row.measure, format)}</td>
                <td>{truckChangeText(row, format)}</td>
                <td>{truckWithinText(row, format)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      <ul className="as-built-mends">
        {[
          trackSentence(onTruck, format),
          ...gapSentences(onTruck, { ordered: truck.model, built: built.model }, doubtsOf(truck), shown),
          ...mendSentences(read, onTruck, sheet.knuckle, truck.model, format),
        ].map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
