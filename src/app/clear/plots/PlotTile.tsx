import { memo, useDeferredValue, useMemo, useRef } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { plotOver } from "../../parts/plotNumbers.ts";
import { setStage, useStage } from "../../state/stageSettings.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import type { NamedTruck } from "./alignmentPlots.ts";
import { Plot } from "./Plot.tsx";
import type { SteerScale } from "./plotAxes.ts";
import { plotSpec } from "./plotSpecs.ts";
import { useIsSeen } from "./useIsSeen.ts";
import { usePrinting } from "./usePrinting.ts";

export type PlotTileProps = {
  id: string;
  truck: Truck;
  others: readonly NamedTruck[];
  scale: SteerScale;
  format: LengthFormat;
  /** As of `Plot`. */
  isLow?: boolean;
};

/** Plots that are cuts through the pose shown, by what of it they hang on. */
const CUT_AT = {
  "gap-steer": "travel",
  "gap-travel": "steer",
  "roll-sideways": "travel",
  "roll-height": "travel",
} as const;

/** One plot of a truck, linked to the pose. Nothing where the truck has no such curve. */
export const PlotTile = memo(function PlotTile({
  id,
  truck,
  others,
  scale,
  format,
  isLow = false,
}: PlotTileProps) {
  const tile = useRef<HTMLDivElement>(null);
  const isSeen = useIsSeen(tile);
  // A drag comes first: a plot follows when there is time, and not at all where nobody sees it.
  const isPrinting = usePrinting();
  const follows = isSeen || isPrinting;
  const travelNow = useWorkbench((s) => (follows ? s.travel : 0));
  const steerNow = useWorkbench((s) => (follows ? s.steer : 0));
  const roll = useStage((s) => s.roll);
  const [travelLater, steerLater] = [useDeferredValue(travelNow), useDeferredValue(steerNow)];
  const [travel, steer] = isPrinting ? [travelNow, steerNow] : [travelLater, steerLater];
  const setPose = useWorkbench((s) => s.setPose);
  const cutAt = CUT_AT[id as keyof typeof CUT_AT];
  const [cutTravel, cutSteer] = [cutAt === "travel" ? travel : 0, cutAt === "steer" ? steer : 0];
  const spec = useMemo(
    () => plotSpec(id, { truck, others, scale, travel: cutTravel, steer: cutSteer }),
    [id, truck, others, scale, cutTravel, cutSteer],
  );
  if (spec === null) return null;
  const { fromInput = same, toInput = same } = spec.x;
  const over = plotOver(spec);
  const input = { travel, steer, roll }[over];
  return (
    <div ref={tile} className="plot-tile">
      <Plot
        spec={spec}
        at={fromInput(input)}
        format={format}
        isLow={isLow}
        onGo={(x) => {
          if (over === "roll") setStage({ roll: x });
          else if (over === "steer") setPose(travel, toInput(x));
          else setPose(x, steer);
        }}
      />
    </div>
  );
});

const same = (x: number) => x;
