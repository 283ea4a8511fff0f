import { describe, expect, it } from "vitest";
import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";
import { envelopeSection, type SectionFigure } from "../../../src/studies/section/envelopeSection.ts";
import { meshBounds, meshVolume, outlineArea } from "../../../src/studies/section/outline.ts";
import { mirroredMesh, placedBody, ringMesh } from "../../../src/studies/section/placedBody.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { demoSetup, demoWith } from "../../reference/demoModel.ts";
import { boxMesh } from "./solidMeshes.ts";

const block = boxMesh([-50, 700, 200], [50, 900, 600]);
const model = demoWith([
  {
    name: "peg",
    side: "both",
    kind: "path",
    radius: 5,
    points: [
      [-100, 950, 400],
      [100, 950, 400],
    ],
  },
  { name: "rail", side: "left", kind: "box", min: [-200, 500, 300], max: [200, 720, 350] },
  { name: "far box", side: "both", kind: "box", min: [300, 500, 300], max: [400, 600, 350] },
  {
    name: "sheet",
    side: "right",
    kind: "mesh",
    positions: Float64Array.of(-100, -640, 0, 100, -640, 0, 0, -640, 900),
    triangles: Uint32Array.of(0, 1, 2),
  },
]);
const mirroredBlock: TriangleMesh = mirroredMesh(block);
const both = [
  { side: "left", mesh: block },
  { side: "right", mesh: mirroredBlock },
] as const;

const named = (figures: readonly SectionFigure[], name: string, side: string) => {
  const found = figures.find((figure) => figure.name === name && figure.side === side);
  expect(found).toBeDefined();
  return found!;
};

describe("a section of the envelope against the body", () => {
  const section = envelopeSection(model, both, { axis: "x", at: 10 }, null);

  it("has the envelopes' own area, and what the plane cuts of each side's parts, where they stand", () => {
    expect(section.envelopeArea).toBeCloseTo(2 * 200 * 400, 6);
    expect(section.figures.map(({ kind, name, side }) => `${kind} ${name} ${side}`)).toEqual([
      "envelope envelope left left",
      "part peg left",
      "part rail left",
      "envelope envelope right right",
      "part peg right",
      "part sheet right",
    ]);
    const peg = named(section.figures, "peg", "right").outlines[0]!;
    const us = [...peg.points].filter((_, i) => i % 2 === 0);
    expect([Math.min(...us), Math.max(...us)]).toEqual([expect.closeTo(-955, 1), expect.closeTo(-945, 1)]);
    // Typed at y < 0 for the right side alone: it stands as typed.
    const sheet = named(section.figures, "sheet", "right").outlines[0]!;
    expect(sheet.closed).toBe(false);
    for (let i = 0; i < sheet.points.length; i += 2) expect(sheet.points[i]).toBe(-640);
  });

  it("measures each part from its side's envelope in the plane, nearest first, 0 where they meet", () => {
    expect(section.clearances).toEqual([
      { part: "rail", side: "left", distanceInPlane: 0 },
      { part: "peg", side: "left", distanceInPlane: expect.closeTo(45, 2) },
      { part: "peg", side: "right", distanceInPlane: expect.closeTo(45, 2) },
      { part: "sheet", side: "right", distanceInPlane: expect.closeTo(60, 6) },
    ]);
  });

  it("never says less than the distance in space, for the plane holds only some of the points", () => {
    const off = envelopeSection(model, both, { axis: "z", at: 402 }, null);
    const peg = off.clearances.find(({ part, side }) => part === "peg" && side === "left")!;
    expect(peg.distanceInPlane).toBeGreaterThan(45);
    expect(peg.distanceInPlane).toBeCloseTo(50 - Math.sqrt(21), 2);
  });

  it("a plane that misses is empty", () => {
    const none = envelopeSection(model, both, { axis: "z", at: 5000 }, null);
    expect([none.figures, none.clearances, none.envelopeArea]).toEqual([[], [], 0]);
  });
});

describe("tire and rim in the section", () => {
  const pose = solvePose(model.frontEnd, 0, 0.4);
  if (!pose.ok) throw new Error("out of reach");

  it("the ring's mesh is closed, outside out, as large as Pappus's theorem says", () => {
    const { outline } = model.ring;
    const { wheelCenter, wheelAxis } = pose.left;
    const mesh = ringMesh(model.ring, wheelCenter, wheelAxis);
    // Volume of a section turned about its axis: 2π ∫ r dA, by the edges of the outline.
    let moment = 0;
    outline.forEach(([x0, r0], i) => {
      const [x1, r1] = outline[(i + 1) % outline.length]!;
      moment += ((x0 * r1 - x1 * r0) * (r0 + r1)) / 6;
    });
    // Flat sides cut off the same share of every circle.
    const share = (Math.sin((2 * Math.PI) / 360) * 360) / (2 * Math.PI);
    expect(meshVolume(mesh) / (2 * Math.PI * moment * share)).toBeCloseTo(1, 9);
    const { min, max } = meshBounds([mesh]);
    for (let axis = 0; axis < 3; axis++) {
      expect(min[axis]).toBeLessThan(wheelCenter[axis]!);
      expect(max[axis]).toBeGreaterThan(wheelCenter[axis]!);
    }
  });

  it("a plane through the wheel center cuts two half sections; on the right they are the mirror image when straight", () => {
    const straight = solvePose(model.frontEnd, 0, 0);
    if (!straight.ok) throw new Error("out of reach");
    const plane = { axis: "x", at: straight.left.wheelCenter[0] } as const;
    const section = envelopeSection(model, both, plane, straight);
    const left = named(section.figures, "tire and rim left", "left").outlines;
    const right = named(section.figures, "tire and rim right", "right").outlines;
    expect(left.map((one) => one.closed)).toEqual([true, true]);
    const half = model.ring.outline.reduce((sum, [x, r], i, all) => {
      const [nextX, nextR] = all[(i + 1) % all.length]!;
      return sum + 0.5 * (x * nextR - nextX * r);
    }, 0);
    // Toe and camber tilt the section a little: it grows by less than a hundredth.
    for (const one of [...left, ...right]) {
      expect(outlineArea(one) / half).toBeGreaterThan(0.999);
      expect(outlineArea(one) / half).toBeLessThan(1.01);
    }
    const mean = (figure: typeof left) =>
      figure
        .flatMap(({ points }) => [...points].filter((_, i) => i % 2 === 0))
        .reduce((a, b) => Math.max(a, Math.abs(b)), 0);
    expect(mean(right)).toBeCloseTo(mean(left), 2);
  });
});

describe("parts where they stand", () => {
  it("the right side is the mirror image of what is typed for the left, solids still solid", () => {
    const [rail] = placedBody(
      [{ name: "rail", side: "both", kind: "box", min: [-1, 2, 3], max: [4, 5, 6] }],
      "right",
    );
    expect(rail!.part).toMatchObject({ min: [-1, -5, 3], max: [4, -2, 6] });
    expect(meshVolume(mirroredBlock)).toBeCloseTo(meshVolume(block), 6);
    expect(placedBody(demoSetup().truck.body, "left").map(({ part }) => part)).toEqual(
      demoSetup().truck.body,
    );
  });
});
