import "./findField.css";
import { type KeyboardEvent, useId, useMemo, useRef, useState } from "react";
import { shownDocument } from "../state/selectors.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { goToField } from "./fields/fieldAsked.ts";
import { type FormField, fieldsWith, formFields } from "./formFields.ts";

/** More are not listed: another word leaves fewer. */
const MOST = 8;

/** Goes to any field of the form by a part of its name; Enter takes the first, the arrow keys go through the list. */
export function FindField() {
  const id = useId();
  const [sought, setSought] = useState("");
  const list = useRef<HTMLUListElement>(null);
  const input = useRef<HTMLInputElement>(null);
  const document = useWorkbench(shownDocument);
  const isSeeking = sought.trim() !== "";
  const all = useMemo(() => (isSeeking ? formFields(document) : []), [isSeeking, document]);
  const found = useMemo(() => fieldsWith(all, sought), [all, sought]);
  const go = ({ goesTo }: FormField) => {
    setSought("");
    goToField(goesTo);
  };
  const step = (event: KeyboardEvent, way: 1 | -1) => {
    event.preventDefault();
    const places = [input.current, ...(list.current?.querySelectorAll("button") ?? [])];
    const at = places.indexOf(event.target as HTMLButtonElement);
    places[Math.min(places.length - 1, Math.max(0, at + way))]?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "ArrowDown") step(event, 1);
    else if (event.key === "ArrowUp") step(event, -1);
    else if (event.key === "Escape" && isSeeking) {
      event.stopPropagation();
      setSought("");
      input.current?.focus();
    } else if (event.key === "Enter" && event.target === input.current && found[0]) {
      event.preventDefault();
      go(found[0]);
    }
  };
  return (
    <search className="find-field" onKeyDown={onKeyDown}>
      <label htmlFor={`${id}-sought`}>Find a field</label>
      <input
        ref={input}
        id={`${id}-sought`}
        type="search"
        autoComplete="off"
        spellCheck={false}
        placeholder="backspacing, fender lip, …"
        aria-describedby={`${id}-found`}
        value={sought}
        onChange={(event) => setSought(event.target.value)}
      />
      <div className="find-field-list" hidden={!isSeeking}>
        <p id={`${id}-found`} role="status">
          {isSeeking && foundText(found.length)}
        </p>
        <ul ref={list}>
          {found.slice(0, MOST).map((field) => (
            <li key={field.path.join(".")}>
              <button type="button" onClick={() => go(field)}>
                {field.name} {!field.name.startsWith(field.group) && <small>{field.group}</small>}
                {field.instead !== "" && <small> given by: {field.instead}</small>}
              </button>
            </li>
          ))}
        </ul>
      </div>
    </search>
  );
}

function foundText(count: number): string {
  if (count === 0) return "No field is called that, or means that. Try another word.";
  if (count === 1) return "One field. Enter goes there.";
  return `${count} fields${count > MOST ? `; the first ${MOST} are listed` : ""}. Enter goes to the first.`;
}
