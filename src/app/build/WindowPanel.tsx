import { Fold } from "../parts/Fold.tsx";
import { FieldWindowView } from "../parts/window/FieldWindowView.tsx";
import type { Truck } from "../state/truck.ts";

/** How narrow and how wide the hub face may be on this truck, with its variants on the bar. */
export function WindowPanel({ truck }: { truck: Truck }) {
  return (
    <Fold id="window" title="Window" note="how narrow, how wide the hub face may be">
      <FieldWindowView truck={truck} variant={truck.setup.variant} field="knuckle.hubFace" isPanel />
      <p className="fold-fine">
        The values at which every part keeps the gap asked for, all else of this truck as it is. It says
        nothing of strength, and nothing of whether a part is fit for the road.
      </p>
    </Fold>
  );
}
