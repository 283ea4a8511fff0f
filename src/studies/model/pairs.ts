import { GAP, GAP_ROW, partGapTo } from "../../gaps/partGap.ts";
import type { PartShape } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { placeRods } from "./rods.ts";
import { lowerMountMotion, placeSpringOrShock, type SpringOrShock } from "./springOrShock.ts";

/** What of the wheel end a part is measured against: each a solid of revolution about the wheel's axis. */
export type Solid = "ring" | "rotor" | "wheel center";

interface PairBase {
  /** Unique on its side. */
  readonly name: string;
  /** The part alone, as a sentence calls it; `name` says the solid too where that is not the ring. */
  readonly partName: string;
  readonly solid: Solid;
  readonly side: Side;
  /** The solid; turns about the wheel axis, x from the wheel center. */
  readonly ring: RingShape;
}

/** The part stands still on the truck and the ring moves. */
export interface BodyPair extends PairBase {
  readonly kind: "body";
  /** Left-hand frame of the side. */
  readonly part: PartShape;
}

/** The part is rigid rods, each from a point of the truck to one point of the knuckle. */
export interface RodPair extends PairBase {
  readonly kind: "rod";
  /** Where the point of the knuckle stands in a pose row. */
  readonly outerAt: number;
  /** The truck's points, three numbers each; null = the inner tie rod end, which the steering moves. */
  readonly pivots: Float64Array | null;
  /** The rods as they were placed last: `pairGapTo` places them anew at each pose. Left-hand frame. */
  readonly part: PartShape;
}

/** The part is round, between a point of the body and one of the lower arm or the knuckle: air spring, shock. */
export interface SpringOrShockPair extends PairBase {
  readonly kind: "springOrShock";
  readonly springOrShock: SpringOrShock;
  /** As it was placed last: `pairGapTo` places it anew at each pose. Left-hand frame. */
  readonly part: PartShape;
}

/** Part and solid both ride on the knuckle, so the gap is the same at every pose. */
export interface TogetherPair extends PairBase {
  readonly kind: "together";
  /** A `GAP` row in the knuckle frame. */
  readonly row: Float64Array;
  /** The gap, told by `coarse` too large at most, or `beat` where it is not below that; mm. Found far sooner than the row. */
  readonly roughGap: (beat: number, coarse: number) => number;
}

/** Two things whose gap is measured, on one side; left-hand frame of that side, mm. */
export type Pair = BodyPair | RodPair | SpringOrShockPair | TogetherPair;

/**
 * Gap of one pair at one pose, as `partGapTo` (same `out` row, same `beat` and `coarse`). Allocates nothing.
 * @param pose a row filled by `poseRowTo` at `poseAt`, left-hand frame of the pair's side.
 */
export function pairGapTo(
  out: Float64Array,
  at: number,
  pair: Pair,
  pose: Float64Array,
  poseAt: number,
  beat = Number.POSITIVE_INFINITY,
  coarse = 0,
): number {
  if (pair.kind === "together") {
    const gap = pair.row[GAP.gap]!;
    if (!(gap < beat)) return beat;
    out[at] = gap;
    for (let i = GAP.point; i < GAP_ROW; i += 3) {
      const x = pair.row[i]!;
      const y = pair.row[i + 1]!;
      const z = pair.row[i + 2]!;
      for (let axis = 0; axis < 3; axis++) {
        out[at + i + axis] =
          pose[poseAt + POSE.lowerBallJoint + axis]! +
          x * pose[poseAt + POSE.knuckleX + axis]! +
          y * pose[poseAt + POSE.knuckleY + axis]! +
          z * pose[poseAt + POSE.knuckleZ + axis]!;
      }
    }
    return gap;
  }
  if (pair.kind === "rod") placeRods(pair.part, pair.outerAt, pair.pivots, pose, poseAt);
  if (pair.kind === "springOrShock") placeSpringOrShock(pair.part, pair.springOrShock, pose, poseAt);
  return partGapTo(out, at, pair.ring, pose, poseAt + POSE.wheelCenter, pair.part, beat, coarse);
}

/**
 * Upper bound of how much a pair's gap can differ between two poses of its side, mm.
 * - body: the ring is carried from one pose to the other by the wheel center's move and the least turn of its
 *   axis, which moves no point of it by more than |Δcenter| + |Δaxis| × (its ball's radius); a signed distance
 *   changes by no more than the solid moves.
 * - rod: seen from the knuckle the ring and the outer end stand still, the inner end B moves, and the point at
 *   fraction s of the rod by s·|ΔB| ≤ |ΔB|.
 * - spring or shock: the ring's move as for a body part, and that of the spring's or shock's lower end.
 * - together: 0.
 * @param a, b rows filled by `poseRowTo` at `aAt`, `bAt`.
 */
export function pairMotion(pair: Pair, a: Float64Array, aAt: number, b: Float64Array, bAt: number): number {
  if (pair.kind === "together") return 0;
  if (pair.kind === "body" || pair.kind === "springOrShock") {
    return (
      apart(a, aAt + POSE.wheelCenter, b, bAt + POSE.wheelCenter) +
      pair.ring.ballRadius * apart(a, aAt + POSE.wheelAxis, b, bAt + POSE.wheelAxis) +
      (pair.kind === "springOrShock" ? lowerMountMotion(pair.springOrShock, a, aAt, b, bAt) : 0)
    );
  }
  const { pivots } = pair;
  if (pivots === null) {
    return innerMove(a, aAt, a, aAt + POSE.tieRodInner, b, bAt, b, bAt + POSE.tieRodInner);
  }
  let most = 0;
  for (let i = 0; i < pivots.length; i += 3) {
    const move = innerMove(a, aAt, pivots, i, b, bAt, pivots, i);
    if (move > most) most = move;
  }
  return most;
}

function apart(a: Float64Array, aAt: number, b: Float64Array, bAt: number): number {
  const x = a[aAt]! - b[bAt]!;
  const y = a[aAt + 1]! - b[bAt + 1]!;
  const z = a[aAt + 2]! - b[bAt + 2]!;
  return Math.sqrt(x * x + y * y + z * z);
}

/** How far a point of the truck (p in pose a, q in pose b) moves as seen from the knuckle. */
function innerMove(
  a: Float64Array,
  aAt: number,
  p: Float64Array,
  pAt: number,
  b: Float64Array,
  bAt: number,
  q: Float64Array,
  qAt: number,
): number {
  let sq = 0;
  for (let axis = POSE.knuckleX; axis <= POSE.knuckleZ; axis += 3) {
    let move = 0;
    for (let i = 0; i < 3; i++) {
      move +=
        (p[pAt + i]! - a[aAt + i]!) * a[aAt + axis + i]! - (q[qAt + i]! - b[bAt + i]!) * b[bAt + axis + i]!;
    }
    sq += move * move;
  }
  return Math.sqrt(sq);
}
