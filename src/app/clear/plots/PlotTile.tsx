import { memo, useCallback, useDeferredValue, useMemo, useRef } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { type PlotSpec, plotOver } from "../../parts/plotNumbers.ts";
import { useIsSeen } from "../../parts/useIsSeen.ts";
import { setStage, useStage } from "../../state/stageSettings.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import type { Laid } from "./laidOver.ts";
import { Plot } from "./Plot.tsx";
import type { SteerScale } from "./plotAxes.ts";
import { plotSpec } from "./plotSpecs.ts";
import { usePrinting } from "./usePrinting.ts";

export type PlotTileProps = {
  id: string;
  laid: Laid;
  /** What it is of as long as nobody sees it. Default `laid`. */
  rested?: Laid;
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
  laid,
  rested = laid,
  scale,
  format,
  isLow = false,
}: PlotTileProps) {
  const tile = useRef<HTMLDivElement>(null);
  const isSeen = useIsSeen(tile);
  // A drag comes first: a plot follows when there is time, and not at all where nobody sees it.
  const isPrinting = usePrinting();
  const follows = isSeen || isPrinting;
  const of = follows ? laid : rested;
  const travelNow = useWorkbench((s) => (follows ? s.travel : 0));
  const steerNow = useWorkbench((s) => (follows ? s.steer : 0));
  const roll = useStage((s) => s.roll);
  const [travelLater, steerLater] = [useDeferredValue(travelNow), useDeferredValue(steerNow)];
  const [travel, steer] = isPrinting ? [travelNow, steerNow] : [travelLater, steerLater];
  const cutAt = CUT_AT[id as keyof typeof CUT_AT];
  const [cutTravel, cutSteer] = [cutAt === "travel" ? travel : 0, cutAt === "steer" ? steer : 0];
  const spec = useMemo(
    () => plotSpec(id, { ...of, scale, travel: cutTravel, steer: cutSteer }),
    [id, of, scale, cutTravel, cutSteer],
  );
  const onGo = useCallback((x: number) => spec && goTo(spec, x), [spec]);
  if (spec === null) return null;
  const { fromInput = same } = spec.x;
  const over = plotOver(spec);
  const input = { travel, steer, roll }[over];
  return (
    <div ref={tile} className="plot-tile">
      <Plot spec={spec} at={fromInput(input)} format={format} isLow={isLow} isTiled={!isLow} onGo={onGo} />
    </div>
  );
});

const same = (x: number) => x;

/** Puts the pose to an x of a plot. */
function goTo(spec: PlotSpec, x: number): void {
  const { travel, steer, setPose } = workbench.getState();
  const over = plotOver(spec);
  if (over === "roll") setStage({ roll: x });
  else if (over === "steer") setPose(travel, (spec.x.toInput ?? same)(x));
  else setPose(x, steer);
}
