import { withExampleAt } from "../../../setup/exampleMarks.ts";
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
  const built = withExampleAt(shownDocument(workbench.getState()), ["build"], USUAL_KNUCKLE);
  const marks = (built as { readonly fromExample: unknown }).fromExample;
  state.applySuggestion({ path: ["fromExample"], value: marks, kind: "nearest" });
  state.endGesture();
}
