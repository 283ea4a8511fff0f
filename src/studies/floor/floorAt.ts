import { rimFlangeRadius } from "../../gaps/tire/tireOutline.ts";
import { cross, dot, mirrorY, normalize, sub, type Vec3 } from "../../geometry/vec.ts";
import type { FloorSetup } from "../../setup/types/floorTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { rollCenter, type WheelTravels } from "../../suspension/rollCenter.ts";
import { solveApart } from "../../suspension/solvePose.ts";
import { floorPlane, heightOver, loadedRadii } from "../stances/floorPlane.ts";
import type { FloorClearance, FloorPlane, FloorPose, StandingTruck } from "../stances/floorPose.ts";

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
function floorOn(
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
    travels,
    steer,
    plane,
    ...attitude(plane),
    left: wheel("left"),
    right: wheel("right"),
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

/** Every named point that may drag, on each side it has: left side first, in the setup's order. Vehicle axes, mm. */
function floorPoints(floor: FloorSetup | null): Omit<FloorClearance, "clearance">[] {
  return (["left", "right"] as const).flatMap((side) =>
    (floor?.points ?? [])
      .filter((point) => point.side === "both" || point.side === side)
      .map(({ name, at }) => ({ name, side, at: onSide(at, side) })),
  );
}

/** A point given for the left side, on a side; one typed where it stands on the right (y < 0) stays there. */
function onSide(point: Vec3, side: Side): Vec3 {
  return side === "right" && point[1] > 0 ? mirrorY(point) : point;
}

/** The truck with one front tire flat, down on its rim. */
export interface ScrubLine {
  readonly flat: Side;
  /** On the flat side `contactPatch` is the rim flange's lowest place. */
  readonly floor: FloorPose;
  /** Named points at or below the line, the lowest first. */
  readonly dragging: readonly FloorClearance[];
}

/**
 * The scrub line at a stance: the wheels keep their place on the truck (mm of travel, straight ahead), the flat side
 * stands on its rim flange, the other on its loaded radius, and no part should hang to or below the line between
 * (common practice, no source; local codes rule). @returns null out of reach
 */
export function scrubLine(truck: StandingTruck, travel: number, flat: Side): ScrubLine | null {
  const rim = rimFlangeRadius(truck.setup.wheel.rimDiameter);
  const radii = { ...loadedRadii(truck.frontEnd), [flat]: rim };
  const floor = floorOn(truck, { left: travel, right: travel }, 0, radii);
  if (floor === null) return null;
  const dragging = floor.clearances
    .filter(({ clearance }) => clearance <= 0)
    .sort((a, b) => a.clearance - b.clearance);
  return { flat, floor, dragging };
}
