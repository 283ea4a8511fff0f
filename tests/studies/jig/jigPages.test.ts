import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { textWidth } from "../../../src/geometry/page.ts";
import { readSetup } from "../../../src/setup/readSetup.ts";
import { jigPages } from "../../../src/studies/drawings/jigPages.ts";
import { PAPER_NAMES } from "../../../src/studies/drawings/shopFile.ts";

const EXAMPLE = join(import.meta.dirname, "..", "..", "..", "shared", "ordered-knuckle.json");
const read = readSetup(readFileSync(EXAMPLE, "utf8"), "example");
if (!read.ok) throw new Error(read.issues[0]?.mend);
const { setup } = read.value;

describe("the jig sheet on paper", () => {
  it.each(PAPER_NAMES)("is two pages of %s with nothing past their edges", (paper) => {
    const pages = jigPages(setup, paper);
    expect(pages).toHaveLength(2);
    for (const { width, height, lines, texts } of pages) {
      for (const { at, size, text, anchor = "start" } of texts) {
        const wide = textWidth(text, size);
        const from = anchor === "start" ? at[0] : anchor === "end" ? at[0] - wide : at[0] - wide / 2;
        expect(`${text}: ${from > 5 && from + wide < width - 5 && at[1] > 5 && at[1] < height - 5}`).toBe(
          `${text}: true`,
        );
      }
      const places = lines.flatMap(({ points }) => Array.from(points));
      expect(Math.min(...places)).toBeGreaterThan(5);
      expect(Math.max(...places.filter((_, i) => i % 2 === 0))).toBeLessThan(width - 5);
      expect(Math.max(...places.filter((_, i) => i % 2 === 1))).toBeLessThan(height - 5);
    }
  });

  it("has what must be read, and what was read already", () => {
    const texts = jigPages(setup, "letter")[1]!.texts.map(({ text }) => text);
    for (const text of ["Tape in front", "5 1/2 in", "5 9/16 in", "8.80°", "8.40°", "8.50°"])
      expect(texts).toContain(text);
    const blank = jigPages({ ...setup, asBuilt: null }, "letter")[1]!.texts;
    expect(blank.map(({ text }) => text)).not.toContain("5 9/16 in");
  });
});
