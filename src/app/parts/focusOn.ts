import type { MouseEvent } from "react";

/** Puts the focus on an element, also on one that nobody tabs to, and brings it in sight. */
export function focusOn(element: HTMLElement | null | undefined): void {
  if (!element) return;
  if (element.tabIndex < 0) element.tabIndex = -1;
  element.focus();
  element.scrollIntoView({ block: "nearest" });
}

/**
 * To be called where a press takes its own button away: the keyboard goes on with the next such button of the list, or, after the
 * last one, with the field or the answer that the list stood at. Nothing by mouse or finger: those need no focus.
 */
export function goOnFrom({ currentTarget: button, detail }: MouseEvent<HTMLElement>): void {
  if (detail > 0) return;
  const own = button.closest("li, .notice");
  const others = [...(own?.parentElement?.querySelectorAll<HTMLElement>("button") ?? [])];
  const next = others.find((other) => !own?.contains(other));
  const field = button.closest("[data-field]")?.querySelector<HTMLElement>("input, select");
  focusOn(next ?? field ?? button.closest<HTMLElement>(".verdict") ?? document.querySelector(".verdict"));
}
