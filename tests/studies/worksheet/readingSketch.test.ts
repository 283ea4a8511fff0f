import { describe, expect, it } from "vitest";
import { readingEndWords } from "../../../src/studies/wording/worksheetWords.ts";
import { lineFrom, WORKSHEET_CANDIDATES } from "../../../src/studies/worksheet/candidates.ts";
import { readingSketch } from "../../../src/studies/worksheet/readingSketch.ts";

const asks = WORKSHEET_CANDIDATES.flatMap((ask) => lineFrom(ask) ?? []);

/** Read off a wheel or tire by itself, or along the whole truck: drawn as the field it goes into. */
const isOfField = (ask: (typeof asks)[number]) =>
  "size" in ask && !["track", "frameWidth"].includes(ask.size);

describe("the sketch of a reading", () => {
  it.each(asks.filter((ask) => !isOfField(ask)).map((ask) => [JSON.stringify(ask), ask] as const))(
    "shows both ends of the tape, inside the picture, each with its word: %s",
    (_, ask) => {
      const ends = readingEndWords(ask);
      const sketch = readingSketch(ask, ends)!;
      expect(sketch).not.toBeNull();
      const isInside = ([x, y]: readonly [number, number]) =>
        x >= 0 && x <= sketch.width && y >= 0 && y <= sketch.height;
      const tapes = sketch.shapes.flatMap((shape) =>
        shape.kind === "line" && shape.look === "tape" && shape.points.length === 2 ? [shape.points] : [],
      );
      expect(tapes).toHaveLength(1);
      const [from, to] = tapes[0]! as [readonly [number, number], readonly [number, number]];
      expect(isInside(from) && isInside(to)).toBe(true);
      // A tape that cannot be told from its own arrows shows nothing.
      expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeGreaterThan(12);
      const texts = sketch.shapes.flatMap((shape) => (shape.kind === "text" ? [shape] : []));
      expect(texts.map(({ text }) => text)).toEqual([ends.from, ends.to]);
      for (const { at } of texts) expect(isInside(at)).toBe(true);
    },
  );

  it("is none of a place that it does not show", () => {
    expect(readingSketch({ height: "a mark" }, { from: "floor", to: "a mark" })).toBeNull();
  });
});
