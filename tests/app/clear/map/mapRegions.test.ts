import { describe, expect, it } from "vitest";
import { mapFrameOf } from "../../../../src/app/clear/map/mapFrame.ts";
import { bandPaths, type MapRegions, mapRegions } from "../../../../src/app/clear/map/mapRegions.ts";
import type { DrawnMap } from "../../../../src/app/work/drawnMap.ts";
import type { ClearanceMap, MapSide } from "../../../../src/studies/map/clearanceMap.ts";
import { evenly } from "../../../../src/studies/numeric/evenly.ts";

const ALLOWANCE = 6;
const DROOP = -60;
const BUMP = 60;
const frame = mapFrameOf(DROOP, BUMP);

/** Of each cell a gap in mm, `o` not looked at, `x` out of reach, `p` past a limit and 10 mm; rows from droop to bump. */
function drawnOf(text: string): DrawnMap {
  const rows = text
    .trim()
    .split("\n")
    .map((row) => row.trim().split(/\s+/));
  const cells = rows.flat();
  const cols = rows[0]!.length;
  const gap = Float64Array.from(cells, (cell) => (cell === "p" ? 10 : Number(cell)));
  const nothing = new Float64Array(cells.length);
  const side: MapSide = {
    gap,
    moving: gap,
    together: Number.POSITIVE_INFINITY,
    pair: new Int16Array(cells.length),
    point: new Float64Array(3 * cells.length),
  };
  const map: ClearanceMap = {
    travels: evenly(DROOP, BUMP, rows.length),
    steers: evenly(-1, 1, cols),
    left: side,
    right: side,
    reach: {
      status: Uint8Array.from(cells, (cell) => (cell === "x" ? 2 : 0)),
      side: new Uint8Array(cells.length),
      along: new Uint8Array(cells.length),
      startsAt: nothing,
    },
    pastLimit: cells.includes("p")
      ? {
          share: Float64Array.from(cells, (cell) => (cell === "p" ? -1 : 1)),
          passed: new Int16Array(cells.length),
          limits: [{ name: "droop strap", side: "left" }],
        }
      : null,
    ...(cells.includes("o") ? { cutShort: true as const } : {}),
  };
  const lines = { touch: [], allowance: [] };
  return {
    map,
    gap: { both: gap, left: gap, right: gap },
    borders: [],
    limitBorder: [],
    lines: { both: lines, left: lines, right: lines },
  };
}

/** Whether a path, filled, covers what stands at (row, col) of the map; between cells by shares. */
function covers(path: string, map: ClearanceMap, row: number, col: number): boolean {
  const x = frame.x(-1 + (2 * col) / (map.steers.length - 1));
  const y = frame.y(DROOP + ((BUMP - DROOP) * row) / (map.travels.length - 1));
  let isInside = false;
  for (const ring of path.split("M").slice(1)) {
    const points = ring
      .replace("Z", "")
      .split("L")
      .map((point) => point.split(" ").map(Number) as [number, number]);
    points.forEach(([x1, y1], i) => {
      const [x2, y2] = points[(i + 1) % points.length]!;
      if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) isInside = !isInside;
    });
  }
  return isInside;
}

/** Names of the regions that cover a place; none: it is drawn as rubbing. */
function at(drawn: DrawnMap, regions: MapRegions, row: number, col: number): string[] {
  const named = { clears: regions.bands[0]!, allowance: regions.bands[1] ?? "", ...regions };
  return (["clears", "allowance", "open", "unreached", "past"] as const).filter((name) =>
    covers(named[name], drawn.map, row, col),
  );
}

/** Places between the middles of the outermost cells, on no cell and no line between two. */
function places({ map }: DrawnMap): (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  for (let row = 0.06; row < map.travels.length - 1; row += 0.13)
    for (let col = 0.07; col < map.steers.length - 1; col += 0.13) found.push([row, col]);
  return found;
}

describe("the map's regions", () => {
  it.each([
    ["the border of reach", "40 40 40 x x\n40 40 x x x\n40 40 40 40 x\n40 40 40 40 40"],
    ["what was not looked at", "40 40 40 40 40\no o o o o\no o 40 40 o\n40 40 40 40 40"],
    ["both at once", "40 40 40 x x\no o o o x\n40 40 40 o x\n40 40 40 40 40"],
    ["a border along every edge", "x x x x x\nx 40 40 40 x\nx 40 40 40 x\nx x x x x"],
  ])("leave nothing that could be taken for rubbing beside %s where nothing rubs", (_, text) => {
    const drawn = drawnOf(text);
    const regions = mapRegions(drawn, "both", ALLOWANCE, frame);
    const red = places(drawn).filter(([row, col]) => at(drawn, regions, row, col).length === 0);
    expect(red).toEqual([]);
  });

  it("cover each cell by what is known of it, and a cell that rubs by nothing", () => {
    const drawn = drawnOf("40 40 3 -2 -2\n40 40 3 -2 -2\no 40 40 40 x\np 40 40 x x");
    const regions = mapRegions(drawn, "both", ALLOWANCE, frame);
    const near = (row: number, col: number) => at(drawn, regions, row + 1e-3, col + 1e-3);
    expect(near(0, 1)).toEqual(["clears", "allowance"]);
    expect(near(0, 2)).toEqual(["clears"]);
    expect(near(0, 3)).toEqual([]);
    expect(near(2, 0)).toContain("open");
    expect(near(2, 3.9)).toContain("unreached");
    expect(near(2.9, 0)).toContain("past");
  });

  it("are told of as none where there is none", () => {
    const { open, unreached, past, bands } = mapRegions(drawnOf("40 40\n40 40"), "left", ALLOWANCE, frame);
    expect({ open, unreached, past }).toEqual({ open: "", unreached: "", past: "" });
    expect(bands).toHaveLength(5);
    expect(mapRegions(drawnOf("40 40\n40 40"), "left", 0, frame).bands).toHaveLength(1);
  });

  it("have the line of a gap where it is crossed between two cells", () => {
    const drawn = drawnOf("10 10 -30\n10 10 -30");
    const [path] = bandPaths(drawn.map, drawn.gap.left, [0], frame);
    // A quarter of the way from 10 to −30.
    expect(covers(path!, drawn.map, 0.5, 1.24)).toBe(true);
    expect(covers(path!, drawn.map, 0.5, 1.26)).toBe(false);
  });
});
