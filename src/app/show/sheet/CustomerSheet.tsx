import "./sheetForm.css";
import "./customerSheet.css";
import { CloseButton, LayerDialog } from "../../parts/LayerDialog.tsx";
import { reportFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import type { SavedFile } from "../../parts/useSaving.ts";
import type { Truck } from "../../state/truck.ts";
import { toldOf } from "../counter/comparisonSentences.ts";
import { useComparison } from "../counter/useComparison.ts";
import { SheetForm } from "./SheetForm.tsx";
import { SheetPage } from "./SheetPage.tsx";

/** The check that a truck's numbers on the sheet are of, as the command line prints it. */
function checkFile(truck: Truck, letter: string): SavedFile {
  const whole = reportFile(truck, { of: "check" }, `The check of ${letter}`);
  return { ...whole, file: whole.file.replace(/-check/, `-${letter}-check`) };
}

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
        {isReady && (
          <SaveMenu
            of="what stands on the sheet"
            files={toldOf(comparison).map(({ letter, truck }) => checkFile(truck, letter))}
          />
        )}
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
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls where the window is narrow, by keys too */}
          <section className="sheet-preview" tabIndex={0} aria-label="The sheet">
            <SheetPage comparison={comparison} />
          </section>
        </div>
      )}
    </LayerDialog>
  );
}
