import { readFileSync } from "node:fs";
import { join } from "node:path";
import { scaleLinear } from "d3-scale";
import { describe, expect, it } from "vitest";
import { gapOverSteer, gapOverTravel } from "../../src/app/clear/plots/gapPlots.ts";
import { labelSpots } from "../../src/app/clear/plots/labelSpots.ts";
import { levelNames } from "../../src/app/clear/plots/levelNames.ts";
import { plotBox, plotFrame } from "../../src/app/clear/plots/plotFrame.ts";
import { plotRange } from "../../src/app/clear/plots/plotRange.ts";
import { looksOf } from "../../src/app/clear/plots/variantLooks.ts";
import type { PlotSpec } from "../../src/app/parts/plotNumbers.ts";
import { truckOf } from "../../src/app/state/truck.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";

const ROOM = { left: 46, right: 340, top: 10, bottom: 186 };

/** Names of a plot's curves as boxes, each letter as wide as the drawing's narrow font has it at the most. */
function boxes(spec: PlotSpec) {
  const { low, high } = plotRange(spec);
  const xs = spec.series[0]!.points.map((point) => point.x);
  const x = scaleLinear([xs[0]!, xs.at(-1)!], [ROOM.left, ROOM.right]);
  const y = scaleLinear([low, high], [ROOM.bottom, ROOM.top]);
  return labelSpots(spec.series, x, y, ROOM).map((spot) => {
    const half = 0.5 * 5.2 * spot.name.length;
    return {
      name: spot.name,
      left: spot.x - half,
      right: spot.x + half,
      top: spot.y - 9,
      bottom: spot.y + 3,
    };
  });
}

function demo() {
  const path = join(import.meta.dirname, "..", "..", "shared", "half-ton-on-air.json");
  const read = truckOf(readFileSync(path, "utf8"), "half-ton-on-air.json", null);
  if (!read.ok) throw new Error("the example does not go together");
  return read.value;
}

describe("names of many curves", () => {
  const heights = [0, 2, 4, 6, 8, 10, 90];
  const series = heights.map((height, i) => ({
    name: `variant ${i}`,
    line: "solid" as const,
    isMain: i === 0,
    points: [0, 1].map((x) => ({ x, y: height })),
  }));
  const x = scaleLinear([0, 1], [ROOM.left, ROOM.right]);
  const y = scaleLinear([-10, 100], [ROOM.bottom, ROOM.top]);

  it("are left out where another curve is under them or nearer, and stand beside a curve that runs apart", () => {
    const named = labelSpots(series, x, y, ROOM);
    expect(named.map(({ name }) => name)).toContain("variant 6");
    expect(named.length).toBeLessThan(series.length);
    for (const spot of named) {
      const middle = spot.y - 3;
      const [nearest] = [...heights.keys()].sort(
        (a, b) => Math.abs(y(heights[a]!) - middle) - Math.abs(y(heights[b]!) - middle),
      );
      expect(spot.name).toBe(`variant ${nearest}`);
    }
  });

  it("are fewer in a small plot: of five, those with others close on both sides are left out", () => {
    const five = [...series.slice(0, 4), series[6]!];
    const small = { ...ROOM, right: ROOM.left + 150 };
    const narrow = scaleLinear([0, 1], [small.left, small.right]);
    expect(labelSpots(five, x, y, ROOM)).toHaveLength(5);
    const named = labelSpots(five, narrow, y, small).map(({ name }) => name);
    expect(named.sort()).toEqual(["variant 0", "variant 3", "variant 6"]);
  });

  it("keep off what has a name there already", () => {
    const two = [series[0]!, series[6]!];
    const [, free] = labelSpots(two, x, y, ROOM);
    const box = { left: free!.x - 40, right: free!.x + 40, top: free!.y - 9, bottom: free!.y + 3 };
    const [, moved] = labelSpots(two, x, y, ROOM, { taken: [box], levels: [] });
    expect(Math.hypot(moved!.x - free!.x, moved!.y - free!.y)).toBeGreaterThan(10);
    const [, off] = labelSpots(two, x, y, ROOM, { taken: [], levels: [free!.y - 3] });
    expect(Math.abs(off!.y - free!.y)).toBeGreaterThan(9);
  });
});

describe("a name with no room of its own", () => {
  const level = (name: string, y: number) => ({
    name,
    line: "solid" as const,
    isMain: name === "far",
    points: [0, 1].map((x) => ({ x, y })),
  });
  const x = scaleLinear([0, 1], [ROOM.left, ROOM.right]);
  const y = scaleLinear([0, 176], [ROOM.bottom, ROOM.top]);
  const named = (...series: PlotSpec["series"]) => labelSpots(series, x, y, ROOM).map(({ name }) => name);

  it("is left out: it lies on no other curve, nor beyond one, nor off the plot", () => {
    expect(named(level("far", 150), level("lowest", 8), level("next", 18))).toEqual(["far", "next"]);
    expect(named(level("far", 150), level("lower", 40), level("next", 50))).toEqual(["far", "lower", "next"]);
  });

  it("is not there while its curve is out of sight", () => {
    expect(named(level("far", 150), level("beyond", 200), level("below", -40))).toEqual(["far"]);
  });
});

describe("levels drawn across", () => {
  const gaps = (low: number): PlotSpec => ({
    id: "gap",
    title: "Gap",
    note: "",
    x: { label: "travel", measure: "length" },
    y: { label: "gap", measure: "length" },
    series: [
      { name: "lip", line: "solid", isMain: true, points: [0, 10].map((x) => ({ x, y: low + 20 * x })) },
    ],
    levels: [
      { at: 0, name: "touches" },
      { at: 6, name: "allowance" },
    ],
  });

  it.each([-30, 0, 5, 60])("are named inside the frame, also where the least gap is %d mm", (low) => {
    const spec = gaps(low);
    for (const height of [136, 156, 190, 600]) {
      const frame = plotFrame(spec, plotBox(300, height), null);
      const names = levelNames(spec.levels!, spec.series, frame);
      expect(names.map(({ name }) => name).join("; ")).toMatch(/touches.*allowance/);
      for (const { box } of names) {
        expect(box.top).toBeGreaterThanOrEqual(frame.box.top);
        expect(box.bottom).toBeLessThanOrEqual(height - frame.box.bottom + 1);
      }
    }
  });
});

describe("a variant laid over others", () => {
  const path = join(import.meta.dirname, "..", "..", "shared", "half-ton-on-air.json");
  const store = createWorkbenchStore(readFileSync(path, "utf8"), "half-ton-on-air.json");
  const made = (variant: string | null) => {
    store.getState().chooseVariant(variant);
    return store.getState().truck!;
  };
  const [current, hub, pin] = [null, "narrow hub face", "steeper pin"].map(made);

  it("has one color and mark, whatever stands beside it and whichever is shown", () => {
    const looks = [
      looksOf([current!, pin!])[1],
      looksOf([current!, hub!, pin!])[2],
      looksOf([hub!, current!, pin!])[2],
      looksOf([pin!, current!])[0],
    ];
    expect(new Set(looks.map((look) => look!.of)).size).toBe(1);
    expect(looks.map((look) => look!.isMain)).toEqual([false, false, false, true]);
    expect(looksOf([hub!, hub!]).map(({ of }) => of)).toEqual([0, 1]);
  });
});

describe("names of curves", () => {
  const truck = demo();
  const { droop, bump } = truck.setup.travel;
  const specs = [0, 0.25, 0.5, 0.75, 1].flatMap((share) => [
    gapOverSteer(truck, droop + share * (bump - droop)),
    gapOverTravel(truck, 2 * share - 1),
  ]);

  it.each(specs.map((spec, i) => [`${spec.id} ${i}`, spec] as const))(
    "never lie on each other nor leave the plot, and every curve has one: %s",
    (_, spec) => {
      const named = boxes(spec);
      expect(named.map(({ name }) => name).sort()).toEqual(spec.series.map(({ name }) => name).sort());
      for (const [i, a] of named.entries()) {
        expect(a.left).toBeGreaterThanOrEqual(ROOM.left);
        expect(a.right).toBeLessThanOrEqual(ROOM.right);
        expect(a.top).toBeGreaterThanOrEqual(ROOM.top);
        expect(a.bottom).toBeLessThanOrEqual(ROOM.bottom);
        for (const b of named.slice(i + 1)) {
          const isApart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
          expect(isApart, `${a.name} on ${b.name}`).toBe(true);
        }
      }
    },
  );
});
