import type { MouseEvent } from "react";

/** Puts the focus on an element, also on one that nobody tabs to, and brings it in sight. */
export function focusOn(element: HTMLElement | null | undefined): void {
  if (!element) return;
  if (element.tabIndex < 0) element.tabIndex = -1;
  element.focus();
  element.scrollIntoView({ block: "nearest" });
}

/**
 * To be called where a press takes its own button away: the keyboard goes on with the next such button of the list, after the last
 * one with the one before, or, where there is no other, with the field, the menu or the answer that the list stood at. Such a button says the
 * same: a second Enter does nothing else than the first. Nothing by mouse or finger: those need no focus.
 */
export function goOnFrom({ currentTarget: button, detail }: MouseEvent<HTMLElement>): void {
  if (detail > 0) return;
  const own = button.closest("li, .notice");
  const all = [...(own?.parentElement?.querySelectorAll<HTMLElement>("button") ?? [])];
  const next = goingOn(all, button, (one) => !own!.contains(one) && one.textContent === button.textContent);
  const field = button.closest("[data-field]")?.querySelector<HTMLElement>("input, select");
  const menu = button.closest(".menu")?.querySelector<HTMLElement>("summary");
  focusOn(
    next ?? field ?? menu ?? button.closest<HTMLElement>(".verdict") ?? document.querySelector(".verdict"),
  );
}

/** Of a list the next such one after `from`, else the nearest before it; null = there is none. */
export function goingOn<T>(all: readonly T[], from: T, isSuch: (one: T) => boolean): T | null {
  const at = all.indexOf(from);
  return all.slice(at + 1).find(isSuch) ?? all.slice(0, at).findLast(isSuch) ?? null;
}
