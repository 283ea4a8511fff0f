import { addScaled, cross, type Vec3 } from "../../geometry/vec.ts";
import type { PlateSetup } from "../../setup/types/buildTypes.ts";

/** The directions of a plate, of unit length, knuckle frame. */
export interface PlateAxes {
  readonly across: Vec3;
  readonly up: Vec3;
  /** across × up: the side that is seen on its drawing. */
  readonly normal: Vec3;
}

export function plateAxes({ across, up }: Pick<PlateSetup, "across" | "up">): PlateAxes {
  return { across, up, normal: cross(across, up) };
}

/** A place of a plate in the knuckle frame. @param off from its middle plane, + to the side that is seen */
export function onPlate(
  plate: Pick<PlateSetup, "at" | "across" | "up">,
  u: number,
  v: number,
  off: number,
): Vec3 {
  const { across, up, normal } = plateAxes(plate);
  return addScaled(addScaled(addScaled(plate.at, across, u), up, v), normal, off);
}
