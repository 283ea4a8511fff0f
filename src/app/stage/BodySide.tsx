import type { Side } from "../../suspension/frontEnd.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { BodyPartView } from "./BodyPartView.tsx";
import { MirroredSide } from "./MirroredSide.tsx";
import { standsAsTyped } from "./partPoints.ts";

export type BodySideProps = {
  truck: Truck;
  side: Side;
};

/** The body parts that stand on one side, but for those that are hidden. */
export function BodySide({ truck, side }: BodySideProps) {
  const hidden = useWorkbench((s) => s.hiddenParts);
  return truck.setup.truck.body
    .filter((part) => (part.side === "both" || part.side === side) && !hidden.includes(part.name))
    .map((part) => (
      <MirroredSide key={part.name} side={standsAsTyped(part) ? "left" : side}>
        <BodyPartView truck={truck} part={part} side={side} />
      </MirroredSide>
    ));
}
