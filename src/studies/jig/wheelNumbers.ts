import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { onTieRod } from "../alignment/straightAhead.ts";
import { type BumpSteer, bumpSteer, type TravelRange } from "../geometry/bumpSteer.ts";

/** One wheel at travel 0, straight ahead, its toe set as the setup says. mm and radians. */
export interface WheelNumbers {
  readonly camber: number;
  readonly caster: number;
  readonly kingpinInclination: number;
  readonly scrubRadius: number;
  /** Center plane to contact patch. */
  readonly halfTrack: number;
  readonly tieRod: number;
  /** null where the wheel cannot follow the whole travel. */
  readonly bumpSteer: BumpSteer | null;
}

/** @param range over which bump steer is told; @throws TypeError where the wheels do not stand */
export function wheelNumbers(frontEnd: FrontEnd, side: Side, range: TravelRange): WheelNumbers {
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) throw new TypeError("wheelNumbers: an assembled truck stands at rest");
  const { camber, caster, kingpinInclination, scrubRadius, contactPatch } = pose[side];
  return {
    camber,
    caster,
    kingpinInclination,
    scrubRadius,
    halfTrack: Math.abs(contactPatch[1]),
    tieRod: frontEnd[side].row[SIDE.tieRodLength]!,
    bumpSteer: bumpSteer(frontEnd, side, range),
  };
}

/** Toe of a wheel on a tie rod of a length, rad, + = in; null = out of its reach. */
export function toeOnRod(frontEnd: FrontEnd, side: Side, tieRod: number): number | null {
  return onTieRod(frontEnd, side, 0, tieRod)?.toe ?? null;
}
