import "./buildRooms.css";
import { useDeferredValue } from "react";
import { Fold } from "../parts/Fold.tsx";
import { JumpBar } from "../parts/JumpBar.tsx";
import { Late, LateBody } from "../parts/late.tsx";
import { FieldWindowView } from "../parts/window/FieldWindowView.tsx";
import type { Truck } from "../state/truck.ts";
import { AsBuiltPanel } from "./asBuilt/AsBuiltPanel.tsx";
import { BuildSteps } from "./BuildSteps.tsx";
import { DrawingsPanel } from "./drawings/DrawingsPanel.tsx";
import { JigPanel } from "./jig/JigPanel.tsx";
import { KnucklePanel } from "./KnucklePanel.tsx";
import { WeightsBody } from "./weights/WeightsBody.tsx";

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
      <BuildSteps truck={truck} />
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

/** How narrow and how wide the hub face may be on this truck, with its variants on the bar. */
function WindowPanel({ truck }: { truck: Truck }) {
  return (
    <Fold id="window" title="Window" note="how narrow and how wide the hub face may be">
      <FieldWindowView truck={truck} field="knuckle.hubFace" isPanel />
      <p className="fold-fine">
        The values at which every part keeps the gap asked for, with everything else on this truck unchanged.
        It says nothing about strength, or about whether a part is fit for the road.
      </p>
    </Fold>
  );
}

// Tables and strip are loaded where loads are asked for.
const LOADS = new LateBody(async () => (await import("./loads/LoadsBody.tsx")).LoadsBody);

/** Forces, shares of yield and weight, folded away until they are asked for. */
function LoadsPanel({ truck }: { truck: Truck }) {
  return (
    <Fold
      id="loads"
      title="Loads"
      // Without a pin there is nothing that a force is a share of the yield of.
      note={truck.setup.build?.pin ? "forces, shares of yield, no verdict" : "forces, no verdict"}
    >
      <Late of={LOADS} props={{ truck }} words="Setting up the loads…" />
    </Fold>
  );
}

// Form, catalogs and sheet are loaded where an order is asked for.
const ORDER = new LateBody(async () => (await import("./order/OrderBody.tsx")).OrderBody);

/** The order sheet, folded away until it is asked for. */
function OrderPanel({ truck }: { truck: Truck }) {
  const { order } = truck.bolted.setup;
  return (
    <Fold id="order" title="Order" note={order === null ? "none yet" : (order.number ?? "begun")}>
      <Late of={ORDER} props={{ truck }} words="Setting up the order…" />
    </Fold>
  );
}

/** What each variant's knuckle weighs, beside its picture. */
function WeightsPanel() {
  return (
    <Fold id="weights" title="Weight" note="each variant’s knuckle, drawn and weighed">
      <WeightsBody />
    </Fold>
  );
}
