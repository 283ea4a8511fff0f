import "./buildRooms.css";
import { useDeferredValue } from "react";
import { JumpBar } from "../parts/JumpBar.tsx";
import type { Truck } from "../state/truck.ts";
import { AsBuiltPanel } from "./asBuilt/AsBuiltPanel.tsx";
import { DrawingsPanel } from "./drawings/DrawingsPanel.tsx";
import { JigPanel } from "./jig/JigPanel.tsx";
import { KnucklePanel } from "./KnucklePanel.tsx";
import { LoadsPanel } from "./loads/LoadsPanel.tsx";
import { OrderPanel } from "./order/OrderPanel.tsx";
import { WindowPanel } from "./WindowPanel.tsx";
import { WeightsPanel } from "./weights/WeightsPanel.tsx";

/** What stands beside the knuckle drawn alone: its numbers, then a fold for each step from the order to the part checked. */
export function BuildRooms({ truck }: { truck: Truck }) {
  // Typing and dragging make a truck an event; sheets follow when there is time.
  const later = useDeferredValue(truck);
  return (
    <div className="build-rooms">
      <JumpBar
        places={[
          ["Numbers", "#knuckle-title"],
          ["Order", "[data-fold='order'] > summary"],
          ["Window", "[data-fold='window'] > summary"],
          ["Loads", "[data-fold='loads'] > summary"],
          ["Weight", "[data-fold='weights'] > summary"],
          ["Drawings", "[data-fold='drawings'] > summary"],
          ["Jig sheet", "[data-fold='jig'] > summary"],
          ["As built", "[data-fold='asBuilt'] > summary"],
        ]}
      />
      <KnucklePanel truck={truck} />
      <OrderPanel truck={truck} />
      <WindowPanel truck={later} />
      <LoadsPanel truck={later} />
      <WeightsPanel />
      <DrawingsPanel truck={later} />
      <JigPanel truck={later} />
      <AsBuiltPanel truck={later} />
    </div>
  );
}
