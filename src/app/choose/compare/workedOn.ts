import { createStore } from "zustand/vanilla";
import { keyText } from "../../../setup/types/keyPath.ts";
import { typing } from "../../state/typing.ts";

/** Key of the field that was worked on last, by typing into it or by asking about it; null = none yet. */
export const workedOn = createStore<{ readonly key: string | null }>()(() => ({ key: null }));

/** Notes that somebody is at a field now: what is asked next is mostly about the same. */
export function workOn(key: string): void {
  workedOn.setState({ key });
}

typing.subscribe(({ typed }) => {
  if (typed !== null) workOn(keyText(typed.path));
});
