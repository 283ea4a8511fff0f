import { createStore } from "zustand/vanilla";
import { type KeyPath, keyText } from "../../../setup/types/keyPath.ts";
import { bringTo } from "../../parts/bring.ts";
import { whenThere } from "../../parts/whenThere.ts";
import { goToStation } from "../../state/address.ts";

/** The field that somebody asked to be shown: its group opens. */
export const fieldAsked = createStore<{ readonly path: KeyPath | null; readonly asked: number }>()(() => ({
  path: null,
  asked: 0,
}));

/** Goes to a field: to where it is measured, opens its group, scrolls to it and gives it the focus. */
export function goToField(path: KeyPath): void {
  goToStation("measure");
  fieldAsked.setState((s) => ({ path, asked: s.asked + 1 }));
  whenThere(
    () => inputOf(path),
    (input) => {
      bringTo(input, "center");
      input.focus({ preventScroll: true });
    },
  );
}

/** The first input at a path or inside it; lists that are folded away are opened on the way. */
function inputOf(path: KeyPath): HTMLElement | null {
  const key = path.join(".");
  const inside = (one: Element) =>
    one.getAttribute("data-field") === key || one.getAttribute("data-field")?.startsWith(`${key}.`);
  for (const field of document.querySelectorAll(".setup [data-field]")) {
    if (!inside(field)) continue;
    const input = field.querySelector<HTMLElement>("input, select");
    if (input) return input;
    // A block that is not there yet has what adds it.
    const adds = field.getAttribute("data-field") === key && field.querySelector<HTMLElement>("button");
    if (adds) return adds;
  }
  const name = keyText(path.slice(0, 3));
  document
    .querySelector<HTMLDetailsElement>(`.setup details[data-part="${CSS.escape(name)}"]:not([open])`)
    ?.setAttribute("open", "");
  return null;
}
