import "./needsPanel.css";
import { keyText } from "../../setup/types/keyPath.ts";
import { needCount } from "../../studies/wording/answerWords.ts";
import { fieldName } from "../../studies/wording/fieldName.ts";
import { useStation } from "../state/address.ts";
import { shownDocument } from "../state/selectors.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { goToField } from "./fields/fieldAsked.ts";

/** In place of an answer while a truck is being measured: what is still needed, in order, each a way to its field. */
export function NeedsPanel() {
  const needs = useWorkbench((s) => s.needs);
  const document = useWorkbench(shownDocument);
  const isElsewhere = useStation() !== "measure";
  return (
    <section className="needs" aria-labelledby="needs-title">
      <h2 id="needs-title" className="label">
        No answer yet, and none is guessed
      </h2>
      <p role="status">{needCount(needs)}</p>
      <ol>
        {needs.map((path) => (
          <li key={keyText(path)}>
            <button type="button" className="link-button" onClick={() => goToField(path)}>
              {fieldName(path, document)}
            </button>
          </li>
        ))}
      </ol>
      {isElsewhere && <p>Each leads to its field at Measure; until then there is nothing to show here.</p>}
    </section>
  );
}
