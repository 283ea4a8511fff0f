import { type KeyboardEvent, useId, useRef, useState } from "react";

/** What was typed as a value, or how to mend it: a sentence without a full stop. */
export type ReadValue =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly mend: string };

export type ScaleReadoutProps = {
  /** What the value is of. */
  label: string;
  /** The value as a person reads it. */
  readout: string;
  /** What may be typed, as an example. */
  example: string;
  read: (text: string) => ReadValue;
  onChange: (value: number) => void;
};

/** It stands where the button was pressed: its keys go there. */
const focusIt = (input: HTMLInputElement | null) => input?.focus();

/** A value in large letters; pressed, it is typed in its place: Enter takes it, Escape leaves all as it was. */
export function ScaleReadout({ label, readout, example, read, onChange }: ScaleReadoutProps) {
  const id = useId();
  /** null = nothing is typed. */
  const [typed, setTyped] = useState<string | null>(null);
  const [mend, setMend] = useState("");
  /** A key has ended it: that the field then loses the focus takes nothing more. */
  const isEnded = useRef(false);
  const close = () => {
    setTyped(null);
    setMend("");
  };
  /** @returns whether it was taken, or there was nothing to take */
  const take = (): boolean => {
    if (typed === null || typed.trim() === "") return true;
    const found = read(typed);
    if (found.ok) onChange(found.value);
    else setMend(found.mend);
    return found.ok;
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== "Enter" && event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    if (event.key === "Enter" && !take()) return;
    isEnded.current = true;
    close();
    // Its keys go on from there.
    document.getElementById(`${id}-readout`)?.focus();
  };
  return (
    <span className="scale-readout">
      <button
        id={`${id}-readout`}
        type="button"
        className="scale-typed"
        aria-label={`${label}: ${readout}. Type a value`}
        title={`Type it: ${example}`}
        onClick={() => {
          isEnded.current = false;
          setTyped("");
        }}
      >
        <span>{readout}</span>
      </button>
      {typed !== null && (
        <input
          className="scale-entry"
          type="text"
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          ref={focusIt}
          aria-label={`${label}, such as ${example}`}
          placeholder={example}
          aria-invalid={mend !== ""}
          aria-describedby={mend === "" ? undefined : `${id}-mend`}
          value={typed}
          onChange={(event) => {
            setTyped(event.target.value);
            setMend("");
          }}
          onKeyDown={onKeyDown}
          onBlur={() => {
            if (!isEnded.current && take()) close();
          }}
        />
      )}
      {mend !== "" && (
        <span id={`${id}-mend`} className="scale-mend" role="alert">
          ✕ {mend}.
        </span>
      )}
    </span>
  );
}
