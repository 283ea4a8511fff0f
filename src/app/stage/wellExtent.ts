import type { Side } from "../../suspension/frontEnd.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import type { Extent } from "./extent.ts";

/** What the view from a wheel well must hold: one tire at any steering angle and height near the one measured, and its arch. */
export function wellExtent(truck: Truck, side: Side): Extent {
  const { freeRadius } = truck.model.tire;
  const pose = solvePose(truck.model.frontEnd, 0, 0);
  const [x, y, z] = pose.ok ? pose[side].wheelCenter : [0, side === "left" ? 750 : -750, freeRadius];
  const reach = 1.12 * freeRadius;
  const across = 0.45 * freeRadius;
  return { min: [x - reach, y - across, z - reach], max: [x + reach, y + across, z + 1.3 * freeRadius] };
}
