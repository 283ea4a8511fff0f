import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { SteerScale } from "./plotAxes.ts";

/** How somebody likes the plots; kept in the browser, no part of any setup. */
export interface PlotChoice {
  /** Ids of the plots that are left out below the map. */
  readonly hidden: readonly string[];
  /** Ids of the plots that stand in the dock beside the fields, in that order. */
  readonly docked: readonly string[];
  readonly scale: SteerScale;
  /** Whether the dock is open; null = nobody said. */
  readonly isDockOpen: boolean | null;
}

const FIRST: PlotChoice = {
  hidden: [],
  docked: ["camber", "toe", "scrub", "gap-steer"],
  scale: "angle",
  isDockOpen: null,
};

const KEY = "wellsweep plots";

const choice = createStore<PlotChoice>()(() => kept());

/** Follows how the plots are liked. The selector must give a primitive or something that already existed. */
export function usePlotChoice<T>(selector: (choice: PlotChoice) => T): T {
  return useStore(choice, selector);
}

/** Likes them so from now on. */
export function choosePlots(change: Partial<PlotChoice>): void {
  choice.setState(change);
  try {
    localStorage.setItem(KEY, JSON.stringify(choice.getState()));
  } catch {
    // A browser may keep nothing for a page: then it lasts as long as the page.
  }
}

function kept(): PlotChoice {
  try {
    return readPlotChoice(JSON.parse(localStorage.getItem(KEY) ?? "null"));
  } catch {
    return FIRST;
  }
}

/** A choice from storage, which may hold anything. */
export function readPlotChoice(stored: unknown): PlotChoice {
  const { hidden, docked, scale, isDockOpen } = (
    typeof stored === "object" && stored !== null ? stored : {}
  ) as Record<string, unknown>;
  const texts = (value: unknown, otherwise: readonly string[]) =>
    Array.isArray(value) ? value.filter((one) => typeof one === "string") : otherwise;
  return {
    hidden: texts(hidden, FIRST.hidden),
    docked: texts(docked, FIRST.docked),
    scale: scale === "lock" || scale === "angle" ? scale : FIRST.scale,
    isDockOpen: typeof isDockOpen === "boolean" ? isDockOpen : null,
  };
}
