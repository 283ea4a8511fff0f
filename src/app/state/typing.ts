import { createStore } from "zustand/vanilla";
import type { KeyPath } from "../../setup/types/keyPath.ts";

/** What is being typed into a field and is not yet put into the document. */
export interface Typed {
  readonly path: KeyPath;
  readonly text: string;
  /** Emptied, the field is taken out. */
  readonly isOptional: boolean;
}

/**
 * ms without a key after which what was typed is put into the document: all that follows from it takes the page a while,
 * in which it hears no further key.
 */
const REST = 300;

/** Followed by whoever keeps what is typed: it is told of each key at once. */
export const typing = createStore<{ readonly typed: Typed | null }>()(() => ({ typed: null }));

let isFollowed = false;

/** Says whether curves stand beside the fields: they follow each key that makes a number whole, the rest of the page a pause. */
export function followKeys(isOn: boolean): void {
  isFollowed = isOn;
}

/** Whether a number that is whole is to be seen in the curves at once. */
export function areKeysFollowed(): boolean {
  return isFollowed;
}

let commit: (() => void) | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Notes what a field holds by now; it is put into the document by `put` when no key has come for a moment. */
export function type(typed: Typed, put: () => void): void {
  if (commit !== null && typing.getState().typed?.path !== typed.path) commitTyped();
  commit = put;
  typing.setState({ typed });
  clearTimeout(timer);
  timer = setTimeout(whenAtRest, REST);
}

/** Where the browser can tell that a key is waiting to be handed on, that goes first. */
function whenAtRest(): void {
  const { scheduling } = (globalThis.navigator ?? {}) as { scheduling?: { isInputPending?(): boolean } };
  if (scheduling?.isInputPending?.() === true) timer = setTimeout(whenAtRest, REST);
  else commitTyped();
}

/** Puts what is being typed into the document now: before anything else is done with that. */
export function commitTyped(): void {
  const put = commit;
  if (put === null) return;
  clearTimeout(timer);
  commit = null;
  // Known as typed until the document has it, or a page that ends here would lose it.
  put();
  typing.setState({ typed: null });
}

/** Forgets what is being typed. @returns whether there was anything */
export function dropTyped(): boolean {
  clearTimeout(timer);
  const had = commit !== null;
  commit = null;
  if (had) typing.setState({ typed: null });
  return had;
}
