import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import type { SetupField } from "../../../setup/fields/setupField.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { joinWithin } from "../../../units/withinText.ts";
import { fieldText, lengthFormat, shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keyWords } from "../../words/keyWords.ts";
import { FieldSketch } from "../sketches/FieldSketch.tsx";
import { rangeWords, valueWords } from "./fieldWords.ts";
import { mayBeLeftOut } from "./mayBeLeftOut.ts";

export type FieldHelpProps = {
  path: KeyPath;
  field: SetupField;
  isOfVariant: boolean;
};

/** A tape read once, an angle finder held once (common practice, no source): to begin with, as typed. */
const USUAL_WITHIN = { in: "1/16", mm: "1.5", angle: "0.25" } as const;

/** What a field means, what it may hold, what holds without it, a sketch, and the ways back. */
export function FieldHelp({ path, field, isOfVariant }: FieldHelpProps) {
  const format = useWorkbench(lengthFormat);
  const isGiven = useWorkbench((s) => valueAt(shownDocument(s), path) !== undefined);
  const ofSetup = useWorkbench((s) => valueAt(s.document, path));
  const isRack = useWorkbench((s) => s.truck?.setup.truck.steering.type === "rack");
  const text = useWorkbench((s) => fieldText(s, path));
  const mayTellWithin = field.kind === "angle" || field.kind === "length" || field.kind === "signedLength";
  const usualWithin = USUAL_WITHIN[field.kind === "angle" ? "angle" : format.units];
  const range = rangeWords(field, format);
  const state = workbench.getState();
  const meaning = meaningOf(path, field);
  return (
    <div className="field-help">
      <p>{meaning}.</p>
      <FieldSketch pattern={field.pattern} label={field.label} isRack={isRack} />
      <p className="field-facts">
        {range !== null && <>Allowed: {range}. </>}
        {field.default !== null && <>If left empty: {keyWords(field.default)}. </>}
        {!mayBeLeftOut(field) && "Required. "}
      </p>
      {mayTellWithin && (
        <p className="field-facts">
          {text.includes("±")
            ? "The number after ± says how well it is known: two times in three it is off by less. "
            : "How well is it known? Type ± after it, and how little it is off two times in three. "}
          {!text.includes("±") && text !== "" && (
            <button
              type="button"
              className="small-button"
              onClick={() => state.editField(path, joinWithin(text, usualWithin))}
            >
              Known to ± {usualWithin}
              {field.kind === "angle" ? "°" : ` ${format.units}`}
            </button>
          )}
        </p>
      )}
      {isOfVariant && ofSetup !== undefined && (
        <button
          type="button"
          className="small-button"
          onClick={() => state.applySuggestion({ path, value: ofSetup, kind: "before" })}
        >
          Take the setup's own{backWords(valueWords(state, path, ofSetup))}
        </button>
      )}
      {mayBeLeftOut(field) && isGiven && (
        <button type="button" className="small-button" onClick={() => state.removeField(path)}>
          {field.default === null ? "Take it out" : "Back to default"}
        </button>
      )}
    </div>
  );
}

/** A radius is told by the thing it is of. */
function meaningOf(path: KeyPath, field: SetupField): string {
  const of =
    path.at(-1) === "radius" ? fieldAt(path.slice(0, -1), shownDocument(workbench.getState())) : null;
  const words = field.meaning === "radius" && of ? `radius of the ${of.meaning}` : field.meaning;
  const plain = keyWords(words);
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}

function backWords(words: string | null): string {
  return words === null ? "" : `, ${words}`;
}
