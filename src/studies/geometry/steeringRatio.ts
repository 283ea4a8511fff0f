import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { wheelMotion } from "../../suspension/wheelMotion.ts";

/** How far the road wheels turn for what goes into the linkage, at one pose. */
export interface SteeringRatio {
  readonly type: "rack" | "pitman";
  /**
   * Steer angle of each wheel and their mean per input: rad per rad of the pitman arm (so degrees per degree), or rad per
   * mm of rack. The gearbox and the steering wheel are not in a setup: ISO 8855's overall steering ratio is the gear
   * ratio divided by `mean` of a pitman linkage.
   */
  readonly left: number;
  readonly right: number;
  readonly mean: number;
}

/** The steering's rates at a travel (mm) and steer. @returns null out of reach, or where a wheel stands at its border. */
export function steeringRatio(frontEnd: FrontEnd, travel: number, steer: number): SteeringRatio | null {
  const { steering } = frontEnd.input;
  const perSteer = steering.type === "rack" ? steering.stroke : steering.swing;
  const turn = (side: Side) => wheelMotion(frontEnd, side, travel, steer)?.turnPerSteer ?? null;
  const [leftOut, rightOut] = [turn("left"), turn("right")];
  if (leftOut === null || rightOut === null) return null;
  // A left wheel toes out in a left turn, a right one in a right turn.
  const left = leftOut / perSteer;
  const right = -rightOut / perSteer;
  return { type: steering.type, left, right, mean: 0.5 * (left + right) };
}
