import { valueAt } from "../../setup/types/keyPath.ts";
import { shownDocument } from "../state/selectors.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { SetupPanel } from "./SetupPanel.tsx";
import { WorksheetPanel } from "./worksheet/WorksheetPanel.tsx";
import { useWorksheetView } from "./worksheet/worksheetView.ts";

export type MeasurePanelProps = {
  /** null = it is not whole yet, or does not go together. */
  truck: Truck | null;
};

/** How the truck is got in: by its worksheet where the setup has one, else field by field. */
export function MeasurePanel({ truck }: MeasurePanelProps) {
  const hasReadings = useWorkbench((s) => hasWorksheet(shownDocument(s)));
  const isFields = useWorksheetView((s) => s.isFields);
  return hasReadings && !isFields ? (
    <WorksheetPanel />
  ) : (
    <SetupPanel truck={truck} hasWorksheet={hasReadings} />
  );
}

/** Whether a setup has readings, taken or still asked for. */
function hasWorksheet(document: unknown): boolean {
  const readings = valueAt(document, ["readings"]);
  return Array.isArray(readings) && readings.length > 0;
}
