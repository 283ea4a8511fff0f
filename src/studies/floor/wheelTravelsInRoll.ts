import type { Side } from "../../suspension/frontEnd.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import type { WheelTravels } from "../../suspension/rollCenter.ts";
import { rootBetween } from "../numeric/rootsOver.ts";
import type { StandingTruck } from "../stances/floorPose.ts";
import { floorAt } from "./floorAt.ts";

/** The travels that roll the body so far, or how far it rolls before a wheel is out of reach. mm, radians. */
export type RollTravels =
  | { readonly ok: true; readonly travels: WheelTravels }
  | {
      readonly ok: false;
      /** The roll at which the first wheel is out of reach, and the travels there; null = the stance itself is. */
      readonly most: { readonly roll: number; readonly travels: WheelTravels } | null;
      readonly side: Side;
      readonly joint: string;
    };

/** mm. Rounding must not put a wheel past the border of its reach. */
const INSIDE_REACH = 1e-6;

/**
 * The travels of both wheels with the body rolled over the floor by `roll` (radians, + = left side up) at the same mean
 * travel as the stance, straight ahead: one wheel goes into bump by what the other goes into droop. Where the springs
 * let the body settle in a corner is not asked: the mean is held.
 */
export function wheelTravelsInRoll(truck: StandingTruck, stanceTravel: number, roll: number): RollTravels {
  const { left, right } = truck.frontEnd;
  const apart = (half: number): WheelTravels => ({ left: stanceTravel - half, right: stanceTravel + half });
  const rollAt = (half: number) => floorAt(truck, apart(half), 0)?.roll ?? Number.NaN;
  const level = rollAt(0);
  // The body's left side goes up as the left wheel goes down.
  const sign = roll >= level ? 1 : -1;
  const [rising, lowering] = sign > 0 ? ([left, right] as const) : ([right, left] as const);
  const toDroop = stanceTravel - rising.reach.droop.travel;
  const toBump = lowering.reach.bump.travel - stanceTravel;
  const [droops, bumps]: readonly Side[] = sign > 0 ? ["left", "right"] : ["right", "left"];
  const stop =
    toDroop < toBump
      ? { side: droops!, joint: jointOf(rising.reach.droop.status) }
      : { side: bumps!, joint: jointOf(lowering.reach.bump.status) };
  if (Number.isNaN(level)) return { ok: false, most: null, ...stop };
  const end = sign * Math.max(0, Math.min(toDroop, toBump) - INSIDE_REACH);
  const most = rollAt(end);
  if (Number.isNaN(most)) return { ok: false, most: null, ...stop };
  if (!(sign * (most - roll) >= 0)) return { ok: false, most: { roll: most, travels: apart(end) }, ...stop };
  return { ok: true, travels: apart(rootBetween((half) => rollAt(half) - roll, 0, end)) };
}
