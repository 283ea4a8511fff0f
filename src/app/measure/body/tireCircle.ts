import { solvePose } from "../../../suspension/solvePose.ts";
import type { Truck } from "../../state/truck.ts";

/** The left tire seen from the side: its center in vehicle axes and its radius without load, mm. */
export interface TireCircle {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly radius: number;
}

/** The left tire at a height, steered straight ahead; where the linkage cannot go there, as the truck was measured. */
export function tireCircle(truck: Truck, travel = 0): TireCircle {
  const radius = truck.model.tire.freeRadius;
  const pose = solvePose(truck.model.frontEnd, travel, 0);
  if (!pose.ok)
    return travel === 0 ? { x: 0, y: 0, z: truck.model.tire.loadedRadius, radius } : tireCircle(truck);
  const [x, y, z] = pose.left.wheelCenter;
  return { x, y, z, radius };
}
