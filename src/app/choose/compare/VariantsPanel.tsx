import "./compare.css";
import { useDeferredValue, useMemo, useState } from "react";
import { comparedText, differenceText, differs, NUMBERS } from "../../../studies/wording/comparedNumbers.ts";
import { heightText } from "../../../studies/wording/poseWords.ts";
import { VARIANT_FOLLOWS } from "../../../studies/wording/variantWords.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { ScrollTable } from "../../parts/ScrollTable.tsx";
import { standingText } from "../../parts/standing.tsx";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { useAnswers } from "../../work/useAnswer.ts";
import type { NamedTruck } from "./useVariantTrucks.ts";
import { VariantHead } from "./VariantHead.tsx";
import { setsOf } from "./variantSets.ts";
import { WorstCell } from "./WorstCell.tsx";

export type VariantsPanelProps = {
  /** The setup as it stands, then its variants; the same list until one changes. */
  columns: readonly NamedTruck[];
};

/** Variants side by side: every number that differs, with how much, and what each comes nearest to. */
export function VariantsPanel({ columns }: VariantsPanelProps) {
  const variant = useWorkbench((s) => s.variant);
  const duplicate = useWorkbench((s) => s.duplicateAsVariant);
  const isAligned = useWorkbench((s) => s.isAligned);
  const format = useFormat();
  const [name, setName] = useState("");
  const [isAtPose, setAtPose] = useState(false);
  // A drag comes first: the table follows when there is time.
  const travel = useDeferredValue(useWorkbench((s) => (isAtPose ? s.travel : 0)));
  const trucks = useMemo(() => columns.flatMap(({ truck }) => (truck ? [truck] : [])), [columns]);
  const checks = useAnswers("check", trucks);
  const rows = NUMBERS.map((number) => ({
    number,
    values: columns.map(({ truck }) => truck && number.read(truck.model, travel)),
  }));
  const sets = setsOf(columns, format);
  const standings = columns.map(({ truck }) => truck && standingText(truck, isAligned));
  const setup = trucks[0]?.setup;
  const shown = rows.filter(({ values }, i) => i === 0 || differs(values));
  return (
    <section className="variants" aria-labelledby="variants-title">
      <h2 id="variants-title" className="label">
        Variants side by side: what differs
      </h2>
      <label className="variants-at">
        Camber, scrub radius … are told{" "}
        <select
          value={isAtPose ? "pose" : "measured"}
          onChange={(event) => setAtPose(event.target.value === "pose")}
        >
          <option value="measured">as measured</option>
          <option value="pose">at the height shown</option>
        </select>
        {isAtPose && setup && <b>{heightText(travel, setup, format)}</b>}
      </label>
      <ScrollTable label="Table of variants">
        <thead>
          <tr>
            <td />
            {columns.map((column) => (
              <VariantHead
                key={column.variant ?? ""}
                variant={column.variant}
                isShown={column.variant === variant}
              />
            ))}
          </tr>
        </thead>
        <tbody>
          {standings.some((text) => text !== null) && (
            <tr>
              <th scope="row">Shown</th>
              {columns.map(({ variant: key }, i) => (
                <td key={key ?? ""}>{standings[i] ?? "as bolted on"}</td>
              ))}
            </tr>
          )}
          <tr>
            <th scope="row">Worst gap of all</th>
            {columns.map(({ variant: key, truck }) => (
              <td key={key ?? ""}>
                {truck ? (
                  <WorstCell check={checks[trucks.indexOf(truck)]!} format={format} />
                ) : (
                  "has problems: show it to fix them"
                )}
              </td>
            ))}
          </tr>
          {shown.map(({ number, values }) => (
            <tr key={number.name}>
              <th scope="row">{number.name}</th>
              {values.map((value, i) => (
                <td key={columns[i]?.variant ?? ""} className="variants-number">
                  {comparedText(value, number, format)}
                  {i > 0 && <small> {differenceText(value, values[0] ?? null, number, format)}</small>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </ScrollTable>
      {columns.length > 1 && (
        <div className="variants-follow">
          {sets.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <p>{VARIANT_FOLLOWS}</p>
        </div>
      )}
      <CutShort study="nearest" of={checks} />
      <form
        className="variants-new"
        onSubmit={(event) => {
          event.preventDefault();
          duplicate(name);
          setName("");
        }}
      >
        <label>
          Keep what is shown as a variant called{" "}
          <input value={name} placeholder="variant" onChange={(event) => setName(event.target.value)} />
        </label>
        <button type="submit" className="button">
          Keep
        </button>
      </form>
    </section>
  );
}
