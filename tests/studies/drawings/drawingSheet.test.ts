import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { textWidth } from "../../../src/geometry/page.ts";
import { readSetup } from "../../../src/setup/readSetup.ts";
import type { BuildSetup } from "../../../src/setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../../src/setup/types/types.ts";
import { type DrawingSheet, drawingSheet } from "../../../src/studies/drawings/drawingSheet.ts";
import { PAPER_NAMES, PAPERS, type PaperName } from "../../../src/studies/drawings/shopFile.ts";
import { knuckleSolid } from "../../../src/studies/knuckleSolid/knuckleSolid.ts";
import { cutFormat, drawnCautions } from "../../../src/studies/wording/drawingWords.ts";
import { BUILD, KNUCKLE } from "../knuckleSolid/buildCase.ts";

const EXAMPLE = (() => {
  const read = readSetup(readFileSync("shared/tubular-knuckle.json", "utf8"), "example", null);
  if (!read.ok) throw new TypeError(JSON.stringify(read.issues));
  return read.value.setup;
})();

function sheetOf(
  build: BuildSetup,
  knuckle: KnuckleSetup,
  paper: PaperName,
  angle: "first" | "third",
  units: "in" | "mm",
): DrawingSheet {
  const ask = {
    head: { part: "knuckle", order: "", truck: "For Test" },
    paper,
    angle,
    format: cutFormat(units),
  };
  return drawingSheet(knuckleSolid(build, knuckle), build, knuckle, ask);
}

const CASES = (["first", "third"] as const).flatMap((angle) => [
  ...PAPER_NAMES.map((paper) => ({
    name: `the example on ${paper}, ${angle} angle`,
    paper,
    knuckle: EXAMPLE.knuckle,
    make: () => sheetOf(EXAMPLE.build!, EXAMPLE.knuckle, paper, angle, "in"),
  })),
  {
    name: `a build in mm with the arm ahead and outboard, ${angle} angle`,
    paper: "a4" as const,
    knuckle: { ...KNUCKLE, steeringArm: [140, 22, -30] as const, pinLead: 8 },
    make: () => sheetOf(BUILD, { ...KNUCKLE, steeringArm: [140, 22, -30], pinLead: 8 }, "a4", angle, "mm"),
  },
]);

type Segment = readonly [x0: number, y0: number, x1: number, y1: number];

function segmentsOf(points: readonly number[], [dx, dy]: readonly [number, number]): Segment[] {
  const segments: Segment[] = [];
  for (let i = 2; i < points.length; i += 2)
    segments.push([points[i - 2]! + dx, points[i - 1]! + dy, points[i]! + dx, points[i + 1]! + dy]);
  return segments;
}

/** Whether two pieces cross inside both: a touch of ends is none. */
function cross([ax, ay, bx, by]: Segment, [cx, cy, dx, dy]: Segment): boolean {
  const turn = (px: number, py: number, qx: number, qy: number, rx: number, ry: number) =>
    (qx - px) * (ry - py) - (qy - py) * (rx - px);
  const hair = 1e-6;
  const [c, d] = [turn(ax, ay, bx, by, cx, cy), turn(ax, ay, bx, by, dx, dy)];
  const [a, b] = [turn(cx, cy, dx, dy, ax, ay), turn(cx, cy, dx, dy, bx, by)];
  return c * d < -hair && a * b < -hair;
}

describe.each(CASES)("$name", ({ paper, knuckle, make }) => {
  const sheet = make();
  const named = Object.entries(sheet.views).map(([name, view]) => ({
    view,
    zero: sheet.zeros[name as keyof typeof sheet.zeros],
  }));
  const dimensions = named.flatMap(({ view, zero }) =>
    view.laid.map(({ main, extensions, text }) => ({
      main: segmentsOf(main, zero),
      extensions: extensions.flatMap((points) => segmentsOf(points, zero)),
      text: { ...text, at: [text.at[0] + zero[0], text.at[1] + zero[1]] as const },
    })),
  );

  it("no dimension crosses another, nor another's extension lines", () => {
    expect(dimensions.length).toBeGreaterThan(8);
    const crossings = dimensions.flatMap((one, i) =>
      dimensions
        .filter((_, j) => j !== i)
        .flatMap((other) =>
          one.main.flatMap((a) =>
            [...other.main, ...other.extensions]
              .filter((b) => cross(a, b))
              .map((b) => [one.text.text, a, other.text.text, b]),
          ),
        ),
    );
    expect(crossings).toEqual([]);
  });

  it("no leader runs through the words of another", () => {
    const through = dimensions.flatMap(({ main, text: own }) =>
      main.length !== 1
        ? []
        : dimensions.flatMap(({ text: { at, text, size, anchor = "start", turn = 0 } }) => {
            if (text === own.text || turn !== 0) return [];
            const left = at[0] - { start: 0, middle: 0.5, end: 1 }[anchor] * textWidth(text, size);
            const middle: Segment = [left, at[1] + size / 3, left + textWidth(text, size), at[1] + size / 3];
            return cross(main[0]!, middle) ? [`${own.text} through ${text}`] : [];
          }),
    );
    expect(through).toEqual([]);
  });

  it("no number lies over another", () => {
    const boxes = dimensions.map(({ text: { at, text, size, anchor = "start", turn = 0 } }) => {
      const width = textWidth(text, size);
      const back = anchor === "middle" ? width / 2 : 0;
      return turn === 0
        ? { text, x0: at[0] - back, x1: at[0] - back + width, y0: at[1], y1: at[1] + size * 0.75 }
        : { text, x0: at[0] - size * 0.75, x1: at[0], y0: at[1] - back, y1: at[1] - back + width };
    });
    const over = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1)
        .map((b) => [a.text, b.text]),
    );
    expect(over).toEqual([]);
  });

  it("all of it lies on the sheet, inside the printer's margin", () => {
    const { width, height } = PAPERS[paper];
    expect([sheet.page.width, sheet.page.height].sort()).toEqual([width, height].sort());
    for (const { points } of sheet.page.lines)
      Array.from(points).forEach((value, i) => {
        expect(value).toBeGreaterThan(9.9);
        expect(value).toBeLessThan((i % 2 === 0 ? sheet.page.width : sheet.page.height) - 9.9);
      });
  });

  it("is drawn to the scale it says: the ball joints stand the span apart", () => {
    const span = sheet.views.front.laid.map(({ main }) => main).filter((main) => main.length === 4);
    const longest = Math.max(...span.map(([x0, y0, x1, y1]) => Math.hypot(x1! - x0!, y1! - y0!)));
    expect(longest).toBeCloseTo(knuckle.span * sheet.ratio, 6);
    expect(sheet.scale).toBe(`1:${1 / sheet.ratio}`);
    expect(sheet.page.texts.some(({ text }) => text.startsWith(`Scale ${sheet.scale} on `))).toBe(true);
    const told = sheet.page.texts.map(({ text }) => text).join(" ");
    expect(told).toContain(drawnCautions(sheet.scale)[1]);
    expect(told.includes("Not to scale for cutting")).toBe(sheet.scale !== "1:1");
    expect(told.includes("print's bar")).toBe(sheet.scale === "1:1");
  });
});

describe("where views lie", () => {
  const [first, third] = (["first", "third"] as const).map((angle) =>
    sheetOf(EXAMPLE.build!, EXAMPLE.knuckle, "letter", angle, "in"),
  ) as [DrawingSheet, DrawingSheet];

  it("in third angle the view from outboard to the right of the front view, the one from above over it", () => {
    const { front, side, top } = third.zeros;
    expect(side[0]).toBeGreaterThan(front[0]);
    expect(side[1]).toBe(front[1]);
    expect(top[1]).toBeGreaterThan(front[1]);
    expect(top[0]).toBe(front[0]);
  });

  it("in first angle to the left and below", () => {
    const { front, side, top } = first.zeros;
    expect(side[0]).toBeLessThan(front[0]);
    expect(side[1]).toBe(front[1]);
    expect(top[1]).toBeLessThan(front[1]);
    expect(top[0]).toBe(front[0]);
  });

  it("a corner of a plate is drawn where it is seen, in each view and both projections", () => {
    // A corner of the caliper bracket's upper outer edge, knuckle frame, mm.
    const bracket = EXAMPLE.build!.plates.find(({ name }) => name === "caliper bracket")!;
    const [u, v] = bracket.outline[2]!;
    const normal = [
      bracket.across[1] * bracket.up[2] - bracket.across[2] * bracket.up[1],
      bracket.across[2] * bracket.up[0] - bracket.across[0] * bracket.up[2],
      bracket.across[0] * bracket.up[1] - bracket.across[1] * bracket.up[0],
    ];
    const corner = [0, 1, 2].map(
      (i) =>
        bracket.at[i]! + u * bracket.across[i]! + v * bracket.up[i]! + (bracket.thickness / 2) * normal[i]!,
    ) as [number, number, number];
    for (const sheet of [first, third]) {
      const seen = {
        front: [corner[1], corner[2]],
        side: [-corner[0], corner[2]],
        top: [corner[1], -corner[0]],
      };
      for (const [name, [a, b]] of Object.entries(seen)) {
        const zero = sheet.zeros[name as keyof typeof seen];
        const [x, y] = [zero[0] + a! * sheet.ratio, zero[1] + b! * sheet.ratio];
        const nearest = Math.min(
          ...sheet.page.lines
            .filter(({ pen }) => pen === "outline" || pen === "hidden")
            .flatMap(({ points }) =>
              Array.from({ length: points.length / 2 }, (_, i) =>
                Math.hypot(points[2 * i]! - x, points[2 * i + 1]! - y),
              ),
            ),
        );
        expect(nearest).toBeLessThan(0.01);
      }
    }
  });

  it("the symbol's circles are on the left in third angle, on the right in first", () => {
    const placeOf = ({ page }: DrawingSheet) => page.circles.at(-1)!.center[0];
    const words = ({ page }: DrawingSheet) => page.texts.find(({ text }) => text.endsWith("projection"))!;
    expect(placeOf(third)).toBeLessThan(words(third).at[0]);
    expect(placeOf(first)).toBeGreaterThan(words(first).at[0]);
    expect([words(first).text, words(third).text]).toEqual([
      "First-angle projection",
      "Third-angle projection",
    ]);
  });

  it("a build without a pin is drawn too", () => {
    const sheet = sheetOf({ ...BUILD, pin: null }, KNUCKLE, "a4", "third", "mm");
    expect(sheet.page.lines.length).toBeGreaterThan(50);
  });
});
