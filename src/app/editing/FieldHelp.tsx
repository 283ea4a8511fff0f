import { type KeyPath, valueAt } from "../../setup/keyPath.ts";
import type { SetupField } from "../../setup/setupField.ts";
import { lengthFormat, shownDocument } from "../state/selectors.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import { rangeWords } from "./rangeWords.ts";
import { FieldSketch } from "./sketches/FieldSketch.tsx";
import { valueWords } from "./valueWords.ts";

export type FieldHelpProps = {
  path: KeyPath;
  field: SetupField;
  isOfVariant: boolean;
};

/** What a field means, what it may hold, what holds without it, a sketch, and the ways back. */
export function FieldHelp({ path, field, isOfVariant }: FieldHelpProps) {
  const format = useWorkbench(lengthFormat);
  const isGiven = useWorkbench((s) => valueAt(shownDocument(s), path) !== undefined);
  const ofSetup = useWorkbench((s) => valueAt(s.document, path));
  const range = rangeWords(field, format);
  const state = workbench.getState();
  const meaning = field.meaning.charAt(0).toUpperCase() + field.meaning.slice(1);
  return (
    <div className="field-help">
      <p>{meaning}.</p>
      <FieldSketch pattern={field.pattern} label={field.label} />
      <p className="field-facts">
        {range !== null && <>May be {range}. </>}
        {field.default !== null && <>Left out: {field.default}. </>}
        {field.required && "Must be given. "}
        {(field.kind === "length" || field.kind === "signedLength") && (
          <>Takes 5 5/8, 5.625, 142.9 mm or 5 5/8 + 1/8. Arrow keys step it, with Shift eight steps; or drag its name.</>
        )}
      </p>
      {isOfVariant && ofSetup !== undefined && (
        <button type="button" className="small-button" onClick={() => state.applySuggestion({ path, value: ofSetup, kind: "before" })}>
          Take the setup's own{backWords(valueWords(state, path, ofSetup))}
        </button>
      )}
      {!field.required && isGiven && (
        <button type="button" className="small-button" onClick={() => state.removeField(path)}>
          Back to default
        </button>
      )}
    </div>
  );
}

function backWords(words: string | null): string {
  return words === null ? "" : `, ${words}`;
}
