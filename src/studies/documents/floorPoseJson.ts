import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { FloorClearance, FloorPose, FloorWheel } from "../stances/floorPose.ts";
import { pointFromMm } from "./pointFromMm.ts";

/** A truck on its floor: vehicle axes, the file's units, degrees; `normal` is a unit vector, normal · p = `offset`. */
export function floorPoseJson(floor: FloorPose, units: LengthUnit) {
  const { plane, roll, pitch, track, clearances, lip, frame, rollCenter } = floor;
  const length = (mm: number) => unitsFromMm(mm, units);
  const sides = (both: FloorPose["lip"]) => both && { left: length(both.left), right: length(both.right) };
  return {
    normal: plane.normal,
    offset: length(plane.offset),
    roll: degFromRad(roll),
    pitch: degFromRad(pitch),
    track: length(track),
    left: wheelJson(floor.left, units),
    right: wheelJson(floor.right, units),
    lip: sides(lip),
    frame: sides(frame),
    rollCenter: rollCenter && {
      height: length(rollCenter.height),
      y: length(rollCenter.y),
      z: length(rollCenter.z),
    },
    clearances: clearances.map((one) => clearanceJson(one, units)),
  };
}

/** A point and its height over the floor. */
export function clearanceJson({ name, side, at, clearance }: FloorClearance, units: LengthUnit) {
  return { name, side, at: pointFromMm(at, units), clearance: unitsFromMm(clearance, units) };
}

function wheelJson({ travel, contactPatch, camber }: FloorWheel, units: LengthUnit) {
  return {
    travel: unitsFromMm(travel, units),
    contactPatch: pointFromMm(contactPatch, units),
    camber: degFromRad(camber),
  };
}
