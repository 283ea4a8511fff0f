import { UNBUILT_WAYS, usualBuildSentence } from "../../../studies/wording/drawingWords.ts";
import { goToField } from "../../measure/fields/fieldAsked.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { commitTyped } from "../../state/typing.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";

/** The two ways to say what a knuckle is made of: a usual one at once, or field by field. */
export function BuildWays() {
  const isBlocked = useWorkbench((s) => s.issues.length > 0);
  return (
    <>
      <div className="row-tools">
        <button type="button" className="button" disabled={isBlocked} onClick={() => void startUsual()}>
          {UNBUILT_WAYS.usual}
        </button>
        <button type="button" className="button" onClick={() => goToField(["build"])}>
          {UNBUILT_WAYS.fields}
        </button>
      </div>
      <p className="fold-fine">{UNBUILT_WAYS.note}</p>
    </>
  );
}

/** How much of what the truck's knuckle is made of is an example's. */
export function UsualBuildNote({ truck }: { truck: Truck }) {
  const text = usualBuildSentence(truck.setup);
  return text === null ? null : <p role="status">{text}</p>;
}

/** Puts a usual knuckle into the truck shown, marked as an example's, as one step to undo. */
async function startUsual(): Promise<void> {
  const [{ usualBuild, USUAL_KNUCKLE }, { orderedParts }, { currentCatalogs }, { withExampleAt }] =
    await Promise.all([
      import("../../../studies/order/usualBuild.ts"),
      import("../../../studies/order/orderedParts.ts"),
      import("../../parts/catalogs/shippedCatalogs.ts"),
      import("../../../setup/exampleMarks.ts"),
    ]);
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
