import { printAlone } from "../../parts/printAlone.ts";

/** Prints the alignment card alone, for the wall beside the rack. */
export function PrintCard() {
  return (
    <button type="button" className="button" onClick={() => printAlone("aligning")}>
      Print
    </button>
  );
}
