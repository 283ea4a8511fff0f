import { MinHeap } from "../numeric/minHeap.ts";
import { type Cut, NODE, NODE_ROW, Nodes } from "./nodes.ts";

/** What a search knows: the worst pose found, the nodes that could hold a worse one, and what was settled or given up. */
export class Frontier {
  readonly nodes = new Nodes();
  private readonly heap = new MinHeap();
  best: number;
  bestArm = 0;
  bestSteer = 0;
  /** How many nodes were looked at. */
  cells = 0;
  /** Whether nodes of which nothing is known were given up. */
  gaveUp = false;
  /** Least bound of nodes settled at the border of reach, within the tolerance asked for. */
  private settled = Number.POSITIVE_INFINITY;
  /** Bound of the node taken last. */
  private parentBound = Number.NEGATIVE_INFINITY;

  /** @param floor no gap can be below this, mm. @param below only gaps below this are taken, mm */
  constructor(
    readonly floor: number,
    private readonly below = Number.POSITIVE_INFINITY,
  ) {
    this.best = below;
  }

  /** Whether a pose was found. */
  get hasFound(): boolean {
    return this.best < this.below;
  }

  get size(): number {
    return this.heap.size;
  }

  /** No node has less. */
  leastBound(): number {
    return Math.max(this.heap.leastKey(), this.floor);
  }

  /** No pose of the range has less. What was given up leaves only the depth that no gap can pass. */
  bound(): number {
    const least = this.gaveUp ? this.floor : Math.min(this.heap.leastKey(), this.settled);
    return Math.min(this.best, Math.max(least, this.floor));
  }

  /** Takes a gap, mm, found at a pose of the range, if it is less. */
  offer(gap: number, arm: number, steer: number): void {
    if (!(gap < this.best)) return;
    this.best = gap;
    this.bestArm = arm;
    this.bestSteer = steer;
  }

  /** Keeps a node with its bound, or with that of the node taken last, which it is a part of, where that is better. */
  push(node: number, bound: number, cut: Cut): void {
    this.nodes.rows[node * NODE_ROW + NODE.cut] = cut;
    this.heap.push(bound > this.parentBound ? bound : this.parentBound, node);
  }

  /** Makes a node that is part of no other one: nothing is known of it yet. */
  claimRoot(): number {
    this.parentBound = Number.NEGATIVE_INFINITY;
    return this.nodes.claim();
  }

  /** Takes the node with the least bound. */
  pop(): number {
    this.parentBound = this.heap.leastKey();
    return this.heap.pop();
  }

  /** Leaves a node as it is: the answer will not be below its bound. */
  settle(node: number, bound: number): void {
    const known = bound > this.parentBound ? bound : this.parentBound;
    if (known < this.settled) this.settled = known;
    this.nodes.drop(node);
  }

  giveUp(node: number): void {
    this.gaveUp = true;
    this.nodes.drop(node);
  }
}
