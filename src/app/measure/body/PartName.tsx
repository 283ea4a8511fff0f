import { useEffect, useId, useRef, useState } from "react";
import { MAX_NAME } from "../../../setup/reading/limits.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { workbench } from "../../state/workbench.ts";
import { typingVisit } from "../fields/typingVisit.ts";

export type PartNameProps = {
  path: KeyPath;
  name: string;
  /** Names that other parts have. */
  taken: readonly string[];
  /** It has the focus as it comes. */
  isFirst: boolean;
};

/** The name of a body part, changed wherever the part has it: in the setup and in every variant. */
export function PartName({ path, name, taken, isFirst }: PartNameProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [visit] = useState(typingVisit);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => () => visit.end(), [visit]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: as it comes, and never again
  useEffect(() => {
    if (isFirst) input.current?.focus();
  }, []);
  const fault = typed === null ? null : nameFault(typed, taken);
  const edit = (text: string) => {
    setTyped(text);
    if (nameFault(text, taken) !== null || text === name) return;
    visit.touch();
    workbench.getState().renamePart(name, text);
  };
  const settle = () => {
    visit.end();
    setTyped(null);
  };
  return (
    <div className="field" data-field={path.join(".")}>
      <div className="field-line">
        <label htmlFor={id} className="field-label">
          Name
        </label>
        <span className="field-value field-value-text">
          <input
            ref={input}
            id={id}
            className="entry"
            type="text"
            autoComplete="off"
            spellCheck={false}
            aria-invalid={fault !== null}
            aria-describedby={fault === null ? undefined : `${id}-fault`}
            value={typed ?? name}
            onChange={(event) => edit(event.target.value)}
            onBlur={settle}
            onKeyDown={(event) => {
              if (event.key === "Enter") settle();
              if (event.key !== "Escape") return;
              visit.cancel();
              setTyped(null);
            }}
          />
        </span>
      </div>
      {fault !== null && (
        <div className="fault">
          <p id={`${id}-fault`}>
            <span aria-hidden="true">✕ </span>
            {fault} It stays “{name}” until then.
          </p>
        </div>
      )}
    </div>
  );
}

function nameFault(text: string, taken: readonly string[]): string | null {
  if (text.trim() === "") return "A part needs a name.";
  if (text.length > MAX_NAME) return `A name has at most ${MAX_NAME} characters.`;
  return taken.includes(text) ? "Another part is called so." : null;
}
