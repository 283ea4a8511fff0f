import type { Side } from "../../suspension/frontEnd.ts";
import {
  type FrontViewPlace,
  instantCenter,
  type RollCenter,
  rollCenter,
} from "../../suspension/rollCenter.ts";
import { type SidePose, solvePose } from "../../suspension/solvePose.ts";
import { wheelMotion } from "../../suspension/wheelMotion.ts";
import type { Model } from "../model/model.ts";
import { evenly } from "../numeric/evenly.ts";
import { type Ackermann, ackermannAt } from "./ackermannAt.ts";
import { type BumpSteer, bumpSteer, type TravelRange } from "./bumpSteer.ts";
import { type FlatTieRod, flatTieRod } from "./flatTieRod.ts";
import { type Jacking, jackingAt, type SteeringRatio, steeringRatio } from "./steeringRatio.ts";
import { type TurningCircle, turningCircle } from "./turningCircle.ts";

/** One wheel at one travel, steering straight ahead; mm and radians, vehicle axes. */
export interface TravelSide {
  readonly camber: number;
  /** rad per mm of travel. */
  readonly camberGain: number;
  readonly toe: number;
  /** rad per mm of travel. */
  readonly toeGain: number;
  /** null = at infinity. */
  readonly instantCenter: FrontViewPlace | null;
  /** Level distance from contact patch to instant center, + = the center lies inboard; null = at infinity. */
  readonly swingArm: number | null;
  readonly scrubRadius: number;
  readonly mechanicalTrail: number;
}

/** A height, steering straight ahead. null = out of reach, or no such point there. */
export interface TravelRow {
  readonly travel: number;
  readonly rollCenter: RollCenter | null;
  readonly left: TravelSide | null;
  readonly right: TravelSide | null;
}

/** One wheel at one steer, travel 0. */
export type SteerSide = Pick<SidePose, "steerAngle" | "camber" | "scrubRadius" | "mechanicalTrail">;

/** A steering input at travel 0. null = out of reach, or the study has no answer there. */
export interface SteerRow {
  readonly steer: number;
  readonly left: SteerSide | null;
  readonly right: SteerSide | null;
  readonly ackermann: Ackermann | null;
  readonly ratio: SteeringRatio | null;
  readonly jacking: Jacking | null;
}

/** Steering and suspension geometry of a truck. */
export interface GeometryReport {
  /** From full droop to full bump, as far as both wheels follow. */
  readonly byTravel: readonly TravelRow[];
  /** From full right to full left lock. */
  readonly bySteer: readonly SteerRow[];
  readonly range: TravelRange;
  readonly bumpSteer: Readonly<Record<Side, BumpSteer | null>>;
  readonly flatInner: FlatTieRod | null;
  readonly flatOuter: FlatTieRod | null;
  /** At travel 0; null without a wheelbase or out of reach. */
  readonly turning: Readonly<Record<Side, TurningCircle | null>>;
}

/** Everything of this room for one truck, in tables of `rows` (whole, at least 2). @throws RangeError for others. */
export function geometryReport(model: Model, rows: number): GeometryReport {
  if (!(Number.isInteger(rows) && rows >= 2)) {
    throw new RangeError(`geometryReport: rows must be a whole number of at least 2, got ${rows}`);
  }
  const { frontEnd } = model;
  const range = followedRange(model);
  return {
    byTravel: [...evenly(range.droop, range.bump, rows)].map((travel) => travelRow(model, travel)),
    bySteer: [...evenly(-1, 1, rows)].map((steer) => steerRow(model, steer)),
    range,
    bumpSteer: { left: bumpSteer(frontEnd, "left", range), right: bumpSteer(frontEnd, "right", range) },
    flatInner: flatTieRod(frontEnd, "inner", range),
    flatOuter: flatTieRod(frontEnd, "outer", range),
    turning: { left: turningCircle(model, "left", 0), right: turningCircle(model, "right", 0) },
  };
}

/** The setup's travel, as far as both wheels follow it straight ahead. */
export function followedRange({ setup, frontEnd: { left, right } }: Model): TravelRange {
  const { droop, bump } = setup.travel;
  return {
    droop: Math.max(droop, left.reach.droop.travel, right.reach.droop.travel),
    bump: Math.min(bump, left.reach.bump.travel, right.reach.bump.travel),
  };
}

/** One height, mm of travel. */
export function travelRow({ frontEnd }: Model, travel: number): TravelRow {
  const pose = solvePose(frontEnd, travel, 0);
  const side = (name: Side): TravelSide | null => {
    const motion = wheelMotion(frontEnd, name, travel, 0);
    if (motion === null || !pose.ok) return null;
    const { camber, toe, scrubRadius, mechanicalTrail } = pose[name];
    const center = instantCenter(motion);
    return {
      camber,
      camberGain: motion.camberGain,
      toe,
      toeGain: motion.toeGain,
      instantCenter: center && { y: name === "left" ? center.y : -center.y, z: center.z },
      swingArm: center && motion.contactPatch[1] - center.y,
      scrubRadius,
      mechanicalTrail,
    };
  };
  const center = rollCenter(frontEnd, { left: travel, right: travel }, 0);
  return { travel, rollCenter: center, left: side("left"), right: side("right") };
}

function steerRow(model: Model, steer: number): SteerRow {
  const { frontEnd } = model;
  const pose = solvePose(frontEnd, 0, steer);
  return {
    steer,
    left: pose.ok ? steerSide(pose.left) : null,
    right: pose.ok ? steerSide(pose.right) : null,
    ackermann: ackermannAt(model, 0, steer),
    ratio: steeringRatio(frontEnd, 0, steer),
    jacking: jackingAt(frontEnd, 0, steer),
  };
}

function steerSide({ steerAngle, camber, scrubRadius, mechanicalTrail }: SidePose): SteerSide {
  return { steerAngle, camber, scrubRadius, mechanicalTrail };
}
