import type { Side } from "../../suspension/frontEnd.ts";
import type { Truck } from "../state/truck.ts";
import { BodyPartView } from "./BodyPartView.tsx";
import { MirroredSide } from "./MirroredSide.tsx";

export type BodySideProps = {
  truck: Truck;
  side: Side;
};

/** The body parts that stand on one side. */
export function BodySide({ truck, side }: BodySideProps) {
  return (
    <MirroredSide side={side}>
      {truck.setup.truck.body
        .filter((part) => part.side === "both" || part.side === side)
        .map((part) => (
          <BodyPartView key={part.name} truck={truck} part={part} side={side} />
        ))}
    </MirroredSide>
  );
}
