import { sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { carriedPointPathTo, knuckleDirectionTo } from "../model/carried.ts";
import { type CarriedByArm, carriedByArm, carriedByArmTo, LOWER_ARM } from "../model/carriedByArm.ts";
import type { CellMotion } from "../model/cellMotion.ts";
import type { FrontEndLimit, LimitPlace } from "./frontEndLimit.ts";

// Leaf scratch.
const mount = new Float64Array(3);

/** Something with a length between a point of the body and one that moves: a shock, an air spring. */
export interface Strut {
  readonly lengthAt: (place: LimitPlace) => number;
  readonly pathTo: (out: Float64Array, place: LimitPlace, cell: CellMotion) => void;
}

/** A strut on the lower arm. @param lower as measured, left-hand frame. */
export function strutOnArm(side: Float64Array, body: Vec3, lower: Vec3): Strut {
  const carried = carriedByArm(side, LOWER_ARM, sub(lower, vecAt(side, LOWER_ARM.foot)), null);
  const radius = Math.sqrt(carried.radial ** 2 + carried.quarter ** 2);
  return {
    lengthAt: (place) => {
      mountOnArmTo(place, carried);
      return distanceTo(body);
    },
    // No part of a lower arm moves with the steering. Its mount runs on a circle: û·v changes by no more than the
    // circle's bend and the turn of the strut.
    pathTo: (out, place, cell) => {
      mountOnArmTo(place, carried);
      const length = distanceTo(body);
      const path = radius * cell.armHalf;
      const closing = Math.abs(closingOnArm(side, carried, body, cell)) / length;
      const least = length - path;
      out[1] = 0;
      out[0] =
        cell.armHalf === 0
          ? 0
          : least > 0
            ? Math.min(path, cell.armHalf * (closing + path + (radius * path) / least))
            : path;
    },
  };
}

/** A strut on the knuckle. @param lower in the knuckle frame. */
export function strutOnKnuckle(body: Vec3, lower: Vec3): Strut {
  const mountTo = ({ pose, poseAt }: LimitPlace): void => {
    knuckleDirectionTo(mount, pose, poseAt, lower);
    for (let i = 0; i < 3; i++) mount[i] = mount[i]! + pose[poseAt + i]!;
  };
  return {
    lengthAt: (place) => {
      mountTo(place);
      return distanceTo(body);
    },
    pathTo: (out, place, cell) => {
      mountTo(place);
      carriedPointPathTo(out, place.side, place.pose, place.poseAt, cell, mount, false);
    },
  };
}

/** A strut's two limits; null = that end is not checked. `range` is the stroke, or the limit itself where there is but one. */
export function strutLimits(
  strut: Strut,
  names: { readonly least: string; readonly most: string },
  least: number | null,
  most: number | null,
): FrontEndLimit[] {
  const limits: FrontEndLimit[] = [];
  const range = least !== null && most !== null ? most - least : (least ?? most ?? 1);
  const base = { measure: "length", range, spreadTo: strut.pathTo } as const;
  if (least !== null)
    limits.push({ ...base, name: names.least, margin: (place) => strut.lengthAt(place) - least });
  if (most !== null)
    limits.push({ ...base, name: names.most, margin: (place) => most - strut.lengthAt(place) });
  return limits;
}

function mountOnArmTo({ side, pose, poseAt }: LimitPlace, carried: CarriedByArm): void {
  carriedByArmTo(mount, side, LOWER_ARM, carried, pose, poseAt);
  for (let i = 0; i < 3; i++) mount[i] = mount[i]! + side[SIDE.lowerFoot + i]!;
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

function distanceTo(body: Vec3): number {
  const x = mount[0]! - body[0];
  const y = mount[1]! - body[1];
  const z = mount[2]! - body[2];
  return Math.sqrt(x * x + y * y + z * z);
}
