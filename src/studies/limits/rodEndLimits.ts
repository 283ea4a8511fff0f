import { scale, sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import type { RodEndLimit } from "../../setup/types/limitsTypes.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { type CellMotion, carriedPathTo, carriedPointPathTo, knuckleDirectionTo } from "../model/carried.ts";
import type { FrontEndLimit, LimitPlace } from "./frontEndLimit.ts";

// Leaf scratch.
const stud = new Float64Array(3);
const rod = new Float64Array(3);
const outer = new Float64Array(3);
const path = new Float64Array(2);

const UPRIGHT: Vec3 = [0, 0, 1];

/** The outer tie rod end: its stud, carried by the knuckle, off square to the tie rod. The rod may roll about its length. */
export function outerTieRodEndLimit(limit: RodEndLimit): FrontEndLimit {
  const local = limit.stud ?? UPRIGHT;
  return {
    name: "outer tie rod end",
    measure: "angle",
    range: limit.misalignment,
    margin: (place) => {
      knuckleDirectionTo(stud, place.pose, place.poseAt, local);
      rodTo(place);
      return limit.misalignment - offSquare();
    },
    spreadTo: (out, place, cell) => {
      rodPathTo(out, place, cell);
      knuckleDirectionTo(stud, place.pose, place.poseAt, local);
      carriedPathTo(path, cell, stud);
      out[0] = out[0]! + path[0]!;
      out[1] = out[1]! + path[1]!;
    },
  };
}

/** The inner end of a rack's tie rod: the rod off the line of the joint's housing, which moves along with the rack. */
export function rackEndLimit(limit: RodEndLimit, rest: Float64Array): FrontEndLimit {
  const typed: Vec3 = limit.stud ?? [0, 1, 0];
  const atRest = sub(vecAt(rest, POSE.tieRodOuter), vecAt(rest, POSE.tieRodInner));
  // A line is meant: the way that is nearer the rod at rest.
  const line =
    typed[0] * atRest[0] + typed[1] * atRest[1] + typed[2] * atRest[2] < 0 ? scale(typed, -1) : typed;
  return {
    name: "inner tie rod end",
    measure: "angle",
    range: limit.misalignment,
    margin: (place) => {
      stud.set(line);
      rodTo(place);
      return limit.misalignment - Math.atan2(crossed(), dotted());
    },
    spreadTo: (out, place, cell) => rodPathTo(out, place, cell),
  };
}

/**
 * The inner tie rod end on a center link: its stud off square to the tie rod. The stud turns with the link, by the least
 * turn that takes the line of both inner ends at rest to their line now.
 * @param lineAtRest from this side's inner end to the other's, this side's frame.
 */
export function centerLinkEndLimit(limit: RodEndLimit, lineAtRest: Vec3): FrontEndLimit {
  const upright = limit.stud ?? UPRIGHT;
  const restSize = Math.sqrt(lineAtRest[0] ** 2 + lineAtRest[1] ** 2 + lineAtRest[2] ** 2);
  const rest = scale(lineAtRest, 1 / restSize);
  /** Fills `stud` with the stud turned; returns f·t of the turn. */
  const turnStud = ({ pose, poseAt, otherInner }: LimitPlace): number => {
    let cosine = 0;
    for (let i = 0; i < 3; i++) outer[i] = otherInner[i]! - pose[poseAt + POSE.tieRodInner + i]!;
    const size = Math.sqrt(outer[0]! ** 2 + outer[1]! ** 2 + outer[2]! ** 2);
    for (let i = 0; i < 3; i++) cosine += (rest[i]! * outer[i]!) / size;
    const wx = (rest[1] * outer[2]! - rest[2] * outer[1]!) / size;
    const wy = (rest[2] * outer[0]! - rest[0] * outer[2]!) / size;
    const wz = (rest[0] * outer[1]! - rest[1] * outer[0]!) / size;
    const [x, y, z] = upright;
    const share = (wx * x + wy * y + wz * z) / (1 + cosine);
    stud[0] = cosine * x + wy * z - wz * y + share * wx;
    stud[1] = cosine * y + wz * x - wx * z + share * wy;
    stud[2] = cosine * z + wx * y - wy * x + share * wz;
    return cosine;
  };
  return {
    name: "inner tie rod end",
    measure: "angle",
    range: limit.misalignment,
    margin: (place) => {
      turnStud(place);
      rodTo(place);
      return limit.misalignment - offSquare();
    },
    spreadTo: (out, place, cell) => {
      rodPathTo(out, place, cell);
      const cosine = turnStud(place);
      // The line turns by no more than both ends' paths over its length; the least turn's own speed is that over
      // cos(θ/2), at most twice it while the line is within 120° of where it was at rest.
      const turn = (2 * cell.innerSpread.speedMost * cell.steerHalf) / restSize;
      const within = Math.acos(Math.max(-1, Math.min(1, cosine))) + turn < (2 * Math.PI) / 3;
      if (cell.steerHalf > 0) out[1] = within ? out[1]! + 2 * turn : Number.POSITIVE_INFINITY;
    },
  };
}

/** Fills `rod` with the tie rod, inner to outer end. */
function rodTo({ pose, poseAt }: LimitPlace): void {
  for (let i = 0; i < 3; i++)
    rod[i] = pose[poseAt + POSE.tieRodOuter + i]! - pose[poseAt + POSE.tieRodInner + i]!;
}

/** Path of the tie rod's direction in the cell: the outer end's motion past the inner one's, over the rod's length. */
function rodPathTo(out: Float64Array, place: LimitPlace, cell: CellMotion): void {
  const { side, pose, poseAt } = place;
  for (let i = 0; i < 3; i++) outer[i] = pose[poseAt + POSE.tieRodOuter + i]!;
  carriedPointPathTo(out, side, pose, poseAt, cell, outer, true);
  // Amid a cell at the border of reach the rod's length is not kept: the angle is then that of a chord.
  const length = side[SIDE.tieRodLength]!;
  const isFar = cell.displaced && !(out[0]! + out[1]! < length);
  const per = (cell.displaced ? 0.5 * Math.PI : 1) / length;
  out[0] = isFar ? Number.POSITIVE_INFINITY : out[0]! * per;
  out[1] = out[1]! * per;
}

function offSquare(): number {
  return Math.abs(Math.atan2(dotted(), crossed()));
}

function dotted(): number {
  return stud[0]! * rod[0]! + stud[1]! * rod[1]! + stud[2]! * rod[2]!;
}

function crossed(): number {
  const x = stud[1]! * rod[2]! - stud[2]! * rod[1]!;
  const y = stud[2]! * rod[0]! - stud[0]! * rod[2]!;
  const z = stud[0]! * rod[1]! - stud[1]! * rod[0]!;
  return Math.sqrt(x * x + y * y + z * z);
}
