import type { Side } from "../../suspension/frontEnd.ts";
import type { Truck } from "../state/truck.ts";
import { ControlArm } from "./ControlArm.tsx";
import { Knuckle } from "./Knuckle.tsx";
import { MirroredSide } from "./MirroredSide.tsx";
import { TieRod } from "./Steering.tsx";
import { Wheel } from "./Wheel.tsx";

export type FrontEndSideProps = {
  truck: Truck;
  side: Side;
};

/** All that moves on one side. Drawn as a left side; the right one is its mirror image. */
export function FrontEndSide({ truck, side }: FrontEndSideProps) {
  return (
    <MirroredSide side={side}>
      <ControlArm truck={truck} side={side} which="upperArm" />
      <ControlArm truck={truck} side={side} which="lowerArm" />
      <Knuckle truck={truck} side={side} />
      <TieRod truck={truck} side={side} />
      <Wheel truck={truck} side={side} />
    </MirroredSide>
  );
}
