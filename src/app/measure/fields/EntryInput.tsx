import { type ClipboardEvent, type KeyboardEvent, useEffect, useRef, useState } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { fieldDraft, fieldText } from "../../state/selectors.ts";
import { commitTyped, dropTyped, type } from "../../state/typing.ts";
import { workbench } from "../../state/workbench.ts";
import { stepBy } from "./stepBy.ts";
import { typingVisit } from "./typingVisit.ts";

/** Steps of a key with Shift. */
const LARGE_STEP = 8;

export type EntryInputProps = {
  path: KeyPath;
  /** What stands in the field by the store. */
  text: string;
  id?: string;
  /** Names the input where no label element does. Default none. */
  name?: string;
  /** Shown while it is empty: what holds then. Default none. */
  placeholder?: string;
  /** Emptied, it is taken out and its default holds. Default false. */
  isOptional?: boolean;
  /** Arrow up and down step it. Default true. */
  isStepped?: boolean;
  isInvalid?: boolean;
  /** Ids of what describes it, with spaces between. Default none. */
  describedBy?: string | undefined;
  onFocus?: () => void;
  onPaste?: (event: ClipboardEvent<HTMLInputElement>) => void;
};

/**
 * A text field of the setup: what is typed takes effect as soon as no key has come for a moment, and stays as typed while
 * the field has the focus. Escape puts back what stood there; Enter shows what arithmetic came to.
 */
export function EntryInput(props: EntryInputProps) {
  const { path, text, id, name, placeholder, isOptional = false, isStepped = true } = props;
  // What was typed, as long as the store still holds what came of it.
  const [typed, setTyped] = useState<{ readonly text: string; readonly made: string } | null>(null);
  const [visit] = useState(typingVisit);
  const input = useRef<HTMLInputElement>(null);
  useEffect(
    () => () => {
      commitTyped();
      visit.end();
    },
    [visit],
  );

  const edit = (value: string) => {
    const put = () => {
      const { editField, removeField } = workbench.getState();
      visit.touch();
      if (isOptional && value.trim() === "") removeField(path);
      else editField(path, value);
      setTyped({ text: value, made: fieldText(workbench.getState(), path) });
    };
    type({ path, text: value, isOptional }, put);
    setTyped({ text: value, made: fieldText(workbench.getState(), path) });
  };
  const settle = () => {
    commitTyped();
    visit.end();
    setTyped(null);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const way = { ArrowUp: 1, ArrowDown: -1 }[event.key] as 1 | -1 | undefined;
    if (way !== undefined && isStepped) {
      event.preventDefault();
      commitTyped();
      visit.touch();
      setTyped(null);
      stepBy(path, way * (event.shiftKey ? LARGE_STEP : 1));
    } else if (event.key === "Enter") {
      settle();
      input.current?.select();
    } else if (event.key === "Escape") {
      event.stopPropagation();
      dropTyped();
      const state = workbench.getState();
      if (!visit.cancel() && fieldDraft(state, path)) state.discardDraft(path);
      setTyped(null);
    }
  };
  return (
    <input
      ref={input}
      id={id}
      className="entry"
      type="text"
      inputMode="text"
      autoComplete="off"
      autoCapitalize="none"
      spellCheck={false}
      aria-label={name}
      aria-invalid={props.isInvalid === true}
      aria-describedby={props.describedBy}
      placeholder={placeholder}
      value={typed && typed.made === text ? typed.text : text}
      onChange={(event) => edit(event.target.value)}
      onFocus={props.onFocus}
      onBlur={settle}
      onPaste={(event) => {
        commitTyped();
        props.onPaste?.(event);
      }}
      onKeyDown={onKeyDown}
    />
  );
}
