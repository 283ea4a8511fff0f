import { describe, expect, it } from "vitest";
import { truckOf } from "../../src/app/state/truck.ts";
import { bandEdges } from "../../src/app/work/bandEdges.ts";
import { bandLines, drawnEnvelopeOf, leastDistances } from "../../src/app/work/drawnEnvelope.ts";
import { drawnSectionOf } from "../../src/app/work/drawnSection.ts";
import { Budget } from "../../src/studies/numeric/budget.ts";
import { exampleText } from "./exampleText.ts";

const made = truckOf(exampleText, "example.json", null);
if (!made.ok) throw new Error("the example goes together");
const { model } = made.value;

describe("bands of distance", () => {
  it("begin with what may rub, or the allowance, and rise", () => {
    expect(bandEdges(6.35, "in").map((mm) => mm.toFixed(6))).toEqual(["8.000000", "25.400000", "76.200000"]);
    expect(bandEdges(10, "mm")).toEqual([10, 25, 75]);
    expect(bandEdges(40, "mm")).toEqual([40, 75]);
    expect(bandEdges(0, "mm")).toEqual([8, 25, 75]);
  });

  it("tell of a part that comes through the middle of a triangle, far from its corners", () => {
    const part = model.parts.find(({ side, shape }) => side === "left" && shape.name === "lip")!;
    const [x, y, z] = part.shape.balls;
    // A triangle about a place on the lip, its corners 30 mm away.
    const corner = (turn: number) => [x! + 30 * Math.cos(turn), y! + 30 * Math.sin(turn), z!];
    const positions = Float64Array.from([0, 2, 4].flatMap((turn) => corner((turn * Math.PI) / 3)));
    const mesh = { positions, triangles: Uint32Array.of(0, 1, 2) };
    expect(Math.max(...leastDistances(model, "left", mesh))).toBeLessThan(8);
  });

  it("are parted by lines on which the distance is the edge's", () => {
    // A strip of two triangles on which the value is x.
    const mesh = {
      positions: Float64Array.of(0, 0, 0, 4, 0, 0, 0, 1, 0, 4, 1, 0),
      triangles: Uint32Array.of(0, 1, 2, 1, 3, 2),
    };
    const lines = bandLines(mesh, Float32Array.of(0, 4, 0, 4), 1);
    expect(lines).toHaveLength(12);
    for (let i = 0; i < lines.length; i += 3) expect(lines[i]).toBeCloseTo(1, 6);
    expect(bandLines(mesh, Float32Array.of(0, 4, 0, Number.POSITIVE_INFINITY), 1)).toHaveLength(6);
    expect(bandLines(mesh, Float32Array.of(2, 4, 2, 4), 1)).toHaveLength(0);
  });
});

const CUT = { plane: { axis: "x", at: 0 }, travel: 0, steer: 0 } as const;

describe("an envelope to look at", () => {
  const shares: number[] = [];
  const drawn = drawnEnvelopeOf(
    model,
    { choice: "straight", travel: 0, edges: [6.35, 25.4] },
    Budget.endless(),
    (share) => shares.push(share),
  );

  it("tells how far it has come, up to the end", () => {
    expect(shares.length).toBeGreaterThan(3);
    expect(shares.every((share, i) => i === 0 || share >= shares[i - 1]!)).toBe(true);
    expect(shares.at(-1)).toBe(1);
  });

  it("has two sides that are mirror images, with distances alike where the body is", () => {
    const [left, right] = drawn!.sides;
    expect([left!.side, right!.side]).toEqual(["left", "right"]);
    expect(right!.positions).toHaveLength(left!.positions.length);
    for (let i = 0; i < left!.positions.length; i += 300) {
      expect(right!.positions[i]).toBeCloseTo(left!.positions[i]!, 3);
      expect(right!.positions[i + 1]).toBeCloseTo(-left!.positions[i + 1]!, 3);
    }
    expect(Math.min(...right!.distances)).toBeCloseTo(Math.min(...left!.distances), 3);
  });

  it("is cut with the ring inside it", () => {
    const section = drawnSectionOf(model, drawn!.sides, CUT, Budget.endless());
    const kinds = section.figures.map(({ kind }) => kind);
    expect(kinds).toContain("envelope");
    expect(kinds.filter((kind) => kind === "ring")).toHaveLength(2);
    expect(section.nearest?.part).toBe("lip");
    const ring = section.figures.find(({ kind }) => kind === "ring")!;
    expect(ring.hatch).toMatch(/^M-?[\d.]+ -?[\d.]+L/);
    expect(section.figures.find(({ kind }) => kind === "envelope")!.hatch).toBe("");
  });

  it("is cut without it too, where none was asked for", () => {
    const section = drawnSectionOf(model, [], CUT, Budget.endless());
    expect(section.figures.map(({ kind }) => kind).sort()).toEqual([
      "part",
      "part",
      "part",
      "part",
      "ring",
      "ring",
    ]);
    expect(section.nearest).toBeNull();
  });
});
