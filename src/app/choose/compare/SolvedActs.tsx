import { writtenValues } from "../../../setup/editing/writtenValues.ts";
import type { Solved, SolveReport } from "../../../studies/solve/solveTypes.ts";
import { type WindowField, writtenField } from "../../../studies/window/windowField.ts";
import { fieldName } from "../../../studies/wording/fieldName.ts";
import { solvedText } from "../../../studies/wording/solveWords.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

export type SolvedActsProps = {
  one: Solved;
  report: SolveReport;
  field: WindowField;
  document: unknown;
  /** What is on the board is another truck by now. */
  isBehind: boolean;
};

/** What can be done with a value: written into what is shown, or kept beside it. */
export function SolvedActs({ one, report, field, document, isBehind }: SolvedActsProps) {
  const duplicate = useWorkbench((s) => s.duplicateAsVariant);
  const variant = useWorkbench((s) => s.variant);
  const format = useFormat();
  const told = solvedText(one.value, report.kind, format);
  const name = `${fieldName(field.path, document)} ${told}`;
  const written = () =>
    writtenValues(document, writtenField(document, field, one.value), [String(field.path[0])]);
  const keep = () => duplicate(name.charAt(0).toLowerCase() + name.slice(1), written());
  const put = () => {
    const { beginGesture, applySuggestion, endGesture } = workbench.getState();
    beginGesture();
    for (const { path, value } of written()) applySuggestion({ path, value, kind: "nearest" });
    endGesture();
  };
  const isThere = told === solvedText(report.now, report.kind, format);
  const where = truckName(variant);
  return (
    <>
      {!isThere && (
        <button
          type="button"
          className="button"
          aria-label={`Put ${name} in ${where}`}
          disabled={isBehind}
          onClick={put}
        >
          Put {keepTogether(told)} in {where}
        </button>
      )}
      <button
        type="button"
        className="button"
        aria-label={`Keep ${name} as a variant`}
        disabled={isBehind}
        onClick={keep}
      >
        Keep {keepTogether(told)} as a variant
      </button>
    </>
  );
}
