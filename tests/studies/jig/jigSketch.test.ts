import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { SketchShape } from "../../../src/geometry/sketch.ts";
import { jigSheetOf } from "../../../src/studies/jig/jigSheet.ts";
import { jigSketches } from "../../../src/studies/jig/jigSketch.ts";
import { jigSketchWords } from "../../../src/studies/wording/jigWords.ts";
import { DEG, jig, ordered } from "./jigCases.ts";
import { sketchSvg } from "./sketchSvg.ts";

const PICTURE = join(import.meta.dirname, "..", "..", "..", "public", "docs", "sketches", "jig.svg");
const format = { units: "in", fraction: 64 } as const;
const sheet = jigSheetOf({ knuckle: ordered, jig: { ...jig, toe: 1.5 * DEG }, order: null });
const drawn = (side: "left" | "right") => jigSketches(sheet, side, jigSketchWords(sheet, side, format));
const views = (side: "left" | "right") => {
  const { fromFront, fromAbove } = drawn(side);
  return [fromFront, fromAbove];
};
const textsOf = (shapes: readonly SketchShape[]) =>
  shapes.flatMap((shape) => (shape.kind === "text" ? [shape] : []));

describe("the sketch of the jig", () => {
  it("in the docs is drawn by this very code", async () => {
    const say = jigSketchWords(sheet, "left", format);
    const { fromFront, fromAbove } = drawn("left");
    const svg = sketchSvg([
      { sketch: fromFront, title: say.fromFront },
      { sketch: fromAbove, title: say.fromAbove },
    ]);
    await expect(svg).toMatchFileSnapshot(PICTURE);
  });

  it("writes what the tapes must read, less in front where toe is built in", () => {
    const texts = views("left")
      .flatMap(({ shapes }) => textsOf(shapes))
      .map(({ text }) => text);
    expect(texts).toContain("5.867 in"); // 155.6 − 254 sin 1.5° cos 8.4° = 149.02 mm
    expect(texts).toContain("6.385 in"); // 162.18 mm
    expect(texts).toContain("8.40°");
  });

  it("of a right knuckle is the mirror image, its words unturned and all within the drawing", () => {
    const rings = (shapes: readonly SketchShape[]) =>
      shapes.flatMap((shape) => (shape.kind === "ring" ? [shape.at] : []));
    views("left").forEach(({ shapes, width }, view) => {
      const right = views("right")[view]!;
      expect(rings(shapes)).toHaveLength(2);
      rings(shapes).forEach(([x, y], i) => {
        expect(rings(right.shapes)[i]![0]).toBeCloseTo(width - x, 9);
        expect(rings(right.shapes)[i]![1]).toBe(y);
      });
      for (const { text, at, anchor } of [...textsOf(shapes), ...textsOf(right.shapes)]) {
        // A letter of 12 px is 6.6 px wide in the mean of figures, fractions and words.
        const wide = text.length * 6.6;
        const from = anchor === "start" ? at[0] : anchor === "end" ? at[0] - wide : at[0] - wide / 2;
        expect(`${text}: ${from >= 0 && from + wide <= width}`).toBe(`${text}: true`);
      }
    });
  });
});
