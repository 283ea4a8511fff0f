import { useId, useMemo } from "react";
import type { WindowField } from "../../../studies/window/windowField.ts";
import { fieldGroup, fieldName, NOT_VARIED } from "../../../studies/wording/fieldName.ts";

export type FieldChooserProps = {
  fields: readonly WindowField[];
  /** The key of the one chosen. */
  value: string;
  document: unknown;
  onField: (key: string) => void;
};

/** Any field of the setup that can be given other values, by its block. */
export function FieldChooser({ fields, value, document, onField }: FieldChooserProps) {
  const id = useId();
  const groups = useMemo(() => {
    const all = new Map<string, WindowField[]>();
    for (const field of fields) {
      const name = fieldGroup(field.path, document);
      all.set(name, [...(all.get(name) ?? []), field]);
    }
    return [...all];
  }, [fields, document]);
  return (
    <>
      <label>
        Field{" "}
        <select
          className="field-chooser"
          aria-describedby={id}
          value={value}
          onChange={(event) => onField(event.target.value)}
        >
          {groups.map(([name, inIt]) => (
            <optgroup key={name} label={name}>
              {inIt.map(({ key, path }) => (
                <option key={key} value={key}>
                  {fieldName(path, document)}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
      <p id={id} className="field-left-out">
        {NOT_VARIED}
      </p>
    </>
  );
}
