import type { Truck } from "../state/truck.ts";
import { BESIDE } from "./drawStage.ts";
import { FrontEndSide } from "./FrontEndSide.tsx";
import { IsGhost } from "./otherTruck.ts";
import { SteeringLink } from "./Steering.tsx";

export type WipeProps = {
  /** The truck laid beside the one shown. */
  other: Truck;
};

/** The other truck's front end, drawn left of the wipe in place of the one shown. */
export function Wipe({ other }: WipeProps) {
  return (
    <IsGhost value={true}>
      <group name={BESIDE} visible={false}>
        <SteeringLink truck={other} />
        <FrontEndSide truck={other} side="left" />
        <FrontEndSide truck={other} side="right" />
      </group>
    </IsGhost>
  );
}
