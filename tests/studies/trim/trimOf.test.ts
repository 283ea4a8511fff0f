import DxfParser, { type IPolylineEntity } from "dxf-parser";
import { describe, expect, it } from "vitest";
import { pageDxfText } from "../../../src/files/writePageDxf.ts";
import { pageSvgText } from "../../../src/files/writePageSvg.ts";
import { probeRing, ringProbe } from "../../../src/gaps/ring/ringProbe.ts";
import { PAPERS } from "../../../src/studies/drawings/shopFile.ts";
import { trimFiles } from "../../../src/studies/drawings/trimPattern.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance, rangesToCheck } from "../../../src/studies/reports/check.ts";
import { ALL_POSES } from "../../../src/studies/search/sideRange.ts";
import { TriedPose } from "../../../src/studies/search/triedPose.ts";
import { outlineArea } from "../../../src/studies/section/outline.ts";
import { TRIM_MORE, trimOf } from "../../../src/studies/trim/trimOf.ts";
import { POSE } from "../../../src/suspension/poseRow.ts";
import { runs } from "../../runs.ts";
import { demoDocument, lipAlone } from "../demoModel.ts";
import { subjectOf, windowSubject } from "../window/windowSubject.ts";

const { model } = subjectOf(demoDocument(lipAlone()) as object, "lip");
const trim = trimOf(model, "fender lip")!;
const [region] = trim.regions as [(typeof trim.regions)[number]];
const RADIUS = 25.4 / 8;

/** Poses of a plain grid at which a check counts, as wheel centers and axes. */
function plainPoses(of: Model, arms: number, steers: number): readonly Float64Array[] {
  const { left } = rangesToCheck(of, ALL_POSES, Budget.endless()).ranges;
  const tried = new TriedPose(left.wheel, left);
  const poses: Float64Array[] = [];
  for (let i = 0; i <= arms; i++)
    for (let j = 0; j <= steers; j++) {
      const arm = left.armLow + ((left.armHigh - left.armLow) * i) / arms;
      const steer = left.steerLow + ((left.steerHigh - left.steerLow) * j) / steers;
      if (tried.stands(arm, steer) && tried.keeps(arm, steer))
        poses.push(tried.row.slice(POSE.wheelCenter, POSE.wheelCenter + 6));
    }
  return poses;
}

/** Least distance of a place to the ring over poses, by the exact distance to the section alone. */
function sampledDistance(of: Model, poses: readonly Float64Array[], [x, y, z]: readonly number[]): number {
  const probe = ringProbe();
  let least = Number.POSITIVE_INFINITY;
  for (const p of poses) {
    const d = [x! - p[0]!, y! - p[1]!, z! - p[2]!] as const;
    const along = d[0] * p[3]! + d[1] * p[4]! + d[2] * p[5]!;
    const square = d[0] ** 2 + d[1] ** 2 + d[2] ** 2 - along * along;
    probeRing(probe, of.ring, along, Math.sqrt(Math.max(0, square)));
    least = Math.min(least, probe.distance);
  }
  return least;
}

/** Whether a place of the sheet lies in a closed line, by crossings. */
function holds(points: Float64Array, u: number, v: number): boolean {
  let isIn = false;
  for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
    const [u0, v0, u1, v1] = [points[j]!, points[j + 1]!, points[i]!, points[i + 1]!];
    if (v0 > v !== v1 > v && u < u0 + ((v - v0) / (v1 - v0)) * (u1 - u0)) isIn = !isIn;
  }
  return isIn;
}

describe("what of a lip's panel is trimmed", () => {
  it("is one closed strip along the lip, on the sheet through it, turned one way", () => {
    expect(trim.regions).toHaveLength(1);
    expect(region.off).toBe(0);
    expect(region.outlines).toHaveLength(1);
    for (const line of region.outlines) {
      expect(line.closed).toBe(true);
      expect(Math.abs(outlineArea(line))).toBeCloseTo(region.area, 6);
      const { points } = line;
      for (let i = 0; i < points.length; i += 2) {
        const next = (i + 2) % points.length;
        expect(Math.hypot(points[next]! - points[i]!, points[next + 1]! - points[i + 1]!)).toBeGreaterThan(0);
      }
    }
  });

  it("every place of its cut stands the allowance and the lip's radius off the ring, by a plain loop over poses", () => {
    const poses = plainPoses(model, runs(60, 160), runs(90, 240));
    const least = model.setup.allowance + RADIUS;
    const [places] = region.places as [Float64Array];
    const [outline] = region.outlines as [(typeof region.outlines)[number]];
    let cuts = 0;
    for (let i = 0; i < places.length / 3; i += runs(3, 1)) {
      const found = sampledDistance(model, poses, [...places.subarray(3 * i, 3 * i + 3)]);
      // On the lip itself it may be nearer: that is what goes.
      const isCut = found > least;
      if (isCut) cuts++;
      expect(found).toBeLessThan(least + TRIM_MORE + 0.6);
      expect(outline.points.length / 2).toBe(places.length / 3);
    }
    expect(cuts).toBeGreaterThan(10);
  });

  it("what is left of the lip clears by a check, and hardly more is taken than that takes", () => {
    const { left } = trim;
    const body = model.setup.truck.body.map((as, i) => (i === left!.index ? left!.part : as));
    const made = modelOf({ ...model.setup, truck: { ...model.setup.truck, body } }, "trimmed");
    if (!made.ok) throw new TypeError("does not go together");
    expect(checkClearance(model).verdict).toBe("rubs");
    const after = checkClearance(made.value);
    expect(after.verdict).toBe("clear");
    expect(after.worst!.gap).toBeLessThan(model.setup.allowance + 2 * TRIM_MORE);
  });

  it("a place of the panel above the cut keeps its distance, one below it does not", () => {
    const poses = plainPoses(model, 60, 90);
    const [{ points }] = region.outlines as unknown as [{ points: Float64Array }];
    const us = [...points].filter((_, i) => i % 2 === 0);
    const [low, high] = [Math.min(...us), Math.max(...us)];
    const least = model.setup.allowance + RADIUS;
    const [places] = region.places as [Float64Array];
    let looked = 0;
    for (let i = 0; i < points.length; i += 10) {
      const [u, v] = [points[i]!, points[i + 1]!];
      const isTop = !holds(points, u, v + 3) && holds(points, u, v - 3);
      if (!isTop || u < low + 20 || u > high - 20) continue;
      const at = [...places.subarray((3 * i) / 2, (3 * i) / 2 + 3)];
      // The panel stands nearly upright: 3 mm of it is about 3 mm of z.
      expect(sampledDistance(model, poses, [at[0]!, at[1]! + 0.1, at[2]! + 3])).toBeGreaterThan(least);
      expect(sampledDistance(model, poses, [at[0]!, at[1]! - 0.1, at[2]! - 3])).toBeLessThan(
        least + TRIM_MORE,
      );
      looked++;
    }
    expect(looked).toBeGreaterThan(5);
  });

  it("is null of a scan and of what is not there, and where the budget is spent; empty where all clears", () => {
    const whole = windowSubject("half-ton-on-air.json").model;
    expect(trimOf(whole, "inner fender")).toBe(null);
    expect(trimOf(whole, "no such part")).toBe(null);
    let now = 0;
    expect(trimOf(model, "fender lip", { budget: Budget.of(0.01, () => now++) })).toBe(null);
    expect(trimOf(whole, "frame rail")!.regions).toEqual([]);
  });
});

describe("what of a box is trimmed", () => {
  const box = { name: "shelf", kind: "box", min: [-4, 31, 29], max: [4, 35, 33] };
  const { model: boxed } = subjectOf(demoDocument({ truck: { body: [box] } }) as object, "box");
  const cut = trimOf(boxed, "shelf")!;

  it("lies on its faces: each place of a line is on one, the allowance off the ring or on an edge", () => {
    const poses = plainPoses(boxed, 60, 90);
    expect(cut.regions.length).toBeGreaterThan(0);
    expect(cut.left).toBe(null);
    const [min, max] = [box.min.map((v) => v * 25.4), box.max.map((v) => v * 25.4)];
    for (const { places, kind } of cut.regions) {
      expect(kind).toBe("face");
      for (const points of places)
        for (let i = 0; i < points.length; i += 15) {
          const at = [...points.subarray(i, i + 3)];
          const off = at.map((v, axis) => Math.min(Math.abs(v - min[axis]!), Math.abs(v - max[axis]!)));
          const near = off.filter((d) => d < 0.02).length;
          expect(near).toBeGreaterThan(0);
          const found = sampledDistance(boxed, poses, at) - boxed.setup.allowance;
          if (near === 1 && off.filter((d) => d < 3).length === 1)
            expect(Math.abs(found - TRIM_MORE)).toBeLessThan(0.6);
          else expect(found).toBeLessThan(TRIM_MORE + 0.6);
        }
    }
  });
});

describe("trim templates", () => {
  const { files, pages } = trimFiles(trim.regions, model, "letter", "a truck");
  const contentsOf = (ending: string) => files.find(({ file }) => file.endsWith(ending))!.contents;

  it("are an SVG and a DXF a panel, and all on paper", () => {
    expect(files.map(({ file, scale }) => [file, scale])).toEqual([
      ["trim-fender-lip-left.svg", "1:1"],
      ["trim-fender-lip-left.dxf", "1:1"],
      ["trim-templates.pdf", "1:1"],
    ]);
  });

  it("read back by another reader, the DXF's one closed line to cut is the region in its units", () => {
    const dxf = contentsOf(".dxf");
    if (dxf.format !== "dxf") throw new TypeError("no DXF");
    const document = new DxfParser().parseSync(pageDxfText(dxf.page, dxf.units))!;
    const cut = document.entities.filter(({ layer }) => layer.toLowerCase() === "cut") as IPolylineEntity[];
    expect(cut).toHaveLength(1);
    expect(cut[0]!.shape).toBe(true);
    const [{ points }] = region.outlines as unknown as [{ points: Float64Array }];
    expect(cut[0]!.vertices).toHaveLength(points.length / 2);
    cut[0]!.vertices.forEach(({ x, y }, i) => {
      expect(x).toBeCloseTo(points[2 * i]! / 25.4, 4);
      expect(y).toBeCloseTo(points[2 * i + 1]! / 25.4, 4);
    });
  });

  it("the SVG says its size in millimeters, 1:1", () => {
    const svg = contentsOf(".svg");
    if (svg.format !== "svg") throw new TypeError("no SVG");
    const text = pageSvgText(svg.page);
    const [, width, unit, box] = /width="([\d.]+)(mm)"[^>]*viewBox="0 0 ([\d.]+) /.exec(text)!;
    expect([unit, Number(width)]).toEqual(["mm", Number(box)]);
  });

  it("every printed sheet has the bar, 4 in long, and what is to be known before cutting", () => {
    expect(pages.length).toBeGreaterThan(0);
    const { width, height } = PAPERS.letter;
    for (const page of pages) {
      expect([page.width, page.height].sort((a, b) => a - b)).toEqual([width, height].sort((a, b) => a - b));
      const bars = page.lines.filter(({ pen, points }) => pen === "dimension" && points[1] === points[3]);
      expect(bars.some(({ points }) => Math.abs(points[2]! - points[0]! - 101.6) < 1e-9)).toBe(true);
      expect(page.texts.some(({ text }) => /carries nothing/.test(text))).toBe(true);
    }
  });
});
