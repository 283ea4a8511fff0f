import { useId } from "react";
import { setStage, useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useGhostTruck, variantLabel } from "./otherTruck.ts";

export type WipeStripProps = {
  truck: Truck;
};

/** Moves the wipe between the truck shown and the one laid beside it. */
export function WipeStrip({ truck }: WipeStripProps) {
  const id = useId();
  const wipe = useStage((s) => s.wipe);
  const other = useGhostTruck(truck);
  if (wipe === null || other === null) return null;
  return (
    <div className="stage-strip">
      <label htmlFor={id} className="sr-only">
        Wipe
      </label>
      <span>{variantLabel(other)}</span>
      <input
        id={id}
        type="range"
        min={0}
        max={1}
        step={0.01}
        value={wipe}
        aria-valuetext={`${Math.round(100 * wipe)}% ${variantLabel(other)}, the rest ${variantLabel(truck)}`}
        onChange={(event) => setStage({ wipe: Number(event.target.value) })}
      />
      <span>{variantLabel(truck)}</span>
    </div>
  );
}
