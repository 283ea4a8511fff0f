import { useStore } from "zustand";
import type { LengthFormat } from "../../units/formatLength.ts";
import { pacedStore } from "./pacedStore.ts";
import { lengthFormatOf } from "./preferences.ts";
import type { Truck } from "./truck.ts";
import { workbench } from "./workbench.ts";
import type { Workbench } from "./workbenchActions.ts";

/** A page out of sight has no frames, and what is no page at all neither: there it is told at once. */
const hasFrames = () => "requestAnimationFrame" in globalThis && !document.hidden;

const paced = pacedStore(workbench, (tell) => (hasFrames() ? requestAnimationFrame(tell) : tell()));

/**
 * Follows the page's store; a pose that is moved, once a frame. The selector must give a primitive or something that already
 * existed.
 */
export function useWorkbench<T>(selector: (state: Workbench) => T): T {
  return useStore(paced, selector);
}

/** Follows a pose at every move: for the control that moves it. */
export function useMovedPose<T>(selector: (state: Workbench) => T): T {
  return useStore(workbench, selector);
}

/** The truck on the board: what rewrites its numbers goes by it, however far behind the page shows it. */
export function truckOnBoard(shown: Truck): Truck {
  return workbench.getState().truck ?? shown;
}

/** How lengths are written now: the units a person chose, or the file's own. */
export function useFormat(): LengthFormat {
  return useWorkbench((s) => lengthFormatOf(s.preferences.lengths, s.truck?.setup.units ?? "in"));
}
