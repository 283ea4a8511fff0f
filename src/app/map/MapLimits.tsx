import { lowTexts, steerTexts } from "../../studies/wording/stopTexts.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat } from "../state/useFormat.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { useMap } from "./useMap.ts";

export type MapLimitsProps = {
  truck: Truck;
};

/** The two answers people ask of a map, at the pose shown: how far it steers at this height, how low at this steer. */
export function MapLimits({ truck }: MapLimitsProps) {
  const limits = useMap((s) => (s.of === truck ? s.limits : null));
  const format = useFormat();
  // What is shown may be of the pose before, until the new one's is worked out.
  const isCurrent = useWorkbench(
    (s) => limits !== null && limits.travel === s.travel && limits.steer === s.steer,
  );
  const steer = limits && steerTexts(limits.steering, truck.model);
  return (
    <dl className="map-limits" aria-busy={!isCurrent}>
      <dt>Here it steers left to</dt>
      <dd>{steer?.left ?? "…"}</dd>
      <dt>right to</dt>
      <dd>{steer?.right ?? "…"}</dd>
      <dt>goes down to</dt>
      <dd>{limits ? lowTexts(limits.lowering, format) : "…"}</dd>
    </dl>
  );
}
