import type { Vec3 } from "../../geometry/vec.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { type CellMotion, carriedPointPathTo } from "../model/carried.ts";
import type { CarriedByArm } from "../model/carriedByArm.ts";
import { lowerMountTo, type SpringOrShock } from "../model/springOrShock.ts";
import type { FrontEndLimit, LimitPlace } from "./frontEndLimit.ts";

// Leaf scratch.
const mount = new Float64Array(3);

/**
 * The two limits of a spring's or shock's length; null = that end is not checked. `range` is the stroke, or the limit
 * itself where there is but one.
 */
export function lengthLimits(
  springOrShock: SpringOrShock,
  names: { readonly least: string; readonly most: string },
  least: number | null,
  most: number | null,
): FrontEndLimit[] {
  const limits: FrontEndLimit[] = [];
  const range = least !== null && most !== null ? most - least : (least ?? most ?? 1);
  const spreadTo: FrontEndLimit["spreadTo"] = (out, place, cell) =>
    lengthSpreadTo(out, springOrShock, place, cell);
  const base: Pick<FrontEndLimit, "measure" | "range" | "spreadTo" | "isOfTravel"> = {
    measure: "length",
    range,
    spreadTo,
    // No part of a lower arm moves with the steering.
    ...(springOrShock.lower.on === "lowerArm" ? { isOfTravel: true } : {}),
  };
  if (least !== null)
    limits.push({ ...base, name: names.least, margin: (place) => lengthAt(springOrShock, place) - least });
  if (most !== null)
    limits.push({ ...base, name: names.most, margin: (place) => most - lengthAt(springOrShock, place) });
  return limits;
}

/** Its length, and `mount` filled. */
function lengthAt(springOrShock: SpringOrShock, { pose, poseAt }: LimitPlace): number {
  lowerMountTo(mount, springOrShock, pose, poseAt);
  const { bodyMount } = springOrShock;
  const x = mount[0]! - bodyMount[0];
  const y = mount[1]! - bodyMount[1];
  const z = mount[2]! - bodyMount[2];
  return Math.sqrt(x * x + y * y + z * z);
}

/**
 * How much the length can change within the cell, `out` as `spreadTo`: on the knuckle by its lower mount's path. No part of
 * a lower arm moves with the steering, and its mount runs on a circle: û·v, by which the length changes, itself changes by
 * no more than the circle's bend and the turn of the line between the mounts.
 */
function lengthSpreadTo(
  out: Float64Array,
  springOrShock: SpringOrShock,
  place: LimitPlace,
  cell: CellMotion,
): void {
  const length = lengthAt(springOrShock, place);
  const { bodyMount, lower } = springOrShock;
  if (lower.on === "knuckle") {
    carriedPointPathTo(out, place.side, place.pose, place.poseAt, cell, mount, false);
    return;
  }
  const path = lower.radius * cell.armHalf;
  const least = length - path;
  out[0] = path;
  out[1] = 0;
  if (cell.armHalf === 0 || !(least > 0)) return;
  const closing = Math.abs(closingOnArm(place.side, lower.carried, bodyMount, cell)) / length;
  out[0] = Math.min(path, cell.armHalf * (closing + path + (lower.radius * path) / least));
}

/** (mount − body)·v, v the mount's motion per radian of arm. */
function closingOnArm(side: Float64Array, carried: CarriedByArm, body: Vec3, cell: CellMotion): number {
  const { cosArm: cos, sinArm: sin } = cell;
  let size = 0;
  for (let i = 0; i < 3; i++) size += side[SIDE.lowerRadial + i]! ** 2;
  size = Math.sqrt(size);
  const radial = (-carried.radial * sin - carried.quarter * cos) / size;
  const quarter = (carried.radial * cos - carried.quarter * sin) / size;
  let sum = 0;
  for (let i = 0; i < 3; i++) {
    const v = radial * side[SIDE.lowerRadial + i]! + quarter * side[SIDE.lowerQuarter + i]!;
    sum += (mount[i]! - body[i]!) * v;
  }
  return sum;
}
