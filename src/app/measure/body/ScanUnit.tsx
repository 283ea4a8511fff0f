import { useId } from "react";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { unitChoiceText, unitMark, unitQuestion } from "../../../studies/wording/gaugeWords.ts";
import { meshUnitOf } from "../../../studies/worksheet/scanFit.ts";
import { unitGuesses } from "../../../studies/worksheet/scanMove.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { meshOfPart } from "./scanOnBoard.ts";

/** Asks in which unit a mesh file is, by how large it would be in each. @param path of the body part */
export function ScanUnit({ path }: { path: KeyPath }) {
  const name = useId();
  const mesh = useWorkbench((s) => meshOfPart(s, path));
  const document = useWorkbench(shownDocument);
  const format = useWorkbench(lengthFormat);
  if (!mesh) return null;
  const guesses = unitGuesses(mesh.positions);
  const unit = meshUnitOf(document, path, fileUnitsOf(document));
  const isGiven = valueAt(document, [...path, "unit"]) !== undefined;
  return (
    <fieldset className="scan-units" data-field={[...path, "unit"].join(".")}>
      <legend>In which unit is the mesh?</legend>
      <p className="part-note">{unitQuestion(guesses, unit)}</p>
      {guesses.map((guess) => (
        <label key={guess.unit}>
          <input
            type="radio"
            name={name}
            checked={guess.unit === unit && isGiven}
            onChange={() => workbench.getState().editField([...path, "unit"], guess.unit)}
          />
          {unitChoiceText(guess, format)}
          {guess.isLikely && <strong> {unitMark(guess)}</strong>}
        </label>
      ))}
    </fieldset>
  );
}
