import "../../parts/layerDialog.css";
import { openLayer } from "../../parts/layer.ts";
import { contentsOf } from "../../parts/packetPages.ts";
import { useLayer } from "../../state/address.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { CounterBoard } from "./CounterBoard.tsx";
import { ShareComparison } from "./ShareComparison.tsx";
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

/** Opens the view that is turned to a customer across the counter. */
function CounterButton() {
  return (
    <button type="button" className="button" onClick={() => openLayer("counter")}>
      Counter view
    </button>
  );
}

/** Opens everything of a truck that is handed over on paper. */
function PacketButton() {
  const contents = useWorkbench((s) => (s.truck ? contentsOf(s.truck) : undefined));
  return (
    <button type="button" className="button" title={contents} onClick={() => openLayer("packet")}>
      Print packet
    </button>
  );
}

/** Opens the page to be printed for a customer. */
export function SheetButton() {
  return (
    <button type="button" className="button" onClick={() => openLayer("sheet")}>
      Print sheet
    </button>
  );
}
