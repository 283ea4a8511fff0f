import { dot, length, mirrorY, normalize, sub, type Vec3 } from "../geometry/vec.ts";
import { circleOf, type Linkage, leastTurn, linkAt, type Turn } from "./centerLink.ts";
import type { SteeringInput } from "./inputs.ts";
import { type LinkPlace, LinkReach, linkReachTo } from "./linkReach.ts";
import { linkSpreadTo } from "./linkSpread.ts";
import type { InnerEndSpread } from "./motionBound.ts";
import { PoseStatus } from "./poseStatus.ts";

/**
 * Where the inner tie rod ends go as the driver steers. Each side's end is given in that side's
 * left-hand frame (the right one mirrored), so that both can be fed to the same pose kernel.
 */
export interface Steering {
  readonly type: "rack" | "pitman";
  /** Inner ends at rest, left-hand frame of each side. */
  readonly restLeft: Vec3;
  readonly restRight: Vec3;
  /** +1 when a left turn moves the inner ends toward +Y (steering arm ahead of the axis), else −1. */
  readonly sense: 1 | -1;
  /** What carries the inner ends of a pitman arm; null = a rack. */
  readonly carried: CarriedEnds | null;
  /**
   * Fills `out[0..2]` with the left inner end and `out[3..5]` with the right one (mirrored), and
   * `out[6..8]`, `out[9..11]` with their change per unit of `steer`. @param steer −1 … +1, + = left turn.
   */
  readonly innerEndsTo: (out: Float64Array, steer: number) => PoseStatus;
  /**
   * Bounds how fast an inner end can go within `half` of `steer`, and how far its velocity can be from the
   * one there. Proven, for both sides. @returns false when nothing is proven: halve the range.
   */
  readonly innerEndSpreadTo: (out: InnerEndSpread, steer: number, half: number) => boolean;
  /** Bounds where both inner ends can be within `half` of `steer`, at the end of the idler's reach too. Proven. */
  readonly innerEndsNearTo: (out: InnerEndsNear, steer: number, half: number) => LinkReach;
}

/** A center link, its line at rest (unit, from the pitman end to the idler's), and what it carries from its pitman end. */
export interface CarriedEnds {
  readonly linkage: Linkage;
  readonly restLine: Vec3;
  /** To the left inner end and to the right one, at rest. */
  readonly arms: Readonly<Record<"left" | "right", Vec3>>;
}

/** Where the inner ends can be over a range of steer. */
export interface InnerEndsNear {
  /** The left one and the right one, as `innerEndsTo` has them, in the middle of where they can be. */
  readonly at: Float64Array;
  /** How far either can be from there, mm. */
  off: number;
}

export function innerEndsNear(): InnerEndsNear {
  return { at: new Float64Array(6), off: 0 };
}

/** Numbers that `innerEndsTo` fills. */
export const INNER_ENDS_ROW = 12;

/**
 * Makes the steering of a truck. @param armAhead whether the knuckle's steering arm is ahead of the
 * steering axis (x > 0 in the knuckle frame): it decides which way the inner ends go in a left turn.
 * @returns null when the pitman arm's end cannot move sideways (its first motion has no Y), or the
 * idler stands in line with the center link.
 */
export function steeringOf(input: SteeringInput, armAhead: boolean): Steering | null {
  const sense = armAhead ? 1 : -1;
  return input.type === "rack" ? rackOf(input, sense) : pitmanOf(input, sense);
}

function rackOf(input: Extract<SteeringInput, { type: "rack" }>, sense: 1 | -1): Steering {
  const [x, y, z] = input.innerEnd;
  const perSteer = sense * input.stroke;
  return {
    type: "rack",
    carried: null,
    restLeft: input.innerEnd,
    restRight: input.innerEnd,
    sense,
    innerEndsTo(out, steer) {
      out[0] = x;
      out[1] = y + perSteer * steer;
      out[2] = z;
      // The right end moves the same way on the truck, so the other way in its mirrored frame.
      out[3] = x;
      out[4] = y - perSteer * steer;
      out[5] = z;
      out.fill(0, 6, INNER_ENDS_ROW);
      out[7] = perSteer;
      out[10] = -perSteer;
      return PoseStatus.Ok;
    },
    innerEndSpreadTo(out) {
      out.speedMost = input.stroke;
      out.velocityOff = 0;
      return true;
    },
    innerEndsNearTo(out, steer, half) {
      out.at.set([x, y + perSteer * steer, z, x, y - perSteer * steer, z]);
      out.off = input.stroke * half;
      return LinkReach.Bounded;
    },
  };
}

/** Below this share of the arm's length the first sideways motion is taken as none. */
const LEAST_SIDEWAYS_SHARE = 1e-6;

// Leaf scratch.
const ends = new Float64Array(INNER_ENDS_ROW);
const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
const place: LinkPlace = { end: [0, 0, 0], turned: (v) => v, off: 0 };

function pitmanOf(input: Extract<SteeringInput, { type: "pitman" }>, sense: 1 | -1): Steering | null {
  const pitman = circleOf(input.pitman);
  const idler = circleOf(input.idler);
  const sideways = pitman.quarter[1];
  if (!(Math.abs(sideways) > LEAST_SIDEWAYS_SHARE * length(pitman.quarter))) return null;
  const swing = Math.sign(sideways) * sense * input.swing;
  const link = sub(input.idler.end, input.pitman.end);
  const linkLengthSq = dot(link, link);
  const restLine = normalize(link);
  const radiusSq = dot(idler.radial, idler.radial);
  const atRest = dot(idler.quarter, sub(input.pitman.end, idler.foot));
  if (!(Math.abs(atRest) > LEAST_SIDEWAYS_SHARE * Math.sqrt(linkLengthSq * radiusSq))) return null;
  // Branch of the measured linkage, as for the upper arm in `poseRowTo`.
  const root = -Math.sign(atRest);
  const leftArm = sub(input.innerEnd, input.pitman.end);
  const rightArm = sub(input.innerEndRight, input.pitman.end);
  const linkage: Linkage = { pitman, idler, swing, root, linkLength: Math.sqrt(linkLengthSq) };
  const reach = Math.max(length(leftArm), length(rightArm));

  return rememberSteers({
    type: "pitman",
    carried: { linkage, restLine, arms: { left: leftArm, right: rightArm } },
    restLeft: input.innerEnd,
    restRight: mirrorY(input.innerEndRight),
    sense,
    innerEndsTo(out, steer) {
      const link = linkAt(linkage, steer);
      const turn = link === null ? null : leastTurn(restLine, link.line, link.lineRate);
      if (link === null || turn === null) return PoseStatus.IdlerOutOfReach;
      const { end, endRate } = link;
      fill(out, 0, end, endRate, turn, leftArm, 1);
      fill(out, 3, end, endRate, turn, rightArm, -1);
      return PoseStatus.Ok;
    },
    innerEndSpreadTo(out, steer, half) {
      return linkSpreadTo(out, linkage, steer, half, restLine, reach);
    },
    innerEndsNearTo(out, steer, half) {
      if (this.innerEndsTo(ends, steer) === PoseStatus.Ok && this.innerEndSpreadTo(spread, steer, half)) {
        for (let i = 0; i < 6; i++) out.at[i] = ends[i]!;
        out.off = spread.speedMost * half;
        return LinkReach.Bounded;
      }
      const found = linkReachTo(place, linkage, steer, half, restLine, reach);
      if (found !== LinkReach.Bounded) return found;
      out.off = place.off;
      const left = place.turned(leftArm);
      const right = place.turned(rightArm);
      for (let i = 0; i < 3; i++) {
        out.at[i] = place.end[i]! + left[i]!;
        out.at[3 + i] = (i === 1 ? -1 : 1) * (place.end[i]! + right[i]!);
      }
      return found;
    },
  });
}

function fill(
  out: Float64Array,
  at: number,
  end: Vec3,
  rate: Vec3,
  turn: Turn,
  arm: Vec3,
  ySign: 1 | -1,
): void {
  const turned = turn(arm);
  for (let i = 0; i < 3; i++) {
    const sign = i === 1 ? ySign : 1;
    out[at + i] = sign * (end[i]! + turned.at[i]!);
    out[at + 6 + i] = sign * (rate[i]! + turned.rate[i]!);
  }
}

/** Steers kept; then all are forgotten. Searches halve ranges, so they come back to the same ones. */
const MOST_KEPT = 4096;

interface Ends {
  readonly row: Float64Array;
  readonly status: PoseStatus;
}

interface Spread extends InnerEndSpread {
  readonly half: number;
  readonly proven: boolean;
}

/** The same steering, which answers from memory where it was asked before: for one that is dear to solve. */
function rememberSteers(steering: Steering): Steering {
  const ends = new Map<number, Ends>();
  const spreads = new Map<number, Spread>();
  const keep = <T>(known: Map<number, T>, steer: number, value: T): T => {
    if (known.size >= MOST_KEPT) known.clear();
    known.set(steer, value);
    return value;
  };
  const solveEnds = (steer: number): Ends => {
    const row = new Float64Array(INNER_ENDS_ROW);
    return keep(ends, steer, { row, status: steering.innerEndsTo(row, steer) });
  };
  const proveSpread = (steer: number, half: number): Spread => {
    const found: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
    const proven = steering.innerEndSpreadTo(found, steer, half);
    return keep(spreads, steer, { ...found, half, proven });
  };
  return {
    ...steering,
    innerEndsTo(out, steer) {
      const { row, status } = ends.get(steer) ?? solveEnds(steer);
      for (let i = 0; i < INNER_ENDS_ROW; i++) out[i] = row[i]!;
      return status;
    },
    innerEndSpreadTo(out, steer, half) {
      const known = spreads.get(steer);
      const { speedMost, velocityOff, proven } = known?.half === half ? known : proveSpread(steer, half);
      out.speedMost = speedMost;
      out.velocityOff = velocityOff;
      return proven;
    },
  };
}
