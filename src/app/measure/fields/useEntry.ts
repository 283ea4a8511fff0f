import { type KeyboardEvent, useEffect, useState } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { fieldDraft, fieldText } from "../../state/selectors.ts";
import { areKeysFollowed, commitTyped, dropTyped, type } from "../../state/typing.ts";
import { workbench } from "../../state/workbench.ts";
import { noteChanged } from "./changedField.ts";
import { stepBy } from "./stepBy.ts";
import { takeWhole } from "./takeWhole.ts";
import { turnedText } from "./turnedText.ts";
import { typingVisit } from "./typingVisit.ts";

/** Steps of a key with Shift. */
const LARGE_STEP = 8;

export interface EntryOptions {
  readonly path: KeyPath;
  /** What stands in the field by the store. */
  readonly text: string;
  /** Emptied, it is taken out and its default holds. */
  readonly isOptional: boolean;
  /** Arrow up and down step it. */
  readonly isStepped: boolean;
  /** It shows and takes what is kept with the other sign. Default false. */
  readonly isTurned?: boolean | undefined;
  /** Each time that what was typed has been put into the field. Default nothing. */
  readonly onPut?: (() => void) | undefined;
  /** After Enter, once what was typed has taken effect. Default nothing. */
  readonly onEnter?: (() => void) | undefined;
}

/** A text being typed into a field of the setup. */
export interface Entry {
  /** What the field shows. */
  readonly value: string;
  /** It is what was typed here, and not settled yet. */
  readonly isTyped: boolean;
  /** Types a text in place of what stands there; it takes effect as soon as no key has come for a moment. */
  edit(text: string): void;
  /** What was typed takes effect now, and its step to undo ends. */
  settle(): void;
  onKeyDown(event: KeyboardEvent): void;
}

/**
 * What is typed into a field takes effect as soon as no key has come for a moment, a whole number beside curves at once, and stays
 * as typed until it is settled.
 * Escape puts back what stood there; Enter shows what arithmetic came to.
 */
export function useEntry(options: EntryOptions): Entry {
  const { path, text, isOptional, isStepped, isTurned = false, onPut, onEnter } = options;
  // What was typed, as long as the store still holds what came of it.
  const [typed, setTyped] = useState<{ readonly text: string; readonly made: string } | null>(null);
  const [visit] = useState(typingVisit);
  useEffect(
    () => () => {
      commitTyped();
      visit.end();
    },
    [visit],
  );

  const edit = (value: string) => {
    const kept = isTurned ? turnedText(value) : value;
    const put = () => {
      const { editField, removeField } = workbench.getState();
      visit.touch();
      if (isOptional && value.trim() === "") removeField(path);
      else editField(path, kept);
      onPut?.();
      setTyped({ text: value, made: fieldText(workbench.getState(), path) });
    };
    type({ path, text: kept, isOptional }, put);
    if (areKeysFollowed()) {
      visit.touch();
      takeWhole(workbench, path, kept);
    }
    setTyped({ text: value, made: fieldText(workbench.getState(), path) });
  };
  const settle = () => {
    commitTyped();
    visit.end();
    setTyped(null);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const way = { ArrowUp: 1, ArrowDown: -1 }[event.key] as 1 | -1 | undefined;
    if (way !== undefined && isStepped) {
      event.preventDefault();
      commitTyped();
      visit.touch();
      setTyped(null);
      noteChanged(path);
      stepBy(path, (isTurned ? -way : way) * (event.shiftKey ? LARGE_STEP : 1));
    } else if (event.key === "Enter") {
      settle();
      // The focus may go on to a button, which the same press would push.
      if (onEnter) event.preventDefault();
      onEnter?.();
    } else if (event.key === "Escape") {
      event.stopPropagation();
      dropTyped();
      const state = workbench.getState();
      if (!visit.cancel() && fieldDraft(state, path)) state.discardDraft(path);
      setTyped(null);
    }
  };
  const isTyped = typed !== null && typed.made === text;
  const standing = isTurned ? turnedText(text) : text;
  return { value: isTyped ? typed.text : standing, isTyped, edit, settle, onKeyDown };
}
