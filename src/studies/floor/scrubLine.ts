import { rimFlangeRadius } from "../../gaps/tire/rimFlange.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { loadedRadii } from "../stances/floorPlane.ts";
import type { FloorClearance, FloorPose, StandingTruck } from "../stances/floorPose.ts";
import { floorOn } from "./floorAt.ts";

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
