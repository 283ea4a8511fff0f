import type { Outline } from "./outline.ts";

/** A straight piece between two nodes, by their numbers. */
export interface Piece {
  readonly from: number;
  readonly to: number;
}

/** Closed outlines of fewer points than this enclose nothing. */
const LEAST_CLOSED = 3;

/**
 * Joins pieces end to end at nodes they share, each used once. Open chains are walked first, from their ends;
 * where as many pieces arrive as leave, all else closes. Pieces are followed the way they point where one does,
 * against it where the mesh they come from is wound both ways. Points in one place become one, and what has
 * shrunk to a point (the plane only touches there) is left out.
 * @param points u, v of each node
 */
export function joinPieces(pieces: readonly Piece[], points: ArrayLike<number>): Outline[] {
  const walk = new Walk(pieces);
  const outlines: Outline[] = [];
  const follow = (start: number) => {
    const outline = outlineOf(walk.from(start), points);
    if (outline !== null) outlines.push(outline);
  };
  for (const start of walk.looseEnds()) while (walk.isLoose(start)) follow(start);
  for (const { from } of pieces) while (walk.leads(from)) follow(from);
  return outlines;
}

class Walk {
  private readonly at = new Map<number, number[]>();
  private readonly used: Uint8Array;

  constructor(private readonly pieces: readonly Piece[]) {
    this.used = new Uint8Array(pieces.length);
    pieces.forEach(({ from, to }, i) => {
      for (const node of [from, to]) {
        const met = this.at.get(node);
        if (met === undefined) this.at.set(node, [i]);
        else met.push(i);
      }
    });
  }

  /** Nodes where an odd number of pieces meet, those that pieces leave first. */
  looseEnds(): number[] {
    const odd = [...this.at.keys()].filter((node) => this.isLoose(node));
    const leaves = (node: number) => this.at.get(node)!.filter((i) => this.pieces[i]!.from === node).length;
    const surplus = (node: number) => 2 * leaves(node) - this.at.get(node)!.length;
    return odd.sort((a, b) => surplus(b) - surplus(a));
  }

  isLoose(node: number): boolean {
    return this.free(node).length % 2 === 1;
  }

  leads(node: number): boolean {
    return this.free(node).length > 0;
  }

  /** Nodes passed from one on, until no piece leads farther; back at the start where it closes. */
  from(start: number): number[] {
    const nodes = [start];
    for (let node = start; ; ) {
      const free = this.free(node);
      const next = free.find((i) => this.pieces[i]!.from === node) ?? free[0];
      if (next === undefined) return nodes;
      this.used[next] = 1;
      const { from, to } = this.pieces[next]!;
      node = from === node ? to : from;
      nodes.push(node);
      // A figure of eight is two outlines.
      if (node === start) return nodes;
    }
  }

  private free(node: number): number[] {
    const met = this.at.get(node)!;
    const free = met.filter((i) => this.used[i] === 0);
    if (free.length < met.length) this.at.set(node, free);
    return free;
  }
}

function outlineOf(nodes: readonly number[], points: ArrayLike<number>): Outline | null {
  const closed = nodes.length > 2 && nodes[0] === nodes.at(-1);
  const kept: number[] = [];
  for (const node of closed ? nodes.slice(1) : nodes) {
    const u = points[2 * node]!;
    const v = points[2 * node + 1]!;
    if (kept.length === 0 || kept.at(-2) !== u || kept.at(-1) !== v) kept.push(u, v);
  }
  if (closed) while (kept.length > 2 && kept[0] === kept.at(-2) && kept[1] === kept.at(-1)) kept.length -= 2;
  if (kept.length < 4 || (closed && kept.length < 2 * LEAST_CLOSED)) return null;
  return { points: Float64Array.from(kept), closed };
}
