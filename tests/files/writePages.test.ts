import DxfParser, { type ILineEntity, type ITextEntity } from "dxf-parser";
import { describe, expect, it } from "vitest";
import { pageDxfText } from "../../src/files/writePageDxf.ts";
import { pageSvgText } from "../../src/files/writePageSvg.ts";
import { pdfBytes } from "../../src/files/writePdf.ts";
import type { Page } from "../../src/geometry/page.ts";

const PAGE: Page = {
  title: 'Plate <"A&B">',
  origin: [20, 30],
  width: 215.9,
  height: 279.4,
  lines: [
    { pen: "cut", points: [20, 30, 120, 30, 120, 80], closed: true },
    { pen: "dimension", points: [20, 10, 120, 10] },
  ],
  circles: [{ pen: "cut", center: [60, 50], radius: 5 }],
  texts: [
    { at: [20, 12], size: 3, text: "100 mm (a \\ bar) − Ø 6 “x”" },
    { at: [100, 200], size: 4, text: "turned", turn: Math.PI / 2, anchor: "middle" },
  ],
};

const MM_PER_POINT = 25.4 / 72;

describe("a page as PDF", () => {
  const text = Buffer.from(pdfBytes([PAGE, { ...PAGE, width: 279.4, height: 215.9 }], "Two pages")).toString(
    "latin1",
  );

  it("has the pages' own sizes, and asks not to be scaled", () => {
    const boxes = [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) => [
      Number(w),
      Number(h),
    ]);
    expect(boxes).toEqual([
      [612, 792],
      [792, 612],
    ]);
    expect(text).toContain("/PrintScaling /None");
  });

  it("a line of 100 mm is 100 mm long on paper", () => {
    const [, x0, y0, x1, y1] = /([\d.]+) ([\d.]+) m ([\d.]+) ([\d.]+) l S/.exec(text)!.map(Number);
    expect((x1! - x0!) * MM_PER_POINT).toBeCloseTo(100, 3);
    expect([y0! * MM_PER_POINT, y1! * MM_PER_POINT]).toEqual([expect.closeTo(10, 3), expect.closeTo(10, 3)]);
  });

  it("a circle's curves pass its four quarters", () => {
    const curves = /([\d.]+) ([\d.]+) m (?:[\d.]+ ){4}([\d.]+) ([\d.]+) c/.exec(text)!.slice(1).map(Number);
    expect(curves.map((value) => value * MM_PER_POINT)).toEqual(
      [65, 50, 60, 55].map((mm) => expect.closeTo(mm, 2)),
    );
  });

  it("every object begins where the table says", () => {
    const [, table] = /startxref\n(\d+)/.exec(text)!;
    expect(text.slice(Number(table), Number(table) + 4)).toBe("xref");
    const starts = [...text.matchAll(/^(\d{10}) 00000 n $/gm)].map(([, at]) => Number(at));
    expect(starts.length).toBe(9);
    starts.forEach((start, i) => {
      expect(text.slice(start, start + 8)).toContain(`${i + 1} 0 obj`);
    });
  });

  it("escapes what PDF reads as its own, and writes letters of its Latin set", () => {
    expect(text).toContain("(100 mm \\(a \\\\ bar\\) \x96 \xd8 6 \x93x\x94)");
    expect(text).toContain("0 1 -1 0");
  });

  it("keeps the letters of its title for the viewer, as UTF-16 where Latin has them not", () => {
    const titleOf = (title: string) =>
      /\/Title (\S.*?) \/Producer/.exec(Buffer.from(pdfBytes([PAGE], title)).toString("latin1"))![1]!;
    expect(titleOf("Plate ½ (a)")).toBe("(Plate \xbd \\(a\\))");
    const hex = /^<FEFF([0-9A-F]+)>$/.exec(titleOf("漢字 Жук 😀"))![1]!;
    expect(Buffer.from(hex, "hex").swap16().toString("utf16le")).toBe("漢字 Жук 😀");
  });

  it("refuses a document without pages", () => {
    expect(() => pdfBytes([], "none")).toThrow(RangeError);
  });
});

describe("a page as SVG", () => {
  const svg = pageSvgText(PAGE);

  it("has a unit a millimeter, y down", () => {
    expect(svg).toContain('width="215.9mm" height="279.4mm" viewBox="0 0 215.9 279.4"');
    expect(svg).toContain('d="M20 269.4L120 269.4"');
    expect(svg).toContain('cx="60" cy="229.4" r="5"');
  });

  it("marks up what XML reads as its own", () => {
    expect(svg).toContain("<title>Plate &lt;&quot;A&amp;B&quot;&gt;</title>");
    expect(svg).toContain('transform="rotate(-90 100 79.4)"');
  });
});

describe("a page as DXF", () => {
  it("is measured from the page's origin, words on their own layer", () => {
    const document = new DxfParser().parseSync(pageDxfText(PAGE, "mm"))!;
    expect(document.entities.map(({ type, layer }) => `${type} ${layer}`)).toEqual([
      "POLYLINE CUT",
      "LINE NOTES",
      "CIRCLE CUT",
      "TEXT NOTES",
      "TEXT NOTES",
    ]);
    const bar = document.entities[1] as ILineEntity;
    expect(bar.vertices.map(({ x, y }) => [x, y])).toEqual([
      [0, -20],
      [100, -20],
    ]);
    expect((document.entities[4] as ITextEntity).text).toBe("turned");
  });
});
