import type { RingShape } from "../../gaps/ring/ringShape.ts";
import type { BorderPose } from "./borderPose.ts";
import type { Cut, Nodes } from "./nodes.ts";
import type { PoseCells } from "./poseCells.ts";

/** What a subject says of a node; the search's own memory. */
export interface Said {
  /**
   * mm. A gap at the middle of the cell of poses, of some point of the node; +Infinity = none is told. At the border of
   * reach: the bound there would be if nothing were turned about the steering axis.
   */
  value: number;
  /** mm. No pose of the cell has less; −Infinity = nothing is known. */
  bound: number;
  /** What to halve next. */
  cut: Cut;
}

/** What a search measures against a ring as the wheel moves: a part that stands still, rods, a spring or shock. */
export interface Subject {
  readonly ring: RingShape;
  /** mm. No gap can be below this. */
  readonly floor: number;
  /** Nodes after which a search ends with the bound it has reached. */
  readonly mostNodes: number;
  /** Microseconds, about: of a bound, of one at the border of reach, of a gap at a pose. */
  readonly work: { readonly bound: number; readonly border: number; readonly gap: number };
  /** How many nodes one at the border of reach counts for. */
  readonly borderNodes: number;
  /** The `GAP` row filled last. */
  readonly row: Float64Array;
  /** Makes a node all of it. */
  begin(nodes: Nodes, node: number): void;
  /**
   * The gap at a pose, a row as `poseRowTo` fills it. @param coarse mm, how much too large it may be.
   * @returns the gap, or `beat` when none is below it
   */
  gap(pose: Float64Array, poseAt: number, beat: number, coarse: number): number;
  /** Bounds a node over a cell of poses whose motion is proven. @returns false where the border's pose tells more. */
  bound(out: Said, poses: PoseCells, cell: number, nodes: Nodes, node: number): boolean;
  /**
   * Bounds a node over poses at the border of reach, from one amid them. @param best mm, the least gap found: more than
   * that need not be told nearer. @param aim mm, what is enough
   */
  boundAtBorder(out: Said, border: BorderPose, nodes: Nodes, node: number, best: number, aim: number): void;
  /** Cuts the piece of a node in two or more, which take its place. @param look at each */
  cut(nodes: Nodes, node: number, look: (node: number) => void): void;
}
