import { type ClipboardEvent, useRef } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { commitTyped } from "../../state/typing.ts";
import { useEntry } from "./useEntry.ts";

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
  /** It shows and takes what is kept with the other sign: behind, where the file says ahead. Default false. */
  isTurned?: boolean;
  isInvalid?: boolean;
  /** Ids of what describes it, with spaces between. Default none. */
  describedBy?: string | undefined;
  onFocus?: () => void;
  /** After Enter, once what was typed has taken effect. Default: what stands there is selected. */
  onEnter?: () => void;
  onPaste?: (event: ClipboardEvent<HTMLInputElement>) => void;
};

/**
 * A text field of the setup: what is typed takes effect as soon as no key has come for a moment, and stays as typed while
 * the field has the focus. Escape puts back what stood there; Enter shows what arithmetic came to.
 */
export function EntryInput(props: EntryInputProps) {
  const { path, text, id, name, placeholder, isOptional = false, isStepped = true } = props;
  const input = useRef<HTMLInputElement>(null);
  const { onEnter = () => input.current?.select() } = props;
  const entry = useEntry({ path, text, isOptional, isStepped, isTurned: props.isTurned, onEnter });
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
      value={entry.value}
      onChange={(event) => entry.edit(event.target.value)}
      onFocus={props.onFocus}
      onBlur={entry.settle}
      onPaste={(event) => {
        commitTyped();
        props.onPaste?.(event);
      }}
      onKeyDown={entry.onKeyDown}
    />
  );
}
