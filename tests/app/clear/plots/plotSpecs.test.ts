import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { alignmentPlot, alignmentPlots } from "../../../../src/app/clear/plots/alignmentPlots.ts";
import { bandEndText, readBandEnd } from "../../../../src/app/clear/plots/bandEnd.ts";
import { readAt, slopeAt } from "../../../../src/app/clear/plots/curveSlope.ts";
import { gapOverTravel } from "../../../../src/app/clear/plots/gapPlots.ts";
import { readBands } from "../../../../src/app/clear/plots/plotBands.ts";
import { readPlotChoice } from "../../../../src/app/clear/plots/plotChoice.ts";
import { moved, plotBox, plotFrame, wholeSpan, zoomed } from "../../../../src/app/clear/plots/plotFrame.ts";
import { plotRange } from "../../../../src/app/clear/plots/plotRange.ts";
import { plotNames, plotSpec } from "../../../../src/app/clear/plots/plotSpecs.ts";
import type { PlotSpec } from "../../../../src/app/parts/plotNumbers.ts";
import { type Truck, truckOf } from "../../../../src/app/state/truck.ts";
import { wholeSweep } from "../../../../src/studies/curves/wholeSweep.ts";
import { solvePose } from "../../../../src/suspension/solvePose.ts";

const SHARED = join(import.meta.dirname, "..", "..", "..", "..", "shared");

function truck(file: string, variant: string | null = null): Truck {
  const made = truckOf(readFileSync(join(SHARED, file), "utf8"), file, variant);
  if (!made.ok) throw new Error(made.issues[0]!.mend);
  return made.value;
}

const limits = truck("half-ton-limits.json");
const demo = truck("half-ton-on-air.json");
const narrow = truck("half-ton-on-air.json", "narrow hub face");

/** A plot of the truck with limits, which has every curve. */
function plot(id: string): PlotSpec {
  const spec = alignmentPlot(id, limits, []);
  if (spec === null) throw new Error(`no plot ${id}`);
  return spec;
}

describe("curves over travel", () => {
  const sweep = wholeSweep(limits.model, 49);
  const left = (i: number) => {
    const row = sweep.byTravel[i]!;
    if (!row.ok) throw new Error("out of reach");
    return row.left;
  };

  it.each<[string, number, (row: number) => number | null | undefined]>([
    ["camber", 0, (i) => left(i).camber],
    ["kingpin", 0, (i) => left(i).kingpinInclination],
    ["trail", 0, (i) => left(i).mechanicalTrail],
    ["roll-center", 0, (i) => sweep.suspension[i]!.rollCenter?.height],
    ["instant-center", 0, (i) => sweep.suspension[i]!.left?.instantCenter?.z],
    ["instant-center-y", 0, (i) => sweep.suspension[i]!.left?.instantCenter?.y],
    ["motion-ratio", 0, (i) => sweep.suspension[i]!.left?.spring?.motionRatio],
    ["motion-ratio", 1, (i) => sweep.suspension[i]!.left?.shock?.motionRatio],
    ["wheel-rate", 0, (i) => sweep.suspension[i]!.left?.spring?.wheelRate],
    ["shock-travel", 0, (i) => sweep.suspension[i]!.left?.shock?.travel],
  ] as [string, number, (row: number) => number | null][])(
    "of %s (%i) are those of the sweep",
    (id, curve, read) => {
      const { points } = plot(id).series[curve]!;
      expect(points).toHaveLength(49);
      let told = 0;
      for (const [i, { x, y }] of points.entries()) {
        expect(x).toBeCloseTo(sweep.byTravel[i]!.travel, 9);
        if (y === null) continue;
        told++;
        expect(y).toBeCloseTo(read(i)!, 6);
      }
      expect(told).toBeGreaterThan(20);
    },
  );

  it("have the exact gains for slopes at the cursor", () => {
    for (const [i, { travel, left }] of sweep.suspension.entries()) {
      if (i === 0 || i === 48) continue;
      const [camber, toe] = [plot("camber"), plot("toe")];
      expect(slopeAt(camber, camber.series[0]!, travel)).toBeCloseTo(left!.camberGain, 7);
      expect(slopeAt(toe, toe.series[0]!, travel)).toBeCloseTo(left!.toeGain, 7);
    }
    const steered = plot("camber-steer");
    expect(slopeAt(steered, steered.series[0]!, 0.2)).toBeNull();
  });

  it("are read exactly between their points, and nowhere beyond their ends", () => {
    const { series } = plot("toe");
    const pose = solvePose(limits.model.frontEnd, 12.345, 0);
    expect(readAt(series[0]!, 12.345)).toBe(pose.ok && pose.left.toe);
    expect(readAt(series[0]!, limits.setup.travel.bump + 1)).toBeNull();
  });

  it("are offered where the truck says what they take", () => {
    const ids = (of: Truck) => plotNames(of).map(({ id }) => id);
    expect(ids(limits)).toEqual(
      expect.arrayContaining(["motion-ratio", "wheel-rate", "shock-travel", "roll-sideways"]),
    );
    for (const id of ["motion-ratio", "wheel-rate", "shock-travel"]) {
      expect(ids(demo)).not.toContain(id);
      expect(alignmentPlot(id, demo, [])).toBeNull();
    }
    const ask = { truck: limits, others: [], scale: "angle", travel: 0, steer: 0 } as const;
    for (const id of ids(limits)) expect(plotSpec(id, ask)!.series[0]!.points.length, id).toBeGreaterThan(10);
  });
});

describe("curves of several trucks over each other", () => {
  const others = [
    { name: "narrow hub face", truck: narrow },
    { name: "again", truck: demo },
  ];

  it("have one look each, the same in every plot", () => {
    for (const spec of alignmentPlots(demo, others)) {
      const looks = new Map(spec.series.map(({ name, of }) => [name, of]));
      expect(looks.get("narrow hub face"), spec.id).toBe(1);
      expect(looks.get("again"), spec.id).toBe(2);
    }
    const gaps = gapOverTravel(demo, 0, others);
    expect(gaps.series.map(({ name, of }) => [name, of])).toEqual([
      ["current truck", 0],
      ["narrow hub face", 1],
      ["again", 2],
    ]);
  });

  it("of gaps are the least of each truck's parts that move against it", () => {
    const alone = gapOverTravel(demo, 0.3, []);
    const [shown] = gapOverTravel(demo, 0.3, others).series;
    for (const [i, { y }] of shown!.points.entries())
      expect(y).toBe(
        Math.min(
          ...alone.series
            .filter(({ points }) => new Set(points.map((point) => point.y)).size > 1)
            .map(({ points }) => points[i]!.y!),
        ),
      );
  });
});

describe("a scale of wheel angle", () => {
  it("leads from the steering to the left wheel's angle and back", () => {
    const { x, series } = alignmentPlot("camber-steer", limits, [], "angle")!;
    for (const steer of [-1, -0.5, 0, 0.25, 1]) {
      const pose = solvePose(limits.model.frontEnd, 0, steer);
      if (!pose.ok) throw new Error("out of reach");
      expect(x.fromInput!(steer)).toBeCloseTo(pose.left.steerAngle, 4);
      expect(x.toInput!(x.fromInput!(steer))).toBeCloseTo(steer, 9);
      expect(readAt(series[1]!, x.fromInput!(steer))).toBeCloseTo(pose.right.camber, 9);
    }
  });
});

describe("looking closer", () => {
  const spec = plot("camber");
  const { low, high } = wholeSpan(spec);
  const span = high - low;

  it("keeps the place it is about, stays within the scale, and ends with all of it", () => {
    const half = zoomed(spec, null, low + 0.25 * span, 2)!;
    expect(half.x.high - half.x.low).toBeCloseTo(0.5 * span, 9);
    expect((low + 0.25 * span - half.x.low) / (half.x.high - half.x.low)).toBeCloseTo(0.25, 9);
    const end = moved(spec, half, 5);
    expect(end.x.high).toBeCloseTo(high, 9);
    expect(end.x.high - end.x.low).toBeCloseTo(0.5 * span, 9);
    expect(zoomed(spec, half, 0, 0.5)).toBeNull();
    let closest = half;
    for (let i = 0; i < 20; i++) closest = zoomed(spec, closest, 0, 2)!;
    expect(closest.x.high - closest.x.low).toBeCloseTo(span / 64, 9);
  });

  it("fits the scale to what the curves do there, a wanted band with it", () => {
    const near = plotRange(spec, { low: -10, high: 10 });
    const whole = plotRange(spec);
    expect(near.high - near.low).toBeLessThan(0.5 * (whole.high - whole.low));
    expect(plotRange(spec, null, { high: 1 }).high).toBeGreaterThan(1);
    const frame = plotFrame(spec, plotBox(400, 240), { x: { low: -10, high: 10 }, y: { low: 0, high: 1 } });
    expect([frame.x(-10), frame.x(10)]).toEqual([54, 386]);
    expect([frame.y(0), frame.y(1)]).toEqual([204, 20]);
    const steered = plotFrame(plot("camber-steer"), plotBox(400, 240), null);
    expect(steered.x(1)).toBeLessThan(steered.x(-1));
  });
});

describe("where the rest of the pose stands", () => {
  it("is said by every plot over travel that steering would change, and by those over steering", () => {
    for (const spec of alignmentPlots(limits, [])) {
      const isOfTravelAlone = ["motion-ratio", "wheel-rate", "shock-travel"].includes(spec.id);
      const stands =
        spec.id.endsWith("-steer") || spec.id === "ackermann"
          ? "at the height as measured"
          : "straight ahead";
      expect(spec.stands, spec.id).toBe(isOfTravelAlone ? undefined : stands);
      if (!isOfTravelAlone) expect(spec.note, spec.id).toMatch(new RegExp(`^${stands}; `));
    }
  });

  it("follows the pose where the plot does", () => {
    expect(gapOverTravel(demo, 0).stands).toBe("straight ahead");
    expect(gapOverTravel(demo, 0.44).stands).toMatch(/^steered to 44% of left lock \(left wheel \d+°\)$/);
    expect(gapOverTravel(demo, 0.44).note).toMatch(/^steered to 44% of left lock/);
  });
});

describe("what is wanted of a plot", () => {
  const IN = { units: "in" } as const;

  it.each([
    ["-0.5", "angle", -0.5 * (Math.PI / 180)],
    ["1 1/4", "length", 31.75],
    ["32 mm", "length", 32],
    ["0.62", "ratio", 0.62],
    ["", "length", undefined],
    ["wide", "length", null],
    ["x", "rate", null],
  ] as const)("typed %s as %s is %d", (text, measure, value) => {
    const read = readBandEnd(text, measure, IN);
    if (typeof value === "number") expect(read).toBeCloseTo(value, 12);
    else expect(read).toBe(value);
    if (typeof read === "number")
      expect(readBandEnd(bandEndText(read, measure, IN), measure, IN)).toBeCloseTo(read, 1);
  });

  it("is read from whatever the browser kept", () => {
    expect(readBands({ camber: { low: -1, high: "x" }, toe: 3, scrub: { low: Number.NaN } })).toEqual({
      camber: { low: -1 },
    });
    expect(readBands(null)).toEqual({});
    const first = readPlotChoice(null);
    expect(readPlotChoice({ hidden: ["toe", 3], scale: "x", isDockOpen: 1 })).toEqual({
      ...first,
      hidden: ["toe"],
    });
    expect(readPlotChoice({ docked: [], scale: "lock", isDockOpen: true })).toMatchObject({
      docked: [],
      scale: "lock",
      isDockOpen: true,
    });
  });
});
