import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { PlotOver } from "../../parts/plotNumbers.ts";

/** A place that is read: how far travel (mm), steer or roll (rad) is there. Every plot over the same shows it. */
export interface PlotCursor {
  readonly over: PlotOver;
  readonly input: number;
}

const cursor = createStore<{ readonly at: PlotCursor | null }>()(() => ({ at: null }));

/** Reads every plot over travel, steering or roll at a place; null = none is read. */
export function setCursor(at: PlotCursor | null): void {
  cursor.setState({ at });
}

/** Where plots over this are read; null = nowhere. */
export function useCursor(over: PlotOver): number | null {
  return useStore(cursor, ({ at }) => (at?.over === over ? at.input : null));
}
