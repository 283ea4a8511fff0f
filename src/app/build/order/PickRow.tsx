import { useId } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { useField } from "../../state/documentUse.ts";
import { workbench } from "../../state/workbench.ts";

export type PickRowProps = {
  path: KeyPath;
  /** Default the field's own. */
  label?: string;
  /** What is said while nothing is chosen. */
  none: string;
  choices: readonly string[];
  /** What a choice is shown as. Default: itself. */
  texts?: Readonly<Record<string, string>>;
  /** What is told of a choice under it, once it is made: the box then shows its name alone. Default nothing. */
  told?: Readonly<Record<string, string>>;
  /** The list takes a line of its own. Default false. */
  isWide?: boolean;
  /** What choosing one does. Default: it is put into the field. */
  onPick?: (name: string) => void;
};

/** A name out of a list; one that is not in it stays, and says so. */
export function PickRow({
  path,
  label,
  none,
  choices,
  texts = {},
  told = {},
  isWide = false,
  onPick,
}: PickRowProps) {
  const id = useId();
  const { field, text } = useField(path);
  const { editField, removeField } = workbench.getState();
  return (
    <div className="field" data-field={path.join(".")}>
      <div className="field-line order-pick" data-wide={isWide || undefined}>
        <label htmlFor={id} className="field-label">
          {label ?? field?.label}
        </label>
        <select
          id={id}
          className="field-choice"
          value={text}
          onChange={({ target: { value } }) => {
            if (value === "") removeField(path);
            else if (onPick) onPick(value);
            else editField(path, value);
          }}
        >
          <option value="">{none}</option>
          {text !== "" && !choices.includes(text) && <option value={text}>{text}, not in the list</option>}
          {choices.map((name) => (
            <option key={name} value={name}>
              {(name === text && told[name] ? name : texts[name]) ?? name}
            </option>
          ))}
        </select>
      </div>
      {told[text] && <p className="order-told">{told[text]}</p>}
    </div>
  );
}
