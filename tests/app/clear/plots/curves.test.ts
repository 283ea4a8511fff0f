import { describe, expect, it } from "vitest";
import { plotRange } from "../../../../src/app/clear/plots/plotRange.ts";
import { plotsCsv } from "../../../../src/app/clear/plots/plotsCsv.ts";
import { nearestIndex, valueAt } from "../../../../src/app/clear/plots/valueAt.ts";
import type { PlotSpec, Series } from "../../../../src/app/parts/plotNumbers.ts";

const DEG = Math.PI / 180;

function curve(name: string, ...points: readonly (readonly [number, number | null])[]): Series {
  return { name, points: points.map(([x, y]) => ({ x, y })), line: "solid", isMain: true };
}

function plot(measure: "length" | "angle", ...series: readonly Series[]): PlotSpec {
  return {
    ...{ id: "p", title: "Camber, over travel", note: "", series },
    x: { label: "travel", measure: "length" },
    y: { label: "camber", measure },
  };
}

describe("a curve read at a place", () => {
  const holed = curve("left", [0, 10], [10, 30], [20, null], [30, 50], [40, 50]);

  it.each([
    [0, 10],
    [2.5, 15],
    [10, 30],
    [35, 50],
    [40, 50],
  ])("at %d is %d, straight between its points", (x, y) => {
    expect(valueAt(holed, x)).toBe(y);
  });

  it.each([-0.1, 12, 20, 29.9, 40.1])("at %d, in a hole or beyond its ends, is nothing", (x) => {
    expect(valueAt(holed, x)).toBeNull();
  });
});

describe("the nearest of values", () => {
  it.each([
    [-100, 0],
    [0.4, 0],
    [0.6, 1],
    [7, 2],
    [1e9, 3],
  ])("to %d is number %i", (wanted, number) => {
    expect(nearestIndex([0, 1, 5, 10], wanted)).toBe(number);
  });

  it("is the first of two as near", () => expect(nearestIndex([0, 2], 1)).toBe(0));
});

describe("a plot's span", () => {
  it("holds every curve with room above and below, holes left out", () => {
    const { low, high } = plotRange(plot("length", curve("a", [0, -20], [1, null]), curve("b", [0, 80])));
    expect(low).toBeCloseTo(-28, 12);
    expect(high).toBeCloseTo(88, 12);
  });

  it("shows a level curve as level, and is one about nothing where there is no number", () => {
    const level = plotRange(plot("length", curve("a", [0, 5], [1, 5.0001])));
    expect(level.high - level.low).toBeCloseTo(1.16, 9);
    const angle = plotRange(plot("angle", curve("a", [0, DEG])));
    expect((angle.high - angle.low) / DEG).toBeCloseTo(0.116, 9);
    expect(plotRange(plot("length", curve("a", [0, null])))).toEqual({ low: -1, high: 1 });
  });
});

describe("plots as CSV", () => {
  const plots = [plot("angle", curve('left, "aligned"', [25.4, -DEG], [50.8, null]))];

  it("have a line a point in the units asked for, quoted as RFC 4180 has it, a hole left empty", () => {
    const [head, first, second, end] = plotsCsv(plots, "in").split("\r\n");
    expect(head).toBe("plot,curve,along,at,unit of at,what,value,unit of value");
    expect(first).toMatch(/^"Camber, over travel","left, ""aligned""",travel,1,in,camber,-1(\.0+\d*)?,deg$/);
    expect(second).toBe('"Camber, over travel","left, ""aligned""",travel,2,in,camber,,deg');
    expect(end).toBe("");
    expect(plotsCsv(plots, "mm")).toContain(",25.4,mm,");
  });

  it("never tells a gap as more than it is, and any other length to the nearest", () => {
    const lengths = plot("length", curve("lip", [0, 0.9999], [1, -0.0001]));
    const values = (spec: PlotSpec) =>
      plotsCsv([spec], "mm")
        .trim()
        .split("\r\n")
        .slice(1)
        .map((line) => Number(line.split(",").at(-2)));
    expect(values({ ...lengths, title: "Gap", of: "gap" })).toEqual([0.999, -0.001]);
    expect(values({ ...lengths, title: "Scrub" })).toEqual([1, 0]);
  });
});
