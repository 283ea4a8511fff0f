import { boundCell, cellBound } from "../../gaps/cells/cellBound.ts";
import { searchCellTo } from "../../gaps/cells/cellSearch.ts";
import { CELL, CELL_ROW } from "../../gaps/cells/cells.ts";
import { gapSlack } from "../../gaps/cells/tolerances.ts";
import { GAP_ROW } from "../../gaps/partGap.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { segmentGapTo } from "../../gaps/segmentGap.ts";
import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE, POSE_ROW } from "../../suspension/poseRow.ts";
import { pairGapTo, type RodPair } from "../model/pairs.ts";
import type { BorderPose } from "./borderPose.ts";
import { movesEvenly } from "./borderWay.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW } from "./cellOfPoses.ts";
import { toleranceAt } from "./deepTolerance.ts";
import { Cut, loosestCut, NODE, NODE_ROW, type Nodes } from "./nodes.ts";
import type { PoseCells } from "./poseCells.ts";
import { boundFan, type FanBound, fanBound } from "./rodFan.ts";
import { type InnerEndMotion, rodCellTo, rodMotionTo, scaledMotionTo } from "./rodMotion.ts";
import type { Said, Subject } from "./subject.ts";

// Scratch: a search is not reentrant and calls back nobody.
const pose = new Float64Array(POSE_ROW);
const motion = new Float64Array(MOTION_ROW);
const ofInner = new Float64Array(MOTION_ROW);
const scaled = new Float64Array(MOTION_ROW);
const cell = new Float64Array(CELL_ROW);
const found = cellBound();
const fan = fanBound();
/** An inner end's motion: one input that may move it by `armSlideOff` anywhere. */
const anyway = new Float64Array(MOTION_ROW);
anyway[MOTION.armHalf] = 1;

/** Fraction from a rod's outer end within which it is not halved again. */
const LEAST_STRETCH = 1 / 16;

/** Share of the way, or of what may be left open, that the gap of a deep rod at the border of reach may be off by. */
const COARSE_SHARE = 0.02;

/** In place of the number of a rod. */
const ALL = -1;

/** The rods of a pair, which move with knuckle and truck: each node is a cell of poses × all of them, or a piece of one. */
export class RodSubject implements Subject {
  readonly ring: RingShape;
  readonly floor: number;
  readonly mostNodes = 120_000;
  readonly work = { bound: 5, border: 5, gap: 20 };
  readonly borderNodes = 1;
  readonly row = new Float64Array(GAP_ROW);
  private readonly radius: number;
  /** Number of the cell of poses whose pose and motion stand in `pose` and `motion`. */
  private moving = -1;

  constructor(private readonly pair: RodPair) {
    const { part, ring } = pair;
    this.ring = ring;
    this.radius = part.cells[CELL.radius]!;
    this.floor = -ring.deepest - this.radius;
  }

  begin({ rows }: Nodes, node: number): void {
    rows[node * NODE_ROW + NODE.rod] = ALL;
    rows[node * NODE_ROW + NODE.near] = 0;
    rows[node * NODE_ROW + NODE.far] = 1;
  }

  gap(at: Float64Array, poseAt: number, beat: number, coarse: number): number {
    return pairGapTo(this.row, 0, this.pair, at, poseAt, beat, coarse);
  }

  /** By `boundCell` and `boundFan`, the better one counting, with the motion `rodMotionTo` proves. */
  bound(out: Said, poses: PoseCells, poseCell: number, { rows }: Nodes, node: number): boolean {
    const at = node * NODE_ROW;
    const { pivots, outerAt, ring } = this.pair;
    if (rows[at + NODE.rod] === ALL) {
      if (!movesEvenly(poses, poseCell, ring.ballRadius)) return false;
      out.value = Number.POSITIVE_INFINITY;
      out.bound = Number.NEGATIVE_INFINITY;
      out.cut = Cut.Part;
      return true;
    }
    const near = rows[at + NODE.near]!;
    const far = rows[at + NODE.far]!;
    if (poseCell !== this.moving) this.moveTo(poses, poseCell);
    const inner = pivots ?? pose;
    const innerAt = pivots === null ? POSE.tieRodInner : 3 * rows[at + NODE.rod]!;
    const own = pivots === null ? innerMotion(poses, poseCell) : null;
    rodCellTo(cell, pose, outerAt, inner, innerAt, near, far, this.radius);
    rodMotionTo(ofInner, motion, pose, inner[innerAt]!, inner[innerAt + 1]!, inner[innerAt + 2]!, own);
    scaledMotionTo(scaled, ofInner, far);
    const wheel = POSE.wheelCenter;
    boundCell(found, ring, pose, wheel, cell, 0, scaled);
    boundFan(fan, ring, pose, wheel, pose, outerAt, inner, innerAt, near, far, this.radius, ofInner);
    const better = fan.bound > found.bound ? fan : found;
    out.value = Math.min(found.value, fan.value);
    out.bound = better.bound;
    out.cut = cutOf(better, Math.max(better.bound, this.floor));
    return true;
  }

  /**
   * All rods, whatever the piece. The ring and the outer end are fixed to each other, and seen from them an inner end B is at
   * most slide + turn × |B − lower ball joint| + its own way from where the border's pose has it, and the point at fraction
   * s of its rod that share of it: of stretches of the rod, each taken with its far end's, the least gap less this bounds it.
   */
  boundAtBorder(
    out: Said,
    border: BorderPose,
    _nodes: Nodes,
    _node: number,
    best: number,
    aim: number,
  ): void {
    const { pivots } = this.pair;
    const inner = pivots ?? border.pose;
    const own = pivots === null ? border.innerOff : 0;
    let lever = 0;
    out.bound = best;
    for (let rod = 0; rod < (pivots === null ? 1 : pivots.length / 3); rod++) {
      const at = pivots === null ? POSE.tieRodInner : 3 * rod;
      const reach = border.lever(inner, at);
      lever = Math.max(lever, reach);
      const way = border.way(reach) + own;
      out.bound = Math.min(out.bound, this.rodAtBorder(border.pose, inner, at, way, out.bound, aim));
    }
    out.value = out.bound + border.spinWay(lever);
    out.cut = border.cut(lever, own);
  }

  /**
   * mm. The least of gap less way, its share, along one rod, or `beat` where none is below it: all of it at once, then its
   * inner half apart from the outer one, which has less way, and so on, as long as that may tell enough.
   */
  private rodAtBorder(
    at: Float64Array,
    inner: Float64Array,
    innerAt: number,
    way: number,
    beat: number,
    aim: number,
  ): number {
    anyway[MOTION.armSlideOff] = way;
    // How deep a rod is pressed in is dear to know: no nearer than a share of what is taken off anyway, or may be left open.
    const coarse = beat < 0 ? COARSE_SHARE * Math.max(way, toleranceAt(beat, 0)) : 0;
    const slack = coarse + gapSlack(Math.max(beat, this.floor));
    const stretch = (near: number, far: number): number => {
      const off = far * way + slack;
      const gap = this.stretchGap(at, inner, innerAt, near, far, beat + off, coarse);
      if (gap >= beat + off) return beat;
      const { outerAt, ring } = this.pair;
      boundFan(fan, ring, at, POSE.wheelCenter, at, outerAt, inner, innerAt, near, far, this.radius, anyway);
      return Math.max(gap - off, fan.bound);
    };
    let known = beat;
    let rest = stretch(0, 1);
    for (let far = 1; rest < aim && far > LEAST_STRETCH; far *= 0.5) {
      const outside = stretch(0.5 * far, far);
      if (outside < aim) break;
      known = Math.min(known, outside);
      rest = stretch(0, 0.5 * far);
    }
    return Math.min(known, rest);
  }

  /** mm. The gap of a stretch of a rod at one pose, or `beat`. */
  private stretchGap(
    at: Float64Array,
    inner: Float64Array,
    innerAt: number,
    near: number,
    far: number,
    beat: number,
    coarse: number,
  ): number {
    const { outerAt, ring } = this.pair;
    const wheel = POSE.wheelCenter;
    rodCellTo(cell, at, outerAt, inner, innerAt, near, far, this.radius);
    const gap = segmentGapTo(this.row, 0, ring, at, wheel, cell, 0, beat, coarse);
    return Number.isNaN(gap) ? searchCellTo(this.row, 0, ring, at, wheel, cell, 0, beat, coarse) : gap;
  }

  cut(nodes: Nodes, node: number, look: (node: number) => void): void {
    if (nodes.rows[node * NODE_ROW + NODE.rod] === ALL) {
      const { pivots } = this.pair;
      for (let rod = pivots === null ? 0 : pivots.length / 3 - 1; rod >= 0; rod--) {
        const each = nodes.copy(node);
        nodes.rows[each * NODE_ROW + NODE.rod] = rod;
        look(each);
      }
      nodes.drop(node);
      return;
    }
    const twin = nodes.halve(node);
    look(node);
    look(twin);
  }

  private moveTo({ rows }: PoseCells, poseCell: number): void {
    this.moving = poseCell;
    const at = poseCell * CELL_OF_POSES_ROW;
    for (let i = 0; i < POSE_ROW; i++) pose[i] = rows[at + CELL_OF_POSES.pose + i]!;
    for (let i = 0; i < MOTION_ROW; i++) motion[i] = rows[at + CELL_OF_POSES.motion + i]!;
  }
}

/** How the inner tie rod end moves over a cell of poses. */
function innerMotion({ rows }: PoseCells, poseCell: number): InnerEndMotion {
  const at = poseCell * CELL_OF_POSES_ROW;
  const v = at + CELL_OF_POSES.innerVelocity;
  return {
    velocity: [rows[v]!, rows[v + 1]!, rows[v + 2]!],
    spread: {
      speedMost: rows[at + CELL_OF_POSES.innerSpeedMost]!,
      velocityOff: rows[at + CELL_OF_POSES.innerVelocityOff]!,
    },
  };
}

/**
 * What to halve: that which the better bound loses most by; where its shares do not explain half of what is lost
 * (the concavity of r comes from all three), that which moves the points most. Reads `fan`.
 */
function cutOf(
  better: Pick<FanBound, "value" | "partShare" | "armShare" | "steerShare">,
  bound: number,
): Cut {
  const { partShare, armShare, steerShare } = better;
  if (partShare + armShare + steerShare > 0.5 * (better.value - bound)) {
    return loosestCut(better);
  }
  return loosestCut({ partShare: fan.length, armShare: fan.armPath, steerShare: fan.steerPath });
}
