import { CloseButton, LayerDialog } from "../../parts/LayerDialog.tsx";
import { CounterBoard } from "./CounterBoard.tsx";
import { SheetButton } from "./CounterPanel.tsx";
import { ShareComparison } from "./ShareComparison.tsx";
import { nameWords, useComparison } from "./useComparison.ts";

/** Two trucks side by side for whoever stands at the counter: pictures, plain words, and one thing to try. */
export function CounterView() {
  const comparison = useComparison();
  return (
    <LayerDialog name="counter" labelledBy="counter-title">
      <header className="layer-head">
        <h2 id="counter-title" className="layer-title">
          Side by side <small>{comparison ? nameWords(comparison) : "no setup yet"}</small>
        </h2>
        {comparison && <ShareComparison comparison={comparison} />}
        <SheetButton />
        <CloseButton name="counter" />
      </header>
      {comparison && <CounterBoard comparison={comparison} />}
    </LayerDialog>
  );
}
