import { describe, expect, it } from "vitest";
import { CELL_ROW, CellKind } from "../../../src/gaps/cells/cells.ts";
import { triangleTree } from "../../../src/gaps/mesh/triangleTree.ts";
import { Frontier } from "../../../src/studies/search/frontier.ts";
import { Cut, loosestCut, NO_TREE, NODE, NODE_ROW, Nodes } from "../../../src/studies/search/nodes.ts";

const rowOf = (nodes: Nodes, node: number) => [
  ...nodes.rows.subarray(node * NODE_ROW, node * NODE_ROW + NODE_ROW),
];

/** Fills a node's row with numbers that tell where they stand. */
function filled(nodes: Nodes): number {
  const node = nodes.claim();
  for (let i = 0; i < NODE_ROW; i++) nodes.rows[node * NODE_ROW + i] = 100 * (node + 1) + i;
  return node;
}

describe("the nodes of a search", () => {
  it("keep their rows while thousands are claimed and dropped, and no number is out twice", () => {
    const nodes = new Nodes();
    const held = Array.from({ length: 3000 }, () => filled(nodes));
    expect(new Set(held).size).toBe(held.length);
    const dropped = held.filter((_, i) => i % 2 === 0);
    for (const node of dropped) nodes.drop(node);
    const again = Array.from({ length: dropped.length + 1 }, () => nodes.claim());
    expect(new Set(again.slice(0, -1))).toEqual(new Set(dropped));
    expect(held).not.toContain(again.at(-1));
    for (const node of held.filter((_, i) => i % 2 === 1))
      expect(rowOf(nodes, node)).toEqual(Array.from({ length: NODE_ROW }, (_, i) => 100 * (node + 1) + i));
  });

  it("are copied whole", () => {
    const nodes = new Nodes();
    filled(nodes);
    const node = filled(nodes);
    const twin = nodes.copy(node);
    expect(twin).not.toBe(node);
    expect(rowOf(nodes, twin)).toEqual(rowOf(nodes, node));
  });

  it("are cut across the part: the cell's halves in two nodes that are alike otherwise", () => {
    const nodes = new Nodes();
    filled(nodes);
    const node = filled(nodes);
    const cell = [CellKind.Segment, 0, 0, 0, 8, 4, 2, 0, 0, 0, 5];
    const before = rowOf(nodes, node).slice(0, NODE.cell);
    nodes.setCell(node, Float64Array.from([9, ...cell]), 1);
    before[NODE.tree] = NO_TREE;
    expect(rowOf(nodes, node)).toEqual([...before, ...cell]);
    const twin = nodes.cut(node);
    expect(rowOf(nodes, node)).toEqual([...before, CellKind.Segment, 0, 0, 0, 4, 2, 1, 0, 0, 0, 5]);
    expect(rowOf(nodes, twin)).toEqual([...before, CellKind.Segment, 4, 2, 1, 8, 4, 2, 0, 0, 0, 5]);
  });

  it("that are a stretch of a rod are halved in its middle", () => {
    const nodes = new Nodes();
    filled(nodes);
    const node = filled(nodes);
    nodes.rows[node * NODE_ROW + NODE.near] = 0.25;
    nodes.rows[node * NODE_ROW + NODE.far] = 0.75;
    const twin = nodes.halve(node);
    const stretch = (n: number) => [
      nodes.rows[n * NODE_ROW + NODE.near],
      nodes.rows[n * NODE_ROW + NODE.far],
      nodes.rows[n * NODE_ROW + NODE.rod],
    ];
    const rod = 100 * (node + 1) + NODE.rod;
    expect(stretch(node)).toEqual([0.25, 0.5, rod]);
    expect(stretch(twin)).toEqual([0.5, 0.75, rod]);
  });

  it("open a mesh down to every one of its triangles, each once, each in boxes that hold it", () => {
    const count = 37;
    const positions = Float64Array.from(
      { length: 9 * count },
      (_, i) => 50 * Math.sin(7 * i + 1) + 3 * (i % 9),
    );
    const tree = triangleTree(
      positions,
      Uint32Array.from({ length: 3 * count }, (_, i) => i),
    );
    const nodes = new Nodes();
    filled(nodes);
    const root = nodes.claim();
    nodes.setTree(root, tree, 0);
    const found: number[][] = [];
    /** Every box that a node passed on the way down. */
    const inside = (node: number, boxes: readonly number[][]): void => {
      const at = node * NODE_ROW;
      const cell = rowOf(nodes, node).slice(NODE.cell);
      expect(cell.at(-1)).toBe(0);
      if (nodes.rows[at + NODE.tree] === NO_TREE) {
        expect(cell[0]).toBe(CellKind.Triangle);
        const corners = cell.slice(1, 10);
        for (const box of boxes)
          corners.forEach((v, i) => {
            expect(Math.abs(v - box[i % 3]!)).toBeLessThanOrEqual(box[3 + (i % 3)]!);
          });
        found.push(corners);
        return;
      }
      expect(cell[0]).toBe(CellKind.Box);
      nodes.openTree(tree, node, (each) => inside(each, [...boxes, cell.slice(1, 7)]));
    };
    inside(root, []);
    const sorted = (rows: number[][]) => rows.map((row) => row.join()).sort();
    expect(sorted(found)).toEqual(
      sorted(Array.from({ length: count }, (_, i) => [...positions.subarray(9 * i, 9 * i + 9)])),
    );
  });

  it("are cut across what loosens them most: the part, then the arm, where two are alike", () => {
    const cutOf = (partShare: number, armShare: number, steerShare: number) =>
      loosestCut({ partShare, armShare, steerShare });
    expect([cutOf(3, 2, 1), cutOf(3, 1, 2), cutOf(3, 3, 3), cutOf(3, 2, 3), cutOf(3, 3, 2)]).toEqual(
      new Array(5).fill(Cut.Part),
    );
    expect([cutOf(1, 3, 2), cutOf(2, 3, 1), cutOf(1, 3, 3), cutOf(2, 3, 3)]).toEqual(
      new Array(4).fill(Cut.Arm),
    );
    expect([cutOf(1, 2, 3), cutOf(2, 1, 3), cutOf(2.9, 0, 3)]).toEqual(new Array(3).fill(Cut.Steer));
  });
});

describe("what a search knows", () => {
  const FLOOR = -60;

  it("comes by its least gap in any order, with the pose it was found at", () => {
    const frontier = new Frontier(FLOOR);
    expect(frontier.hasFound).toBe(false);
    for (const [gap, pose] of [
      [5, 1],
      [7, 2],
      [3, 3],
      [3, 4],
      [Number.NaN, 5],
    ] as const)
      frontier.offer(gap, 0.1 * pose, -pose);
    expect([frontier.best, frontier.bestArm, frontier.bestSteer]).toEqual([3, 0.1 * 3, -3]);
    expect(frontier.hasFound).toBe(true);
  });

  it("takes only gaps below the one it looks below", () => {
    const frontier = new Frontier(FLOOR, 2);
    frontier.offer(2, 1, 1);
    expect([frontier.hasFound, frontier.best]).toEqual([false, 2]);
    frontier.offer(1.5, 1, 1);
    expect([frontier.hasFound, frontier.best]).toEqual([true, 1.5]);
  });

  it("takes nodes out by their bounds, never below that of the node they are part of", () => {
    const frontier = new Frontier(FLOOR);
    const [a, b, c, d] = [0, 1, 2, 3].map(() => frontier.nodes.claim()) as [number, number, number, number];
    frontier.push(a, 4, Cut.Arm);
    frontier.push(b, 1, Cut.Steer);
    expect(frontier.leastBound()).toBe(1);
    expect(frontier.pop()).toBe(b);
    expect(frontier.nodes.rows[b * NODE_ROW + NODE.cut]).toBe(Cut.Steer);
    // Part of b, so no less than 1.
    frontier.push(c, 0, Cut.Part);
    frontier.push(d, 2, Cut.Part);
    expect(frontier.leastBound()).toBe(1);
    expect([frontier.pop(), frontier.pop(), frontier.pop()]).toEqual([c, d, a]);
    expect(frontier.size).toBe(0);
    // A root is part of none of them.
    frontier.claimRoot();
    frontier.push(a, 0.5, Cut.Part);
    expect(frontier.leastBound()).toBe(0.5);
    expect(new Frontier(FLOOR).leastBound()).toBe(Number.POSITIVE_INFINITY);
  });

  it("is bound by what is left, what was settled and the gap found, and by no more than the deepest there is", () => {
    const frontier = new Frontier(FLOOR);
    const claim = () => frontier.nodes.claim();
    frontier.offer(9, 0, 0);
    expect(frontier.bound()).toBe(9);
    frontier.push(claim(), 6, Cut.Arm);
    expect(frontier.bound()).toBe(6);
    frontier.settle(claim(), 7);
    expect(frontier.bound()).toBe(6);
    frontier.settle(claim(), 5);
    expect(frontier.bound()).toBe(5);
    frontier.settle(claim(), 5.5);
    expect(frontier.bound()).toBe(5);
    // What is settled as part of a node is no less than that.
    frontier.pop();
    frontier.settle(claim(), 2);
    expect(frontier.bound()).toBe(5);
    frontier.push(claim(), Number.NEGATIVE_INFINITY, Cut.Arm);
    expect(frontier.bound()).toBe(5);
    frontier.claimRoot();
    frontier.push(claim(), Number.NEGATIVE_INFINITY, Cut.Arm);
    expect([frontier.bound(), frontier.leastBound()]).toEqual([FLOOR, FLOOR]);
    frontier.pop();
    expect([frontier.bound(), frontier.gaveUp]).toEqual([5, false]);
    const given = claim();
    frontier.giveUp(given);
    expect([frontier.bound(), frontier.gaveUp, claim()]).toEqual([FLOOR, true, given]);
  });

  it("gives the numbers of settled nodes out again", () => {
    const frontier = new Frontier(FLOOR);
    const node = frontier.nodes.claim();
    frontier.settle(node, 1);
    expect(frontier.nodes.claim()).toBe(node);
  });
});

it("a row of a node holds a whole cell", () => {
  expect(NODE_ROW).toBe(NODE.cell + CELL_ROW);
});
