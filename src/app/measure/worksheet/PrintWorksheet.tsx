import "../../parts/print.css";
import { useEffect, useState } from "react";
import { createPortal } from "react-dom";
import type { LineState } from "../../../setup/worksheet/worksheetState.ts";
import { WorksheetForm } from "./WorksheetForm.tsx";

export type PrintWorksheetProps = {
  states: readonly LineState[];
  /** What the truck is called. */
  name: string;
};

/**
 * Prints the worksheet with its sketches, blank to take under the truck or with what was read. The form stands beside the
 * workbench in the page only while it is printed, so that nothing else is.
 */
export function PrintWorksheet({ states, name }: PrintWorksheetProps) {
  const [printing, setPrinting] = useState<"blank" | "filled" | null>(null);
  useEffect(() => {
    if (printing === null) return;
    const root = document.documentElement;
    const end = () => setPrinting(null);
    root.dataset.print = "worksheet";
    addEventListener("afterprint", end, { once: true });
    window.print();
    return () => {
      removeEventListener("afterprint", end);
      delete root.dataset.print;
    };
  }, [printing]);
  return (
    <>
      <button type="button" className="button" onClick={() => setPrinting("blank")}>
        Print a blank form
      </button>
      <button type="button" className="button" onClick={() => setPrinting("filled")}>
        Print with what was read
      </button>
      {printing !== null &&
        createPortal(
          <WorksheetForm states={states} name={name} isBlank={printing === "blank"} />,
          document.body,
        )}
    </>
  );
}
