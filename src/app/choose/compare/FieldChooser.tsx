import { type KeyboardEvent, useId, useMemo, useState } from "react";
import type { WindowField } from "../../../studies/window/windowField.ts";
import { fieldGroup, fieldName, NOT_VARIED } from "../../../studies/wording/fieldName.ts";
import { fieldGroups, type NamedField } from "./fieldGroups.ts";

export type FieldChooserProps = {
  fields: readonly WindowField[];
  /** The key of the one chosen. */
  value: string;
  document: unknown;
  onField: (key: string) => void;
};

/** Any field of the setup that can be given other values, by its block; typing a part of its name leaves few. */
export function FieldChooser({ fields, value, document, onField }: FieldChooserProps) {
  const id = useId();
  const [sought, setSought] = useState("");
  const named = useMemo(
    () =>
      fields.map(
        ({ key, path }): NamedField => ({
          key,
          group: fieldGroup(path, document),
          name: fieldName(path, document),
        }),
      ),
    [fields, document],
  );
  const groups = useMemo(() => fieldGroups(named, sought), [named, sought]);
  const first = groups[0]?.[1][0];
  const shown = groups.some(([, inIt]) => inIt.some(({ key }) => key === value));
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Escape" && sought !== "") {
      event.stopPropagation();
      setSought("");
    }
    if (event.key !== "Enter") return;
    // A form around it is not sent by this.
    event.preventDefault();
    if (sought.trim() === "" || first === undefined) return;
    onField(first.key);
    setSought("");
  };
  return (
    <>
      <span className="field-pick">
        <label>
          Field{" "}
          <select
            className="field-chooser"
            aria-describedby={id}
            value={value}
            onChange={(event) => {
              onField(event.target.value);
              setSought("");
            }}
          >
            {!shown && (
              <option value={value} hidden>
                {named.find(({ key }) => key === value)?.name}
              </option>
            )}
            {groups.map(([group, inIt]) => (
              <optgroup key={group} label={group}>
                {inIt.map(({ key, name }) => (
                  <option key={key} value={key}>
                    {name}
                  </option>
                ))}
              </optgroup>
            ))}
          </select>
        </label>
        <input
          type="search"
          className="field-find"
          aria-label="Find by name; Enter takes the first"
          placeholder="find a field"
          size={10}
          value={sought}
          onChange={(event) => setSought(event.target.value)}
          onKeyDown={onKeyDown}
        />
        {sought.trim() !== "" && (
          <span className="field-found" role="status">
            {first === undefined ? "no field is called that" : `Enter: ${first.name}`}
          </span>
        )}
      </span>
      <p id={id} className="field-left-out">
        {NOT_VARIED}
      </p>
    </>
  );
}
