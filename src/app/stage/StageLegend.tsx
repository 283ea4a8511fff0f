import { FENDER_SIDE_LEGEND } from "../../studies/wording/stageTexts.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { isLip, measuredWheel } from "./lips.ts";

export type StageLegendProps = {
  truck: Truck;
};

/** Says of what is drawn without having been measured that it is. */
export function StageLegend({ truck }: StageLegendProps) {
  const isTruck = useWorkbench((s) => s.preferences.picture === "truck");
  const hidden = useWorkbench((s) => s.hiddenParts);
  const wheel = measuredWheel(truck);
  const hasPanel =
    wheel !== null &&
    truck.setup.truck.body.some((part) => isLip(part, wheel) && !hidden.includes(part.name));
  return isTruck && hasPanel ? <span className="stage-legend">{FENDER_SIDE_LEGEND}</span> : null;
}
