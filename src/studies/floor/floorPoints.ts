import { mirrorY, type Vec3 } from "../../geometry/vec.ts";
import type { FloorSetup } from "../../setup/types/floorTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { FloorClearance } from "../stances/floorPose.ts";

/** Every named point that may drag, on each side it has: left side first, in the setup's order. Vehicle axes, mm. */
export function floorPoints(floor: FloorSetup | null): Omit<FloorClearance, "clearance">[] {
  return (["left", "right"] as const).flatMap((side) =>
    (floor?.points ?? [])
      .filter((point) => point.side === "both" || point.side === side)
      .map(({ name, at }) => ({ name, side, at: onSide(at, side) })),
  );
}

/** A point given for the left side, on a side; one typed where it stands on the right (y < 0) stays there. */
export function onSide(point: Vec3, side: Side): Vec3 {
  return side === "right" && point[1] > 0 ? mirrorY(point) : point;
}
