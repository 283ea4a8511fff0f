import { flushSync } from "react-dom";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { type KeyPath, keyText } from "../../../setup/types/keyPath.ts";
import type { LineState } from "../../../setup/worksheet/worksheetState.ts";
import { workbench } from "../../state/workbench.ts";
import { fieldAsked } from "../fields/fieldAsked.ts";

interface WorksheetView {
  /** Where the number stands whose card is open; null = the first that is not read. */
  readonly at: string | null;
  /** The card that was left for one read before, to be put right; null = none. */
  readonly from: string | null;
  /** Fields of the setup are shown in place of the worksheet. */
  readonly isFields: boolean;
}

/** What is looked at of the worksheet: no part of the truck, so nothing to undo. */
export const worksheetView = createStore<WorksheetView>()(() => ({
  at: null,
  from: null,
  isFields: false,
}));

// What is asked for is to be seen: a reading's card, or the fields in place of the worksheet.
fieldAsked.subscribe(({ path }) => {
  if (path?.[0] === "readings") openLine(path);
  else worksheetView.setState({ isFields: true });
});

// On another truck there is no card to come back to.
workbench.subscribe((now, then) => {
  if (now.documentId !== then.documentId) worksheetView.setState({ from: null });
});

export function useWorksheetView<T>(selector: (state: WorksheetView) => T): T {
  return useStore(worksheetView, selector);
}

/** Opens the card of a line. @param from the card to come back to from there */
export function openLine(path: KeyPath, from: string | null = null): void {
  worksheetView.setState({ at: keyText(path), from, isFields: false });
}

/**
 * Opens the card of a line where it is seen whole, with the cursor in what it asks for: the card is there before this returns,
 * so no key is lost between two readings.
 */
export function goToLine(path: KeyPath, from: string | null = null): void {
  flushSync(() => openLine(path, from));
  seeCard()?.querySelector<HTMLElement>("input, select")?.focus({ preventScroll: true });
}

/**
 * The card to come back to from a line that is looked at again; null = from there it goes on as ever.
 * @param left position of the line that was left for one read before; that of the line shown where none was
 */
export function comesBack(states: readonly LineState[], to: number, left: number): string | null {
  return to < left && states[to]!.isRead ? keyText(states[left]!.path) : null;
}

/** Brings the card that is open into view, whole where it fits. */
export function seeCard(): Element | null {
  const card = document.querySelector(".reading-card");
  card?.scrollIntoView({ block: "nearest" });
  return card;
}

/** The position of the line whose card is open; the first that is not read, else the last, where none was asked for. */
export function shownLine(states: readonly LineState[], at: string | null): number {
  const asked = states.findIndex(({ path }) => keyText(path) === at);
  if (asked >= 0) return asked;
  const unread = states.findIndex(({ isRead }) => !isRead);
  return unread >= 0 ? unread : states.length - 1;
}

/** The line before one or after it; after the last, the first that is not read, else the last stays. */
export function nextLine(states: readonly LineState[], from: number, way: "next" | "previous"): number {
  const { length } = states;
  if (way === "previous") return Math.max(0, from - 1);
  if (from < length - 1) return from + 1;
  const unread = states.findIndex(({ isRead }) => !isRead);
  return unread >= 0 ? unread : from;
}
