import { valueAt } from "../../setup/types/keyPath.ts";
import { JumpBar } from "../parts/JumpBar.tsx";
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

/** What stands below or beside the fields; on a phone it is far down. */
const ANSWERS = [
  ["Pose", "#pose-sentence-title"],
  ["Nearest", "#gaps-title"],
  ["Alignment", "#alignment-title"],
] as const;

const BODY_PARTS = ["Body parts", "[data-group='Body parts'] > summary"] as const;

/** How the truck is got in: by its worksheet where the setup has one, else field by field. */
export function MeasurePanel({ truck }: MeasurePanelProps) {
  const hasReadings = useWorkbench((s) => hasWorksheet(shownDocument(s)));
  const isFields = useWorksheetView((s) => s.isFields);
  return hasReadings && !isFields ? (
    <WorksheetPanel jumps={truck && <JumpBar places={ANSWERS} />} />
  ) : (
    <SetupPanel
      truck={truck}
      hasWorksheet={hasReadings}
      jumps={truck && <JumpBar places={[BODY_PARTS, ...ANSWERS]} />}
    />
  );
}

/** Whether a setup has readings, taken or still asked for. */
function hasWorksheet(document: unknown): boolean {
  const readings = valueAt(document, ["readings"]);
  return Array.isArray(readings) && readings.length > 0;
}
