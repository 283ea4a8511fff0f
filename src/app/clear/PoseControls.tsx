import "./poseControls.css";
import type { Truck } from "../state/truck.ts";
import { StanceButtons } from "./StanceButtons.tsx";
import { SteerControl } from "./SteerControl.tsx";
import { TravelControl } from "./TravelControl.tsx";

export type PoseControlsProps = {
  truck: Truck;
};

/** Puts the truck at a height and turns its wheels. */
export function PoseControls({ truck }: PoseControlsProps) {
  return (
    <section className="pose-controls" aria-label="Height and steering">
      <StanceButtons truck={truck} />
      <TravelControl setup={truck.setup} />
      <SteerControl />
    </section>
  );
}
