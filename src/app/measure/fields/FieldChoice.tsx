import type { SetupField } from "../../../setup/fields/setupField.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { workbench } from "../../state/workbench.ts";
import { choiceWords } from "./fieldWords.ts";

export type FieldChoiceProps = {
  id: string;
  path: KeyPath;
  field: SetupField;
  value: string;
  describedBy?: string | undefined;
};

/** A field that takes one of a few words. Left out, its default holds, and says so. */
export function FieldChoice({ id, path, field, value, describedBy }: FieldChoiceProps) {
  const { editField, removeField } = workbench.getState();
  return (
    <select
      id={id}
      className="field-choice"
      aria-describedby={describedBy}
      value={value}
      onChange={({ target }) => (target.value === "" ? removeField(path) : editField(path, target.value))}
    >
      {!field.required && <option value="">{defaultWords(path, field)}</option>}
      {field.required && value === "" && (
        <option value="" disabled>
          choose
        </option>
      )}
      {field.choices.map((word) => (
        <option key={word} value={word}>
          {choiceWords(path, word)}
        </option>
      ))}
    </select>
  );
}

function defaultWords(path: KeyPath, { default: byDefault }: SetupField): string {
  return byDefault === null ? "not given" : `default: ${choiceWords(path, byDefault.replace(/:.*/, ""))}`;
}
