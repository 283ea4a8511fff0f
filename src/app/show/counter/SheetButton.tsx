import { openLayer } from "../../parts/layer.ts";

/** Opens the page to be printed for a customer. */
export function SheetButton() {
  return (
    <button type="button" className="button" onClick={() => openLayer("sheet")}>
      Print sheet
    </button>
  );
}
