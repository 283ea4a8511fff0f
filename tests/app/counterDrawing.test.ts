import { describe, expect, it } from "vitest";
import { bodyDrawing } from "../../src/app/show/counter/bodyDrawing.ts";
import { type SheetPoint, wheelDrawing } from "../../src/app/show/counter/wheelDrawing.ts";
import { type Truck, truckOf } from "../../src/app/state/truck.ts";
import { addScaled, cross, normalize, type Vec3 } from "../../src/geometry/vec.ts";
import { steerLimits } from "../../src/studies/map/steerLimits.ts";
import { nearestBodyGap, pictureFacts, tellingPose } from "../../src/studies/wording/pictureFacts.ts";
import { type SolvedPose, solvePose } from "../../src/suspension/solvePose.ts";
import { exampleDocument, exampleText } from "./exampleText.ts";

const IN = 25.4;

function truckFrom(text: string): Truck {
  const made = truckOf(text, "test.json", null);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

const { model } = truckFrom(exampleText);

function poseOf(travel: number, steer: number): SolvedPose {
  const pose = solvePose(model.frontEnd, travel, steer);
  if (!pose.ok) throw new Error("the test's own truck must reach its poses");
  return pose;
}

/** How far a point lies outside a convex outline, mm; negative = inside. Whichever way round it runs. */
function outside(outline: readonly SheetPoint[], [u, v]: SheetPoint): number {
  let area = 0;
  outline.forEach(([au, av], i) => {
    const [bu, bv] = outline[(i + 1) % outline.length]!;
    area += au * bv - bu * av;
  });
  const way = Math.sign(area);
  return Math.max(
    ...outline.map(([au, av], i) => {
      const [bu, bv] = outline[(i + 1) % outline.length]!;
      return (-way * ((bu - au) * (v - av) - (bv - av) * (u - au))) / Math.hypot(bu - au, bv - av);
    }),
  );
}

describe("the wheel as drawn", () => {
  it("covers every point of tire and rim, and its edge is theirs", () => {
    for (const [view, steer] of [
      ["front", 0],
      ["above", 0.6],
    ] as const) {
      const pose = poseOf(40, steer);
      const plane = pose.left.wheelCenter[view === "front" ? 0 : 2];
      const { outline, cut } = wheelDrawing(model, pose, "left", view, plane);
      // What is cut lies inside what is seen.
      for (const place of cut.flat()) expect(outside(outline, place)).toBeLessThan(0.25);
      expect(cut.length, view).toBeGreaterThan(0);
      const { wheelCenter, wheelAxis } = pose.left;
      // Another base across the axle than the drawing's, and other angles.
      const e = normalize(cross(wheelAxis, [0.3, 0.1, 0.9]));
      const f = cross(wheelAxis, e);
      let farthest = -Infinity;
      for (const [x, r] of model.ring.outline) {
        for (let k = 0; k < 720; k++) {
          const angle = (k * Math.PI) / 360;
          const along = addScaled(wheelCenter, wheelAxis, x);
          const [px, py, pz]: Vec3 = addScaled(
            addScaled(along, e, r * Math.cos(angle)),
            f,
            r * Math.sin(angle),
          );
          farthest = Math.max(farthest, outside(outline, view === "front" ? [py, -pz] : [py, px]));
        }
      }
      // The drawing's circles have 96 corners: r (1 − cos(π / 96)) at most lies outside them, 0.2 mm.
      expect(farthest, view).toBeLessThan(0.25);
      expect(farthest, view).toBeGreaterThan(-0.05);
    }
  });

  it("shows the hub face as far from the steering axis as the setup says, where it is seen square", () => {
    const pose = poseOf(0, 0);
    const { pinStart, hubFace } = wheelDrawing(model, pose, "left", "front", 0);
    // Toe and camber of some tenths of a degree shorten it by less than a hundredth of a millimeter.
    const seen = Math.hypot(hubFace[0] - pinStart[0], hubFace[1] - pinStart[1]);
    expect(seen).toBeCloseTo(6.125 * IN, 1);
  });

  it("draws the right wheel as the left one's mirror image", () => {
    const drawn = (pose: SolvedPose, side: "left" | "right") =>
      wheelDrawing(model, pose, side, "above", 500, pictureFacts(model, pose, side, null).mark);
    const left = drawn(poseOf(60, 0.4), "left");
    const right = drawn(poseOf(60, -0.4), "right");
    expect(right.hubFace[0]).toBeCloseTo(left.hubFace[0], 6);
    expect(right.hubFace[1]).toBeCloseTo(left.hubFace[1], 6);
    expect(right.gap?.entry.gap).toBeCloseTo(left.gap!.entry.gap, 6);
    expect(right.gap?.onPart[0]).toBeCloseTo(left.gap!.onPart[0], 4);
    const outermost = ({ cut }: typeof left) => Math.max(...cut.flat().map(([u]) => u));
    expect(outermost(right)).toBeCloseTo(outermost(left), 4);
  });

  it("shows outboard to the right and forward down the sheet", () => {
    const pose = poseOf(0, 0);
    const above = wheelDrawing(model, pose, "left", "above", 500);
    expect(above.hubFace[0]).toBeGreaterThan(above.pinStart[0]);
    const lines = bodyDrawing(model, "left", "above", 700);
    const lip = lines.find(({ name }) => name === "lip")!;
    // At 700 mm it is cut twice, about 2 x 0.1 in across; above that it is cut away, below it is seen.
    expect(lip.cuts).toHaveLength(2);
    for (const { points, isClosed } of lip.cuts) {
      expect(isClosed).toBe(true);
      const us = points.map(([u]) => u);
      expect(Math.max(...us) - Math.min(...us)).toBeCloseTo(0.2 * IN, 1);
    }
    // Its first point is the foremost: 14 in ahead, 34 in out.
    const foremost = lip.beyond.flatMap(({ points }) => points).reduce((a, b) => (b[1] > a[1] ? b : a));
    expect(foremost[0]).toBeCloseTo(34 * IN, 6);
    expect(foremost[1]).toBeCloseTo(14 * IN, 6);
    expect(lip.before).toHaveLength(1);
  });

  it("marks the nearest body part on that side", () => {
    const pose = poseOf(82, 0);
    const { gap } = wheelDrawing(
      model,
      pose,
      "left",
      "front",
      0,
      pictureFacts(model, pose, "left", null).mark,
    );
    expect(gap?.entry).toEqual(nearestBodyGap(model, pose, "left"));
    const apart = Math.hypot(gap!.onPart[0] - gap!.onRing[0], gap!.onPart[1] - gap!.onRing[1]);
    // Seen from the front a gap is never longer than it is.
    expect(apart).toBeLessThanOrEqual(Math.abs(gap!.entry.gap) + 1e-6);
  });
});

describe("the body as drawn", () => {
  it("shows a box's sides, and a mesh where it is cut", () => {
    const roof = {
      ...{
        name: "roof",
        kind: "mesh",
        vertices: [
          [10, 20, 30],
          [10, 34, 32],
          [-10, 20, 30],
          [-10, 34, 32],
        ],
      },
      triangles: [
        [0, 1, 2],
        [1, 3, 2],
      ],
    };
    const { truck } = exampleDocument;
    const text = JSON.stringify({ ...exampleDocument, truck: { ...truck, body: [...truck.body, roof] } });
    const lines = bodyDrawing(truckFrom(text).model, "left", "front", 0);
    const rail = lines.find(({ name }) => name === "rail")!;
    expect(rail.cuts[0]!.isClosed).toBe(true);
    const inches = rail.cuts[0]!.points.map(([u, v]) =>
      [u / IN, v / IN].map((one) => Number(one.toFixed(6))),
    );
    expect(inches).toEqual(
      expect.arrayContaining([
        [12, -16],
        [15, -16],
        [15, -22],
        [12, -22],
      ]),
    );
    const cut = lines.find(({ name }) => name === "roof")!;
    // At the axle line it runs from (20, 30) in to (34, 32) in.
    const us = cut.cuts[0]!.points.map(([u]) => u / IN);
    expect(Math.min(...us)).toBeCloseTo(20, 6);
    expect(Math.max(...us)).toBeCloseTo(34, 6);
    for (const [u, v] of cut.cuts[0]!.points) expect(-v / IN).toBeCloseTo(30 + (u / IN - 20) / 7, 6);
  });
});

describe("the steer worth a picture", () => {
  it("is where something touches first, and that is what is marked", () => {
    const travel = 0;
    const [steering] = steerLimits(model, [travel])!;
    const found = tellingPose([{ model, steering: steering! }], travel);
    const drawnAt = (steer: number) => {
      const pose = poseOf(travel, steer);
      const { mark } = pictureFacts(model, pose, found.side, found.touches?.name ?? null);
      return wheelDrawing(model, pose, found.side, "above", 500, mark);
    };
    const drawing = drawnAt(found.steer);
    expect(drawing.gap?.entry.part).toBe(found.touches?.name);
    expect(Math.abs(drawing.gap!.entry.gap)).toBeLessThan(0.05);
    // Nearer to straight ahead it does not touch.
    const before = drawnAt(0.8 * found.steer);
    expect(before.gap!.entry.part).toBe(found.touches?.name);
    expect(before.gap!.entry.gap).toBeGreaterThan(0.05);
  });

  it("is the lock where the left wheel comes nearer, when nothing touches or nothing is known yet", () => {
    const found = tellingPose([{ model, steering: null }], -50);
    expect(found).toMatchObject({ side: "left", touches: null });
    const gapAt = (steer: number) => nearestBodyGap(model, poseOf(-50, steer), "left")!.gap;
    expect(Math.abs(found.steer)).toBe(1);
    expect(gapAt(found.steer)).toBeLessThanOrEqual(gapAt(-found.steer));
  });
});
