import { valueAt } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { workbench } from "../../state/workbench.ts";
import { openLine } from "./worksheetView.ts";

/** Asks for more readings at the end of the list and opens the first of them; one step to undo. */
export function addReadings(asks: readonly object[]): void {
  const state = workbench.getState();
  const list = valueAt(shownDocument(state), ["readings"]);
  const first = Array.isArray(list) ? list.length : 0;
  state.beginGesture();
  for (const ask of asks) state.insertItem(["readings"], Number.POSITIVE_INFINITY, ask);
  state.endGesture();
  const [ask] = asks;
  if (ask) openLine(["readings", first, ...("stations" in ask || "plumb" in ask ? [] : ["is"])]);
}
