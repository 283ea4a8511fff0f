import type { Side } from "../../suspension/frontEnd.ts";
import type { Truck } from "../state/truck.ts";
import { BodyPartView } from "./BodyPartView.tsx";
import { MirroredSide } from "./MirroredSide.tsx";
import { standsAsTyped } from "./partPoints.ts";

export type BodySideProps = {
  truck: Truck;
  side: Side;
};

/** The body parts that stand on one side. */
export function BodySide({ truck, side }: BodySideProps) {
  return truck.setup.truck.body
    .filter((part) => part.side === "both" || part.side === side)
    .map((part) => (
      <MirroredSide key={part.name} side={standsAsTyped(part) ? "left" : side}>
        <BodyPartView truck={truck} part={part} side={side} />
      </MirroredSide>
    ));
}
