import "./change.css";
import { useState } from "react";
import { writtenValues } from "../../../setup/editing/writtenValues.ts";
import type { LengthUnit } from "../../../setup/types/types.ts";
import { changeField, EFFORT, SPACER } from "../../../studies/change/changeField.ts";
import type { FoundChange } from "../../../studies/change/changeTypes.ts";
import { changeJson } from "../../../studies/documents/changeJson.ts";
import type { LeftPart } from "../../../studies/trim/trimTypes.ts";
import {
  CHANGES_WAIT,
  changeSentence,
  changeTitle,
  effortName,
  movesSentences,
  writtenTo,
} from "../../../studies/wording/changeWords.ts";
import { unitsFromMm } from "../../../units/lengthUnits.ts";
import { goToField } from "../../measure/fields/fieldAsked.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { documentFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { useIsBehind } from "../../parts/useSettled.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { whyNone } from "../../work/answerCache.ts";
import { useLastAnswer } from "../../work/useAnswer.ts";
import { chosenChanges } from "./chosenChanges.ts";
import { keepOrder, keptOrder } from "./effortOrder.ts";
import { TrimTemplates } from "./TrimTemplates.tsx";
import { byEffort, useChanges } from "./useChanges.ts";

/** The smallest change of each field that makes the truck clear, least effort first. */
export function ChangeBody({ truck }: { truck: Truck }) {
  const duplicate = useWorkbench((s) => s.duplicateAsVariant);
  const [order, setOrder] = useState(keptOrder);
  const { answered, speech } = useChanges(truck, true);
  const { format, ...told } = speech;
  const { document } = told;
  const isBehind = useIsBehind(truck);
  const isOld = answered.answer === null || isBehind;
  const report = useLastAnswer(answered);
  const failure = whyNone(answered);
  if (failure !== null) return <p role="alert">The changes could not be worked out: {failure}</p>;
  if (report === null)
    return (
      <p role="status" className="change-wait">
        Looking for the smallest change of each field…
      </p>
    );
  const { setup } = truck.bolted;
  const keep = (change: FoundChange) => {
    const { trim } = change;
    const title = changeTitle(change, speech);
    const { documentId } = workbench.getState();
    const { variant } = truck.setup;
    const put = (values: Parameters<typeof duplicate>[1]) => {
      const made = duplicate(title, values);
      const kept = shownDocument(workbench.getState());
      const at = report.changes.indexOf(change);
      chosenChanges.note({
        documentId,
        variant: made,
        document: kept,
        of: variant,
        report,
        speech: told,
        at,
      });
    };
    if (trim !== null) {
      if (trim.left !== null) put([leftValue(trim.left, setup.units)]);
      return;
    }
    const after = change.set.reduce<unknown>((on, one) => {
      const found = changeField(document, setup, one.key, truck.file);
      return found.ok ? found.value.put(on, writtenTo(one, format)) : on;
    }, document);
    const blocks = change.set.map(({ key }) => (key === SPACER ? "wheel" : key.split(".")[0]!));
    put(writtenValues(document, after, blocks));
  };
  return (
    <div className="change" aria-busy={answered.answer === null}>
      <p>{keepTogether(changeSentence(report, speech))}</p>
      {report.verdict === "clear" && (
        <p>
          <button type="button" className="link-button" onClick={() => goToField(["allowance"])}>
            Ask for a larger gap to keep
          </button>
        </p>
      )}
      <ol className="change-list">
        {byEffort(report, order).map((change) => {
          const title = changeTitle(change, speech);
          return (
            <li key={title}>
              <h3>{keepTogether(title)}</h3>
              {movesSentences(change, speech).map((sentence) => (
                <p key={sentence}>{keepTogether(sentence)}</p>
              ))}
              {(change.trim === null || change.trim.left !== null) && (
                <button
                  type="button"
                  className="button"
                  aria-label={`Keep as a variant: ${title}`}
                  // Until it is found anew, the list is of the truck before.
                  disabled={isOld}
                  onClick={() => keep(change)}
                >
                  Keep as a variant
                </button>
              )}
              {change.trim !== null && <TrimTemplates truck={truck} trim={change.trim} />}
            </li>
          );
        })}
      </ol>
      <SaveMenu
        of="the changes"
        files={[documentFile(truck, "change", "What to change", () => changeJson(report, setup.units))]}
        // Until it is found anew, what could be saved is of the truck before.
        waits={isOld ? CHANGES_WAIT : null}
      />
      <CutShort study="change" of={[answered]} />
      <EffortOrder
        order={order}
        document={document}
        onOrder={(next) => {
          setOrder(next);
          keepOrder(next);
        }}
      />
    </div>
  );
}

/** mm. Far less than anybody cuts to, and few digits. */
const FINEST = { in: 0.001, mm: 0.01 } as const;

/** The points of the edge that is left, as the file holds them. */
function leftValue({ part, index }: LeftPart, units: LengthUnit) {
  const typed = (mm: number) =>
    Number((Math.round(unitsFromMm(mm, units) / FINEST[units]) * FINEST[units]).toFixed(3));
  const value = part.points.map((point) => point.map(typed));
  return { path: ["truck", "body", index, "points"], value };
}

type EffortOrderProps = {
  order: readonly string[];
  document: unknown;
  onOrder: (order: readonly string[]) => void;
};

/** What is less effort than what: each can be moved up. */
function EffortOrder({ order, document, onOrder }: EffortOrderProps) {
  return (
    <details className="change-order">
      <summary>Order of effort</summary>
      <p>Least effort first: common practice, no source. Move up what is easier in your shop.</p>
      <ol>
        {order.map((key, i) => {
          const name = effortName(key, document);
          return (
            <li key={key}>
              {name}{" "}
              <button
                type="button"
                className="button"
                disabled={i === 0}
                aria-label={`Move ${name} up`}
                onClick={() => onOrder([...order.slice(0, i - 1), key, order[i - 1]!, ...order.slice(i + 1)])}
              >
                ↑
              </button>
            </li>
          );
        })}
      </ol>
      <button type="button" className="button" onClick={() => onOrder(EFFORT)}>
        Back to the usual order
      </button>
    </details>
  );
}
