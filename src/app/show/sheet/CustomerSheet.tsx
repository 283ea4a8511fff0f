import "./customerSheet.css";
import { CloseButton } from "../../parts/CloseButton.tsx";
import { LayerDialog } from "../../parts/LayerDialog.tsx";
import { toldOf } from "../counter/comparisonSentences.ts";
import { useComparison } from "../counter/useComparison.ts";
import { SheetForm } from "./SheetForm.tsx";
import { SheetPage } from "./SheetPage.tsx";

/** The page for a customer, as it will be printed, with what can be written on it. */
export function CustomerSheet() {
  const comparison = useComparison();
  const isReady =
    comparison !== null &&
    toldOf(comparison).every(({ answer }) => answer.report !== null || answer.failure !== null);
  return (
    <LayerDialog name="sheet" labelledBy="sheet-title">
      <header className="layer-head">
        <h2 id="sheet-title" className="layer-title">
          Customer sheet <small>one page, Letter or A4</small>
        </h2>
        <span role="status" className="sheet-status">
          {comparison && !isReady ? "Checking every height and steering angle…" : ""}
        </span>
        <button
          type="button"
          className="button sheet-print"
          disabled={!isReady}
          onClick={() => window.print()}
        >
          Print
        </button>
        <CloseButton name="sheet" />
      </header>
      {comparison && (
        <div className="sheet-board">
          <SheetForm comparison={comparison} />
          <div className="sheet-preview">
            <SheetPage comparison={comparison} />
          </div>
        </div>
      )}
    </LayerDialog>
  );
}
