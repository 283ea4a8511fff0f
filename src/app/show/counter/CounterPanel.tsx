import "../../parts/layerDialog.css";
import { useLayer } from "../../state/address.ts";
import { CounterBoard } from "./CounterBoard.tsx";
import { CounterButton } from "./CounterButton.tsx";
import { PacketButton } from "./PacketButton.tsx";
import { ShareComparison } from "./ShareComparison.tsx";
import { SheetButton } from "./SheetButton.tsx";
import { nameWords, useComparison } from "./useComparison.ts";

/** The station for a customer: two trucks side by side, with the ways to fill the window and to the sheet. */
export function CounterPanel() {
  const comparison = useComparison();
  // What fills the window is the same board: two would be drawn, and named, twice.
  const isShownElsewhere = useLayer() === "counter";
  return (
    <section className="counter-panel" aria-labelledby="counter-panel-title">
      <header className="counter-panel-head">
        <h2 id="counter-panel-title" className="layer-title">
          Side by side <small>{comparison ? nameWords(comparison) : "no setup yet"}</small>
        </h2>
        <CounterButton />
        {comparison && <ShareComparison comparison={comparison} />}
        <SheetButton />
        <PacketButton />
      </header>
      {comparison && !isShownElsewhere && <CounterBoard comparison={comparison} />}
    </section>
  );
}
