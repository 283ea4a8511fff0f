import { type Alignment, alignmentOf } from "../../suspension/alignment.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";

/** Caster as a shop reads it off turn plates. Radians. */
export interface CasterSweep {
  /** Camber with the wheel turned out, front away from the truck, less camber with it turned in. */
  readonly camberDifference: number;
  /** camberDifference / (2 sin 20°). */
  readonly reading: number;
  /** 1.5 × camberDifference: the rounded factor of many gauges. */
  readonly roundedReading: number;
  /** Of the steering axis, straight ahead. */
  readonly trueCaster: number;
  /** reading − trueCaster. */
  readonly error: number;
}

/** rad, to either side of straight ahead, as the turn plate shows it. */
const SWEEP_ANGLE = Math.PI / 9;

/** Factor of gauges made for ±20° (common practice, no source). */
const ROUNDED_FACTOR = 1.5;

/** Halvings of full lock: far below what a turn plate shows. */
const HALVINGS = 60;

/**
 * Sweeps one wheel 20° out and 20° in at a travel (mm), the arms held where they are, and reads caster off the camber
 * difference: Δγ / (2 sin 20°), the first order of camber against steer, γ ≈ γ₀ cos δ + σ (1 − cos δ) + τ sin δ (Dixon,
 * Suspension Geometry and Computation, 2009; the method: SAE Technical Paper 850219, 1985; both from memory). It reads
 * a little high, and more so with much kingpin inclination: 5° of caster with 10° of inclination read 5.02°.
 * @returns null when a lock stops the wheel short of 20°, or out of reach.
 */
export function casterSweep(frontEnd: FrontEnd, side: Side, travel: number): CasterSweep | null {
  const straight = turnedTo(frontEnd, side, travel, 0);
  if (straight === null) return null;
  // A wheel turned out has lost toe.
  const out = atToe(frontEnd, side, travel, straight.toe - SWEEP_ANGLE);
  const inward = atToe(frontEnd, side, travel, straight.toe + SWEEP_ANGLE);
  if (out === null || inward === null) return null;
  const camberDifference = out.camber - inward.camber;
  const reading = camberDifference / (2 * Math.sin(SWEEP_ANGLE));
  return {
    camberDifference,
    reading,
    roundedReading: ROUNDED_FACTOR * camberDifference,
    trueCaster: straight.caster,
    error: reading - straight.caster,
  };
}

/** The wheel steered, by bisection, until it stands at a toe. */
function atToe(frontEnd: FrontEnd, side: Side, travel: number, toe: number): Alignment | null {
  const straight = turnedTo(frontEnd, side, travel, 0);
  if (straight === null) return null;
  const toesIn = toe > straight.toe;
  // A left turn turns the left wheel out and the right wheel in.
  const lock = (side === "left") === toesIn ? -1 : 1;
  const isShort = (read: Alignment | null) => read !== null && (toesIn ? read.toe < toe : read.toe > toe);
  if (isShort(turnedTo(frontEnd, side, travel, lock))) return null;
  let [low, high] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (low + high);
    if (isShort(turnedTo(frontEnd, side, travel, lock * middle))) low = middle;
    else high = middle;
  }
  const read = turnedTo(frontEnd, side, travel, lock * low);
  // Where the linkage ran out of reach first, the wheel never stood there.
  return read !== null && Math.abs(read.toe - toe) < 1e-9 ? read : null;
}

function turnedTo(frontEnd: FrontEnd, side: Side, travel: number, steer: number): Alignment | null {
  const model = frontEnd[side];
  const ends = new Float64Array(INNER_ENDS_ROW);
  if (frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return null;
  const angle = armAngleFor(model, travel);
  if (!Number.isFinite(angle)) return null;
  const at = side === "left" ? 0 : 3;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const pose = new Float64Array(POSE_ROW);
  const status = poseRowTo(pose, 0, model.row, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!);
  return status === PoseStatus.Ok ? alignmentOf(pose, 0, side === "right") : null;
}
