import { describe, expect, it } from "vitest";
import { titleBlock } from "../../../src/studies/drawings/titleBlock.ts";
import { endRemarks } from "../../../src/studies/wording/pieceWords.ts";

const LETTER = { width: 279.4, height: 215.9 };
const facts = {
  heading: "Fern Street shop half-ton, aligned and on bags, as it stands",
  paper: "letter",
  angle: "third",
  units: "in",
  cautions: [],
} as const;
const texts = (scale: string) => titleBlock({ ...facts, scale }, LETTER).texts.map(({ text }) => text);

describe("the foot of a drawing sheet", () => {
  it("has every word of a long title", () => {
    expect(texts("1:4").join(" ")).toContain(facts.heading);
  });

  it("asks for its bar to be measured only where the sheet is 1:1", () => {
    expect(texts("1:1").join("\n")).toContain("measure this bar");
    expect(texts("1:4").join("\n")).not.toContain("measure this bar");
  });
});

it("a joint of the program's own is told in words on a cut list", () => {
  const end = { joint: "pinRoot", fittedTo: ["pin"], angle: 1, missed: 0, overhang: 19 };
  expect(endRemarks(end, { units: "in" })).toEqual([
    "At pin root the saddle reaches 3/4 in past the end of pin: close or trim it.",
  ]);
});
