import "./buildRooms.css";
import type { Truck } from "../state/truck.ts";
import { KnucklePanel } from "./KnucklePanel.tsx";
import { OrderPanel } from "./order/OrderPanel.tsx";

/** What stands beside the knuckle drawn alone: its numbers, then a fold for each step from the order to the part checked. */
export function BuildRooms({ truck }: { truck: Truck }) {
  return (
    <div className="build-rooms">
      <KnucklePanel truck={truck} />
      <OrderPanel truck={truck} />
    </div>
  );
}
