import { POSE } from "../../suspension/poseRow.ts";
import { carriedPathTo } from "../model/carried.ts";
import type { FrontEndLimit } from "./frontEndLimit.ts";

// Leaf scratch.
const axis = new Float64Array(3);

/** The bump stop, met at a travel, mm. @param from the other end of travel, for its range. */
export function bumpStopLimit(travel: number, from: number): FrontEndLimit {
  return {
    name: "bump stop",
    measure: "length",
    range: rangeOf(travel - from),
    margin: (place) => travel - place.travel,
    isOfTravel: true,
    // Travel rises with the arm all through its reach, so the end of the cell is its highest.
    spreadTo: (out, place, { travelHigh }) => {
      aboveTo(out, place.travel, travelHigh);
    },
    riseTo: (out, place, { travelLow }) => {
      belowTo(out, place.travel, travelLow);
    },
  };
}

/** The droop strap, tight at a travel, mm. @param to the other end of travel, for its range. */
export function droopStrapLimit(travel: number, to: number): FrontEndLimit {
  return {
    name: "droop strap",
    measure: "length",
    range: rangeOf(to - travel),
    margin: (place) => place.travel - travel,
    isOfTravel: true,
    spreadTo: (out, place, { travelLow }) => {
      belowTo(out, place.travel, travelLow);
    },
    riseTo: (out, place, { travelHigh }) => {
      aboveTo(out, place.travel, travelHigh);
    },
  };
}

/** The steering stop, met by a wheel at a steer angle either way, radians. */
export function steeringStopLimit(angle: number): FrontEndLimit {
  return {
    name: "steering stop",
    measure: "angle",
    range: angle,
    margin: ({ pose, poseAt }) =>
      angle - Math.abs(Math.atan2(-pose[poseAt + POSE.wheelAxis]!, pose[poseAt + POSE.wheelAxis + 1]!)),
    // The angle is that of the wheel axis seen from above, where it is shorter by its lean.
    spreadTo: (out, { pose, poseAt }, cell) => {
      for (let i = 0; i < 3; i++) axis[i] = pose[poseAt + POSE.wheelAxis + i]!;
      carriedPathTo(out, cell, axis);
      const level = Math.sqrt(axis[0]! ** 2 + axis[1]! ** 2) - out[0]! - out[1]!;
      const per = level > 0 ? 1 / level : Number.POSITIVE_INFINITY;
      out[0] = out[0]! > 0 ? out[0]! * per : 0;
      out[1] = out[1]! > 0 ? out[1]! * per : 0;
    },
  };
}

/** What the rack (mm) or pitman arm (radians) itself can do each way. @param full what full lock asks for. */
export function strokeLimit(type: "rack" | "pitman", most: number, full: number): FrontEndLimit {
  return {
    name: type === "rack" ? "rack stroke" : "pitman arm swing",
    measure: type === "rack" ? "length" : "angle",
    range: most,
    margin: ({ steer }) => most - full * Math.abs(steer),
    spreadTo: (out, _place, { steerHalf }) => {
      out[0] = 0;
      out[1] = full * steerHalf;
    },
  };
}

function aboveTo(out: Float64Array, travel: number, high: number): void {
  out[0] = Number.isNaN(high) ? Number.POSITIVE_INFINITY : Math.max(0, high - travel);
  out[1] = 0;
}

function belowTo(out: Float64Array, travel: number, low: number): void {
  out[0] = Number.isNaN(low) ? Number.POSITIVE_INFINITY : Math.max(0, travel - low);
  out[1] = 0;
}

/** A stop outside the range of travel still needs a range more than nothing. */
function rangeOf(length: number): number {
  return length > 1 ? length : 1;
}
