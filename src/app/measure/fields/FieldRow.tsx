import { type KeyboardEvent, useId, useState } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { useStill } from "../../parts/useCalm.ts";
import { useField } from "../../state/documentUse.ts";
import { lengthFormat } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { noteChanged } from "./changedField.ts";
import { EntryInput } from "./EntryInput.tsx";
import { ExampleMark } from "./ExampleMark.tsx";
import { FieldChoice } from "./FieldChoice.tsx";
import { FieldDoubts } from "./FieldDoubts.tsx";
import { FieldFault } from "./FieldFault.tsx";
import { FieldHelp } from "./FieldHelp.tsx";
import { FieldWindow } from "./FieldWindow.tsx";
import { heldWords, unitHint } from "./fieldWords.ts";
import { mayBeLeftOut } from "./mayBeLeftOut.ts";
import { useIsFromExample } from "./useIsFromExample.ts";
import { useScrub } from "./useScrub.ts";

/** The one text that describes to every field how its help is opened. */
const HELP_KEY_ID = "field-help-key";
const HELP_KEY_WORDS = "F1 or Alt+/ in the field tells what it is";

/** Says once for all fields how help is opened, where nobody sees it: Tab goes from field to field, past the signs for it. */
export function HelpKey() {
  return (
    <span id={HELP_KEY_ID} hidden>
      {HELP_KEY_WORDS}
    </span>
  );
}

function asksHelp({ key, code, altKey, ctrlKey, metaKey }: KeyboardEvent): boolean {
  return !ctrlKey && !metaKey && (key === "F1" || (altKey && code === "Slash"));
}

export type FieldRowProps = {
  path: KeyPath;
  /** Default the field's own. */
  label?: string;
  /** What holds while it is empty, faintly. Default the field's own default. */
  placeholder?: string | undefined;
};

/** One field: its name, which can be dragged to change it, its value and unit, what is wrong with it, and help. */
export function FieldRow({ path, label, placeholder: held }: FieldRowProps) {
  const id = useId();
  const { field, text, draft, issue, isOfVariant: isOwn } = useField(path);
  const isOfVariant = useStill(isOwn);
  const units = useWorkbench((s) => lengthFormat(s).units);
  const placeholder = useWorkbench((s) => (text === "" ? (held ?? heldWords(s, path)) : ""));
  const scrub = useScrub(path);
  const [isHelpOpen, setIsHelpOpen] = useState(false);
  const isExample = useIsFromExample(path);
  // The line under the field stays as long as the field does, also when the number becomes the truck's own.
  const [wasExample, setWasExample] = useState(isExample);
  if (isExample && !wasExample) setWasExample(true);
  const isMarked = useWorkbench((s) => (s.truck?.setup.fromExample ?? null) !== null) && wasExample;
  if (!field) return null;
  const name = label ?? field.label;
  const mend = draft?.mend ?? issue?.mend ?? null;
  const isScrubbed = field.step !== null || field.kind === "length" || field.kind === "signedLength";
  const unit = unitHint(field, units);
  const describedBy = [
    unit && `${id}-unit`,
    mend !== null && `${id}-fault`,
    isOfVariant && `${id}-own`,
    isMarked && `${id}-example`,
    HELP_KEY_ID,
  ]
    .filter(Boolean)
    .join(" ");
  const hasWindow = ["length", "signedLength", "angle"].includes(field.kind);
  return (
    <div
      className={isExample ? "field field-example" : "field"}
      data-field={path.join(".")}
      onInput={hasWindow ? () => noteChanged(path) : undefined}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the key is pressed in the field that stands in it */}
      <div
        className="field-line"
        onKeyDown={(event) => {
          if (!asksHelp(event)) return;
          event.preventDefault();
          setIsHelpOpen(!isHelpOpen);
        }}
      >
        <label
          htmlFor={id}
          className={isScrubbed ? "field-label field-scrub" : "field-label"}
          {...(isScrubbed ? scrub : {})}
        >
          {name}
        </label>
        {field.kind === "choice" ? (
          <FieldChoice id={id} path={path} field={field} value={text} describedBy={describedBy} />
        ) : (
          <span className={field.kind === "text" ? "field-value field-value-text" : "field-value"}>
            <EntryInput
              id={id}
              path={path}
              text={text}
              placeholder={placeholder}
              isOptional={mayBeLeftOut(field)}
              isStepped={isScrubbed}
              isInvalid={mend !== null}
              describedBy={describedBy}
            />
            {unit !== "" && (
              <span id={`${id}-unit`} className="field-unit">
                {unit}
              </span>
            )}
          </span>
        )}
        <button
          type="button"
          className="field-ask"
          tabIndex={-1}
          title={HELP_KEY_WORDS}
          aria-keyshortcuts="F1 Alt+/"
          aria-expanded={isHelpOpen}
          aria-controls={`${id}-help`}
          aria-label={`What is ${name}?`}
          onClick={() => setIsHelpOpen(!isHelpOpen)}
        >
          <span className="field-ask-sign">?</span>
        </button>
      </div>
      {isMarked && <ExampleMark id={`${id}-example`} path={path} isExample={isExample} />}
      {isOfVariant && <VariantMark id={`${id}-own`} />}
      {mend !== null && <FieldFault id={`${id}-fault`} path={path} mend={mend} isDraft={draft !== null} />}
      <FieldDoubts path={path} />
      <div id={`${id}-help`} aria-live="polite">
        {isHelpOpen && <FieldHelp path={path} field={field} isOfVariant={isOfVariant} />}
      </div>
      {hasWindow && <FieldWindow path={path} />}
    </div>
  );
}

function VariantMark({ id }: { id: string }) {
  const variant = useWorkbench((s) => s.variant);
  return (
    <p id={id} className="field-own">
      <span aria-hidden="true">◆ </span>
      own value of “{variant}”
    </p>
  );
}
