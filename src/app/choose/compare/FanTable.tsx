import { comparedText, NUMBERS } from "../../../studies/wording/comparedNumbers.ts";
import { sameGapSentence } from "../../../studies/wording/fanWords.ts";
import { amountText, lengthText, tellingFormat } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { ScrollTable } from "../../parts/ScrollTable.tsx";
import type { Answered } from "../../work/answerCache.ts";
import type { FanStep } from "./fan.ts";
import { WorstCell } from "./WorstCell.tsx";

export type FanTableProps = {
  /** What the field is called. */
  label: string;
  steps: readonly FanStep[];
  /** One a step: null = it does not go together. */
  checks: readonly (Answered<"check"> | null)[];
  format: LengthFormat;
  /** What is on the board is another truck by now: nothing can be kept. */
  isBehind: boolean;
  onKeep: (step: FanStep) => void;
};

const SHOWN = ["Half track", "Camber", "Scrub radius", "Mechanical trail"];

/** Each value of a fan with what follows from it, and a button that keeps it as a variant. */
export function FanTable({ label, steps, checks, format, isBehind, onKeep }: FanTableProps) {
  const columns = NUMBERS.filter(({ name }) => SHOWN.includes(name)).map((number) => {
    const values = steps.map(({ truck }) => truck && number.read(truck.model));
    const isLength = number.measure === "length";
    const known = values.filter((value) => value !== null);
    return { number, values, format: isLength ? tellingFormat(known, lengthText, format) : format };
  });
  const gaps = checks.flatMap((check) => check?.answer?.worst?.gap ?? []);
  const gapFormat = tellingFormat(gaps, (gap, as) => `${gap < 0 ? "−" : ""}${amountText(gap, as)}`, format);
  const reports = checks.flatMap((check) => check?.answer ?? []);
  const asked = checks.filter((check) => check !== null).length;
  const same = reports.length < asked ? null : sameGapSentence(reports, format);
  return (
    <div>
      <ScrollTable label="Table of the fan">
        <thead>
          <tr>
            <th scope="col">{label}</th>
            <th scope="col">Worst gap of all</th>
            {columns.map(({ number: { name } }) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {steps.map((step, i) => (
            <tr key={step.text}>
              <th scope="row">{step.text}</th>
              <td>
                {checks[i] ? <WorstCell check={checks[i]} format={gapFormat} /> : "does not go together"}
              </td>
              {columns.map(({ number, values, format: as }) => (
                <td key={number.name}>{comparedText(values[i] ?? null, number, as)}</td>
              ))}
              <td>
                {step.truck && (
                  <button
                    type="button"
                    className="button"
                    aria-label={`Keep ${label} ${step.text} as a variant`}
                    disabled={isBehind}
                    onClick={() => onKeep(step)}
                  >
                    Keep
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </ScrollTable>
      {same !== null && (
        <p className="fan-same" role="status">
          {same}
        </p>
      )}
    </div>
  );
}
