import { withExampleAt } from "../../../setup/exampleMarks.ts";
import { valueAt } from "../../../setup/types/keyPath.ts";
import { orderedParts } from "../../../studies/order/orderedParts.ts";
import { USUAL_KNUCKLE, usualBuild } from "../../../studies/order/usualBuild.ts";
import { currentCatalogs } from "../../parts/catalogs/shippedCatalogs.ts";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { commitTyped } from "../../state/typing.ts";
import { workbench } from "../../state/workbench.ts";

/** Puts a usual knuckle into the truck shown, marked as an example's, as one step to undo. */
export function startUsual(): void {
  commitTyped();
  const state = workbench.getState();
  const { truck } = state;
  if (truck === null) return;
  const { order, knuckle } = truck.bolted.setup;
  const ordered = order && { order, parts: orderedParts(order, currentCatalogs()) };
  const value = usualBuild(knuckle, fileUnitsOf(state.document), ordered);
  state.beginGesture();
  state.applySuggestion({ path: ["build"], value, kind: "nearest" });
  const shown = shownDocument(workbench.getState());
  const built = withExampleAt(shown, ["build"], USUAL_KNUCKLE);
  for (const path of [["fromExample"], ["variants"]]) {
    const value = valueAt(built, path);
    if (value !== valueAt(shown, path)) state.applySuggestion({ path, value, kind: "nearest" });
  }
  state.endGesture();
}
