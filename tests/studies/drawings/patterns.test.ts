import DxfParser, { type ICircleEntity, type IPolylineEntity } from "dxf-parser";
import { describe, expect, it } from "vitest";
import { pageDxfText } from "../../../src/files/writePageDxf.ts";
import { pageSvgText } from "../../../src/files/writePageSvg.ts";
import { type Page, textWidth } from "../../../src/geometry/page.ts";
import type { PlateSetup } from "../../../src/setup/types/buildTypes.ts";
import { cutListCsv } from "../../../src/studies/drawings/cutListCsv.ts";
import { cutListPages } from "../../../src/studies/drawings/cutListPages.ts";
import { cutListOf } from "../../../src/studies/drawings/cutPieces.ts";
import { type FlatPattern, patternPage, patternSheets } from "../../../src/studies/drawings/flatPattern.ts";
import { movedOutward, twiceArea } from "../../../src/studies/drawings/kerf.ts";
import { notchPattern } from "../../../src/studies/drawings/notchPattern.ts";
import { platePattern } from "../../../src/studies/drawings/platePattern.ts";
import { PAPER_NAMES } from "../../../src/studies/drawings/shopFile.ts";
import { cutFormat, drawnCautions } from "../../../src/studies/wording/drawingWords.ts";
import { cutRemarks, cutRows } from "../../../src/studies/wording/pieceWords.ts";
import { BUILD, KNUCKLE } from "../knuckleSolid/buildCase.ts";
import { example, truckOf } from "../loads/loadTruck.ts";

const MM = cutFormat("mm");
const [PLATE] = BUILD.plates as [PlateSetup];
const pieces = cutListOf(BUILD, KNUCKLE).pieces;

const HEAD = {
  part: "drop knuckle as ordered",
  order: "Order TS-2026-0147, Alder Lane Garage and Machine Shop, 12 pairs, left and right",
  truck:
    "For Fern Street shop half-ton, aligned and on bags, variant “lower than that by an inch and a half”",
};
const named = (name: string) => pieces.find((piece) => piece.name === name)!;

function plateOf(plate: PlateSetup, kerf = 0): FlatPattern {
  const made = platePattern(plate, "steel", kerf, MM);
  if (!made.ok) throw new TypeError(made.issue.mend);
  return made.pattern;
}

/** What an independent reader finds in a DXF. */
function readDxf(text: string) {
  const document = new DxfParser().parseSync(text)!;
  const on = (layer: string) => document.entities.filter((entity) => entity.layer === layer);
  return { document, on };
}

describe("the cut list", () => {
  const list = cutListOf(BUILD, KNUCKLE);
  const csv = (of: typeof list) => {
    const [, header, ...rows] = cutListCsv(of, "mm").trimEnd().split("\n");
    // Quoted cells hold commas of their own.
    const cells = (row: string) => [...row.matchAll(/("[^"]*"|[^,]*)(?:,|$)/g)].map(([, one]) => one!);
    const names = header!.split(",");
    return rows.map((row) => Object.fromEntries(names.map((name, i) => [name, cells(row)[i]])));
  };

  it("has the pin and the plates too, by the build's own sizes", () => {
    const { header, rows } = cutRows(list, MM);
    expect(rows.every((row) => row.length === header.length)).toBe(true);
    expect(rows.slice(0, 2).map((row) => row.slice(0, 6))).toEqual([
      ["pin", "1", "Ø 50.80 mm at its thickest", BUILD.material, "–", "205.0 mm"],
      ["caliper bracket", "1", "plate 9.53 mm", BUILD.material, "–", "70.0 mm × 80.0 mm"],
    ]);
    expect(cutRemarks(list, MM).slice(0, 3)).toEqual([
      "Quantity: for one knuckle.",
      "pin: from its root out Ø 50.80 mm, fillet size not given, 90.0 mm long; Ø 38.10 mm, R 3.00 mm, 50.0 mm long; Ø 25.40 mm, R 2.00 mm, 65.0 mm long; thread: not part of the build, and there is no order that gives it.",
      "caliper bracket: Holes: 2 × Ø 12.70 mm. Outline and hole pattern: sheet “Plate: caliper bracket”.",
    ]);
    const [pin, plate, post] = csv(list);
    expect(pin).toMatchObject({
      piece: "pin",
      "diameter (mm)": "50.8",
      "blank (mm)": "205",
      "wall (mm)": "",
    });
    expect(plate).toMatchObject({ "thickness (mm)": "9.525", "width (mm)": "70", "height (mm)": "80" });
    expect(plate!["steps or holes"]).toContain("2 × Ø 12.70 mm");
    expect(post).toMatchObject({ piece: "lower post", "first end": "middle", "steps or holes": "" });
  });

  it("has as many of each piece as the order has knuckles, of a pair for both sides", () => {
    const { order } = truckOf(example("ordered-knuckle.json")).model.setup;
    const quantities = (of: typeof list) => [
      ...new Set([...cutRows(of, MM).rows.map((row) => row[1]), ...csv(of).map((row) => row.quantity)]),
    ];
    const pairs = cutListOf(BUILD, KNUCKLE, { ...order!, side: "pair", quantity: 3 });
    expect(quantities(pairs)).toEqual(["6"]);
    expect(cutRemarks(pairs, MM)[0]).toContain("for all 6 knuckles of the order; half of them right ones");
    const one = cutListOf(BUILD, KNUCKLE, { ...order!, side: "right", quantity: 1 });
    expect(quantities(one)).toEqual(["1"]);
    expect(cutRemarks(one, MM)[0]).toBe("Quantity: for the one knuckle of the order.");
  });

  it("says of a pin that the build does not have that its size is not given", () => {
    const bare = cutListOf({ ...BUILD, pin: null }, KNUCKLE);
    expect(cutRows(bare, MM).rows[0]!.slice(0, 6)).toEqual([
      ...["pin", "1", "size not given", BUILD.material, "–", "size not given"],
    ]);
    expect(csv(bare)[0]).toMatchObject({ "blank (mm)": "", "steps or holes": "size not given" });
  });

  it("calls joints in the file as on the sheet", () => {
    const members = BUILD.members.map((one) => (one.from === "middle" ? { ...one, from: "pinRoot" } : one));
    const [, , post] = csv(cutListOf({ ...BUILD, members }, KNUCKLE));
    expect(post!["first end"]).toBe("pin root");
  });

  it("has no bar and asks for none: nothing on it is to a scale", () => {
    const pages = cutListPages(list, HEAD, "a4", MM, drawnCautions(null));
    const told = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join("\n");
    expect(told).toContain("caliper bracket");
    expect(told).toContain("reviewed by a licensed engineer");
    expect(told).not.toMatch(/\bbar\b.*cutting|measure this bar/);
    for (const { width, texts } of pages)
      for (const { at, text, size } of texts) expect(at[0] + textWidth(text, size)).toBeLessThan(width);
  });

  it.each([
    ["a few pieces", 1, 1],
    ["many pieces", 25, 1],
    ["notes that leave few rows", 3, 12],
    ["some forty lines of notes", 5, 38],
    ["more notes than a sheet holds", 25, 130],
  ])("prints nothing over anything, on all papers, and leaves nothing out: %s", (_, times, plates) => {
    const plate = list.plates[0]!;
    const many = {
      ...list,
      pieces: Array.from({ length: times }, () => list.pieces).flat(),
      plates: Array.from({ length: plates }, (_, i) => ({ ...plate, name: `bracket ${i + 1}` })),
    };
    for (const paper of PAPER_NAMES) {
      const cautions = drawnCautions(null);
      const pages = cutListPages(many, HEAD, paper, MM, cautions);
      for (const page of pages) {
        const boxes = page.texts.map(({ at: [x, y], text, size }) => ({
          text,
          ...{ left: x, right: x + textWidth(text, size), low: y - 0.25 * size, high: y + 0.75 * size },
        }));
        for (const a of boxes) {
          expect(Math.min(a.left, a.low - 8), `${a.text} on ${paper}`).toBeGreaterThan(0);
          expect(a.high).toBeLessThan(page.height);
          expect(a.right).toBeLessThan(page.width);
          const over = boxes.filter(
            (b) => b !== a && a.left < b.right && b.left < a.right && a.low < b.high && b.low < a.high,
          );
          expect(over.map((b) => `${a.text} / ${b.text}`)).toEqual([]);
        }
        for (const { points } of page.lines)
          expect(boxes.filter(({ low, high }) => low < points[1]! && points[1]! < high)).toEqual([]);
      }
      const told = (page: Page) => page.texts.map(({ text }) => text).join(" ");
      for (const page of pages) expect(told(page)).toContain(cautions.join(" "));
      const all = pages.map(told).join(" ");
      for (let i = 1; i <= plates; i++) expect(all).toContain(`bracket ${i}: Holes: 2`);
      const names = pages.flatMap(({ texts }) => texts.filter(({ text }) => text === "lower post"));
      expect(names).toHaveLength(times);
    }
  });

  it("has tubes and bars in the order of the build, stiff connections left out", () => {
    expect(pieces.map(({ name, kind, wall }) => [name, kind, wall])).toEqual([
      ["lower post", "tube", 6.35],
      ["upper post", "tube", 6.35],
      ["brace", "bar", null],
    ]);
  });

  it("a bar notched to an equal round at a right angle: saddle R deep, its blank tip to tip", () => {
    const right = {
      ...BUILD,
      pin: null,
      plates: [],
      joints: [
        { name: "a", at: [0, 0, 0] as const },
        { name: "b", at: [0, 0, 200] as const },
        { name: "c", at: [0, 150, 100] as const },
      ],
      members: [
        { kind: "tube", name: "post", from: "a", to: "b", diameter: 40, wall: 5, material: null },
        { kind: "tube", name: "beam", from: "a2", to: "c", diameter: 40, wall: 5, material: null },
      ] as const,
    };
    const build = { ...right, joints: [...right.joints, { name: "a2", at: [0, 0, 100] as const }] };
    const beam = cutListOf(build, KNUCKLE).pieces[1]!;
    expect(beam.ends[0].angle).toBeCloseTo(Math.PI / 2, 9);
    beam.ends[0].outside.forEach((from, degrees) => {
      expect(from).toBeCloseTo(20 * Math.abs(Math.cos((degrees * Math.PI) / 180)), 6);
    });
    // Through the wall: at the sides the bore, 15 mm from the axis, meets the round first.
    expect(beam.ends[0].through[90]).toBeCloseTo(Math.sqrt(20 ** 2 - 15 ** 2), 6);
    expect(beam.centers).toBeCloseTo(150, 9);
    expect(beam.blank).toBeCloseTo(150, 6);
    expect(beam.onMark).toBeCloseTo(130, 6);
    expect(beam.turn).toBeNull();
  });

  it("the turn between two notches is that of what they are notched to", () => {
    const turned = (degrees: number) => {
      const angle = (degrees * Math.PI) / 180;
      const build = {
        ...BUILD,
        pin: null,
        plates: [],
        joints: [
          { name: "a", at: [0, 0, -80] as const },
          { name: "b", at: [0, 0, 80] as const },
          { name: "m", at: [0, 0, 0] as const },
          { name: "n", at: [0, 200, 0] as const },
          { name: "c", at: [-80 * Math.sin(angle), 200, -80 * Math.cos(angle)] as const },
          { name: "d", at: [80 * Math.sin(angle), 200, 80 * Math.cos(angle)] as const },
        ],
        members: [
          { kind: "bar", name: "post", from: "a", to: "b", diameter: 40, material: null },
          { kind: "bar", name: "other post", from: "c", to: "d", diameter: 40, material: null },
          { kind: "bar", name: "beam", from: "m", to: "n", diameter: 30, material: null },
        ] as const,
      };
      return (cutListOf(build, KNUCKLE).pieces[2]!.turn! * 180) / Math.PI;
    };
    expect(turned(0)).toBeCloseTo(0, 6);
    // From +z toward +x about +y: counterclockwise seen from the second end.
    expect(turned(30)).toBeCloseTo(30, 6);
    expect(turned(120)).toBeCloseTo(120, 6);
  });

  it("tells what passes beside and what reaches past an end", () => {
    const wide = {
      ...BUILD,
      plates: [],
      joints: [{ name: "far", at: [0, 0, 300] as const }],
      members: [
        { kind: "bar", name: "wide", from: "pinRoot", to: "far", diameter: 60, material: null },
      ] as const,
    };
    const [piece] = cutListOf(wide, KNUCKLE).pieces;
    expect(piece!.ends[0].missed).toBeGreaterThan(50);
    expect(piece!.ends[0].overhang).toBeGreaterThan(25);
    expect(named("lower post").ends.map(({ missed, overhang }) => [missed, overhang])).toEqual([
      [0, 0],
      [0, 0],
    ]);
  });
});

describe("a notch template", () => {
  const piece = named("lower post");
  const pattern = notchPattern(piece, 0, MM)!;

  it("is as long as the tube is round, and its lower edge is the cut", () => {
    const [contour] = pattern.drawn.lines;
    const { points } = contour!;
    expect([contour!.pen, contour!.closed]).toEqual(["cut", true]);
    expect(Math.max(...Array.from(points).filter((_, i) => i % 2 === 0))).toBeCloseTo(Math.PI * 44.45, 9);
    for (let degrees = 0; degrees <= 360; degrees++) {
      expect(points[2 * degrees]).toBeCloseTo((Math.PI * 44.45 * degrees) / 360, 9);
      expect(points[2 * degrees + 1]).toBeCloseTo(piece.ends[0].through[degrees % 360]!, 9);
    }
  });

  it("a square end needs none", () => {
    expect(notchPattern(piece, 1, MM)).toBeNull();
  });

  it("as SVG one unit is one millimeter of the page", () => {
    const page = patternPage(pattern);
    const svg = pageSvgText(page);
    const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([\d. ]+)"/.exec(svg)!;
    expect(box).toBe(`0 0 ${width} ${height}`);
    const cut = /class="cut" d="([^"]+)"/.exec(svg)![1]!;
    const xs = [...cut.matchAll(/[ML]([\d.-]+) /g)].map(([, x]) => Number(x));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(Math.PI * 44.45, 3);
    expect(svg).toContain("100 mm: measure this bar");
  });
});

describe("a plate as DXF, read by dxf-parser", () => {
  it("has its outline closed and its holes as circles, in its own axes and units", () => {
    const { document, on } = readDxf(pageDxfText(patternPage(plateOf(PLATE)), "mm"));
    expect(document.header.$INSUNITS).toBe(4);
    const cuts = on("CUT");
    expect(cuts.map(({ type }) => type)).toEqual(["POLYLINE", "CIRCLE", "CIRCLE"]);
    const outline = cuts[0] as IPolylineEntity;
    expect(outline.shape).toBe(true);
    expect(outline.vertices.map(({ x, y }) => [x, y])).toEqual(PLATE.outline.map((corner) => [...corner]));
    const holes = cuts.slice(1) as ICircleEntity[];
    expect(holes.map(({ center, radius }) => [center.x, center.y, radius])).toEqual([
      [55, -18, 6.35],
      [55, 18, 6.35],
    ]);
  });

  it("in inches all is divided by 25.4", () => {
    const { document, on } = readDxf(pageDxfText(patternPage(plateOf(PLATE)), "in"));
    expect(document.header.$INSUNITS).toBe(1);
    expect((on("CUT")[1] as ICircleEntity).radius).toBeCloseTo(0.25, 6);
  });

  it("no piece is there twice, none has no length", () => {
    const { document } = readDxf(pageDxfText(patternPage(plateOf(PLATE, 1.2)), "mm"));
    const pieces = document.entities.flatMap((entity) => {
      if (entity.type !== "POLYLINE" && entity.type !== "LINE") return [];
      const { vertices, shape } = entity as IPolylineEntity;
      const ends = vertices.map(({ x, y }) => [x, y] as const);
      return ends
        .slice(shape ? 0 : 1)
        .map((end, i) => [ends[(i + (shape ? ends.length - 1 : 0)) % ends.length]!, end] as const);
    });
    expect(pieces.length).toBeGreaterThan(8);
    for (const [[ax, ay], [bx, by]] of pieces) expect(Math.hypot(bx - ax, by - ay)).toBeGreaterThan(0.5);
    const keys = pieces.map((piece) =>
      piece
        .map(([x, y]) => `${x},${y}`)
        .sort()
        .join(" "),
    );
    expect(new Set(keys).size).toBe(keys.length);
  });

  it("with a kerf the outline grows and holes shrink by half of it", () => {
    const { on } = readDxf(pageDxfText(patternPage(plateOf(PLATE, 2)), "mm"));
    expect((on("CUT")[1] as ICircleEntity).radius).toBeCloseTo(5.35, 6);
    const { vertices } = on("CUT")[0] as IPolylineEntity;
    expect(Math.max(...vertices.map(({ x }) => x))).toBeCloseTo(71, 6);
    expect(Math.min(...vertices.map(({ x }) => x))).toBeCloseTo(-1, 6);
  });
});

describe("a kerf", () => {
  it("a square grows on all sides, whichever way it is wound", () => {
    const square = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ] as const;
    for (const outline of [square, [...square].reverse()]) {
      const moved = movedOutward(outline, 1)!;
      expect(Math.abs(twiceArea(moved)) / 2).toBeCloseTo(144, 9);
    }
  });

  it("a notch narrower than the kerf is refused, at its key", () => {
    const slot = [
      [0, 0],
      [40, 0],
      [40, 20],
      [21, 20],
      [21, 10],
      [20, 10],
      [20, 20],
      [0, 20],
    ] as const;
    const plate = { ...PLATE, outline: slot, holes: [] };
    expect(platePattern(plate, "steel", 0.5, MM).ok).toBe(true);
    expect(platePattern(plate, "steel", 2, MM)).toEqual({
      ok: false,
      issue: { path: ["outline"], mend: expect.stringContaining("narrower than the kerf") },
    });
  });

  it.each([
    ["a hole over the edge", [{ at: [5, 0], diameter: 12 }], 0, "the plate's edge"],
    [
      "two holes that meet",
      [
        { at: [30, 0], diameter: 12 },
        { at: [40, 0], diameter: 12 },
      ],
      0,
      "another",
    ],
    ["a hole smaller than the kerf", [{ at: [30, 0], diameter: 1 }], 2, "more than the kerf"],
  ] as const)("%s is refused", (_, holes, kerf, words) => {
    const made = platePattern({ ...PLATE, holes }, "steel", kerf, MM);
    expect(made.ok ? "" : made.issue.mend).toContain(words);
  });
});

describe("on paper", () => {
  const big: FlatPattern = {
    title: "Trim template: fender lip, left side",
    notes: [],
    units: "mm",
    drawn: {
      lines: [{ pen: "cut", points: [0, 0, 700, 0, 700, 300, 0, 300], closed: true }],
      circles: [{ pen: "cut", center: [190, 150], radius: 40 }],
      texts: [],
    },
    bounds: [0, 0, 700, 300],
  };

  it.each(["letter", "a4", "tabloid", "a3"] as const)(
    "%s: the tiles together hold every line once and a bar each",
    (paper) => {
      const sheets = patternSheets(big, paper);
      expect(sheets.length).toBeGreaterThan(1);
      for (const { texts, lines, width, height } of sheets) {
        expect(texts.some(({ text }) => /^sheet \d+ of \d+ \(row/i.test(text))).toBe(true);
        for (const { at, size, text, bold } of texts)
          expect(at[0] + textWidth(text, size) * (bold ? 1.06 : 1), text).toBeLessThanOrEqual(width - 5);
        expect(texts.some(({ text }) => text.startsWith("100 mm"))).toBe(true);
        for (const { points } of lines)
          Array.from(points).forEach((value, i) => {
            expect(value).toBeGreaterThanOrEqual(10 - 5);
            expect(value).toBeLessThanOrEqual((i % 2 === 0 ? width : height) - 10 + 5);
          });
      }
      const cut = sheets.flatMap(({ lines }) => lines.filter(({ pen }) => pen === "cut"));
      const total = cut.reduce((sum, { points }) => {
        let length = 0;
        for (let i = 2; i < points.length; i += 2)
          length += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
        return sum + length;
      }, 0);
      // Edges of 2000 mm and a circle of 251 mm, overlaps of 10 mm drawn on both sheets.
      expect(total).toBeGreaterThan(2000);
      expect(total).toBeLessThan(2000 + 251 + 2 * 10 * 2 * (sheets.length - 1) + 90);
    },
  );

  it.each([
    ["letter", "in", 101.6],
    ["a4", "mm", 100],
  ] as const)("%s: the bar of every tile is as long as it says", (paper, units, length) => {
    for (const { lines, texts } of patternSheets({ ...big, units }, paper)) {
      const [, y] = texts.find(({ text }) => text.includes("measure this bar"))!.at;
      // Three millimeters under its words.
      const bar = lines.filter(
        ({ points }) => points[1] === points[3] && Math.abs(y - 3 - points[1]!) < 1e-9,
      );
      expect(bar.map(({ points }) => points[2]! - points[0]!)).toEqual([expect.closeTo(length, 9)]);
    }
  });

  it.each(["letter", "a4"] as const)(
    "%s: crosses of two neighbors lie on the same place of the pattern",
    (paper) => {
      // A hairline every tenth of a millimeter, as tall as it is far along: it tells where on the pattern a sheet is.
      const hairs = Array.from({ length: 7000 }, (_, i) => ({
        pen: "cut" as const,
        points: [0.1 * i, 10, 0.1 * i, 10 + 0.01 * (i + 1)],
      }));
      const sheets = patternSheets(
        { ...big, bounds: [0, 0, 700, 100], drawn: { lines: hairs, circles: [], texts: [] } },
        paper,
      );
      const crossesOn = sheets.map(({ lines }) => {
        const upright = lines.filter(({ points }) => points[0] === points[2]);
        const crosses = upright.filter(
          ({ pen, points }) => pen === "dimension" && points[3]! - points[1]! > 7.9,
        );
        const places = crosses.map(({ points }) => {
          const hair = upright.find(
            ({ pen, points: at }) => pen === "cut" && Math.abs(at[0]! - points[0]!) < 1e-6,
          );
          return Math.round((hair!.points[3]! - hair!.points[1]!) / 0.01) - 1;
        });
        return [...new Set(places)].sort((a, b) => a - b);
      });
      expect(crossesOn.length).toBeGreaterThan(1);
      for (let i = 1; i < crossesOn.length; i++) expect(crossesOn[i]![0]).toBe(crossesOn[i - 1]!.at(-1));
    },
  );

  it("what fits one sheet lying takes one sheet", () => {
    const wide = { ...big, drawn: { ...big.drawn, circles: [] }, bounds: [0, 0, 250, 50] as const };
    const [sheet, ...more] = patternSheets(wide, "letter");
    expect(more).toEqual([]);
    expect(sheet!.width).toBeGreaterThan(sheet!.height);
  });
});
