import { cross, dot, normalize, sub, type Vec3 } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { rollCenter, type WheelTravels } from "../../suspension/rollCenter.ts";
import { solveApart } from "../../suspension/solvePose.ts";
import { floorPlane, heightOver, loadedRadii } from "../stances/floorPlane.ts";
import type { FloorPlane, FloorPose, StandingTruck } from "../stances/floorPose.ts";
import { floorPoints, onSide } from "./floorPoints.ts";

/**
 * The floor under a truck whose wheels stand at travels of their own (mm, + = bump), at a steer (−1 … +1, + = left):
 * how the body rolls and pitches over it, how the wheels lean on it, and what is how far above it. The body is held
 * still; both front tires touch the floor on their loaded radius; the rear is as the setup's `floor.rear` says (without
 * a `floor` block it follows). Tires and bushings are rigid, and the rear wheels are taken to roll with the floor.
 * @returns null where a wheel is out of reach (`solveApart` tells which).
 */
export function floorAt(truck: StandingTruck, travels: WheelTravels, steer: number): FloorPose | null {
  return floorOn(truck, travels, steer, loadedRadii(truck.frontEnd));
}

/** As `floorAt`, on radii of its own: wheel center to floor, mm. */
export function floorOn(
  { setup, frontEnd }: StandingTruck,
  travels: WheelTravels,
  steer: number,
  radii: Readonly<Record<Side, number>>,
): FloorPose | null {
  const pose = solveApart(frontEnd, travels, steer);
  const found = pose.ok ? floorPlane(pose, radii, setup) : null;
  if (!pose.ok || found === null) return null;
  const { plane, patches } = found;
  const wheel = (side: Side) => ({
    travel: travels[side],
    contactPatch: patches[side],
    camber: -Math.asin(dot(pose[side].wheelAxis, plane.normal)),
  });
  const both = (point: Vec3) => ({
    left: heightOver(plane, onSide(point, "left")),
    right: heightOver(plane, onSide(point, "right")),
  });
  const { lip = null, frame = null } = setup.floor ?? {};
  return {
    ...{ travels, steer, plane, ...attitude(plane), left: wheel("left"), right: wheel("right") },
    track: dot(sub(patches.left, patches.right), across(plane)),
    clearances: floorPoints(setup.floor).map((point) => ({
      ...point,
      clearance: heightOver(plane, point.at),
    })),
    lip: lip && both(lip),
    frame: frame && both(frame),
    rollCenter: rollCenter(frontEnd, travels, steer),
  };
}

/** Body roll and pitch over a floor, ISO 8855's order (yaw, pitch, roll): normal = (−sin θ, cos θ sin φ, cos θ cos φ). */
function attitude({ normal: [x, y, z] }: FloorPlane): { readonly roll: number; readonly pitch: number } {
  return { roll: Math.atan2(y, z) + 0, pitch: Math.asin(-x) + 0 }; // + 0 turns −0 into 0
}

/** Unit, to the left along the floor, square to the truck's own X. */
function across({ normal }: FloorPlane): Vec3 {
  return normalize(cross(normal, [1, 0, 0]));
}
