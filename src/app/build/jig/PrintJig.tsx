import { printAlone } from "../../parts/printAlone.ts";

/** Prints the jig sheet alone, for the bench. */
export function PrintJig() {
  return (
    <button type="button" className="button" onClick={() => printAlone("jig")}>
      Print the jig sheet
    </button>
  );
}
