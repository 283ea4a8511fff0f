import type { Vec3 } from "../../geometry/vec.ts";
import { assembleFrontEnd, type FrontEnd } from "../../suspension/frontEnd.ts";
import type { FrontEndInput } from "../../suspension/inputs.ts";
import { lowestBetween } from "../numeric/rootsOver.ts";
import { bumpSteer, type TravelRange } from "./bumpSteer.ts";

/** The end of the tie rod that is moved: on the truck, or on the knuckle's steering arm. */
export type TieRodEnd = "inner" | "outer";

/** The height of a tie rod end that flattens the bump steer curve, all else as it is. mm and radians. */
export interface FlatTieRod {
  readonly end: TieRodEnd;
  /** How far to move it: the inner end along vehicle Z, the outer one along the steering axis, + = up. */
  readonly move: number;
  /** Where it then is: vehicle Z of the (left) inner end, or z of the outer end in the knuckle frame. */
  readonly height: number;
  /** Root mean square toe change over the range before and after, both wheels, rad. */
  readonly rmsBefore: number;
  readonly rmsAfter: number;
  /** Largest toe change of either wheel that is left, rad, with its sign. */
  readonly mostAfter: number;
  /** The best place lies at the end of the range looked through: farther on it might be flatter yet. */
  readonly atEndOfSearch: boolean;
}

/** mm. Tie rod ends are moved by spacers and bent arms, never by more than this (common practice, no source). */
const SEARCH = 120;

/** mm. Finer than the curve of any truck bends; the best of these heights is then refined. */
const SCAN_STEP = 4;

/** mm. Well below what can be machined. */
const HEIGHT_TOLERANCE = 1e-5;

/**
 * Finds the height of one tie rod end, the other left alone, with the least root mean square toe change over the
 * range; the tie rod's length is set anew each time, so that the static toe stays. A scan and golden sections.
 * @returns null where the truck cannot follow the range as it is.
 */
export function flatTieRod(frontEnd: FrontEnd, end: TieRodEnd, range: TravelRange): FlatTieRod | null {
  const { input } = frontEnd;
  const before = toeChanges(input, range);
  if (before === null) return null;
  const meanSquare = (move: number) => {
    const changes = toeChanges(movedTieRod(input, end, move), range);
    return changes === null ? Number.POSITIVE_INFINITY : changes.meanSquare;
  };
  let best = 0;
  let least = before.meanSquare;
  for (let move = -SEARCH; move <= SEARCH; move += SCAN_STEP) {
    const value = meanSquare(move);
    if (value < least) [best, least] = [move, value];
  }
  const move = lowestBetween(meanSquare, best - SCAN_STEP, best + SCAN_STEP, HEIGHT_TOLERANCE);
  const after = toeChanges(movedTieRod(input, end, move), range);
  if (after === null) return null;
  return {
    end,
    move,
    height: heightOf(movedTieRod(input, end, move), end),
    rmsBefore: Math.sqrt(before.meanSquare),
    rmsAfter: Math.sqrt(after.meanSquare),
    mostAfter: after.most,
    atEndOfSearch: Math.abs(best) >= SEARCH - SCAN_STEP / 2,
  };
}

/** The truck with one end of both tie rods moved, left and right alike. @param move mm, + = up */
export function movedTieRod(input: FrontEndInput, end: TieRodEnd, move: number): FrontEndInput {
  const raised = ([x, y, z]: Vec3): Vec3 => [x, y, z + move];
  if (end === "outer") {
    return { ...input, knuckle: { ...input.knuckle, steeringArm: raised(input.knuckle.steeringArm) } };
  }
  const { steering } = input;
  const moved =
    steering.type === "rack"
      ? { ...steering, innerEnd: raised(steering.innerEnd) }
      : {
          ...steering,
          innerEnd: raised(steering.innerEnd),
          innerEndRight: raised(steering.innerEndRight),
        };
  return { ...input, steering: moved };
}

function heightOf(input: FrontEndInput, end: TieRodEnd): number {
  return end === "inner" ? input.steering.innerEnd[2] : input.knuckle.steeringArm[2];
}

function toeChanges(input: FrontEndInput, range: TravelRange): { meanSquare: number; most: number } | null {
  const assembled = assembleFrontEnd(input);
  if (!assembled.ok) return null;
  const left = bumpSteer(assembled.frontEnd, "left", range);
  // A rack's sides are mirror images.
  const right = input.steering.type === "rack" ? left : bumpSteer(assembled.frontEnd, "right", range);
  if (left === null || right === null) return null;
  const [one, other] = [left.most.toeChange, right.most.toeChange];
  return {
    meanSquare: 0.5 * (left.rms ** 2 + right.rms ** 2),
    most: Math.abs(other) > Math.abs(one) ? other : one,
  };
}
