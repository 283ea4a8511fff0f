import { describe, expect, it } from "vitest";
import { MARGIN } from "../../../src/studies/drawings/shopFile.ts";
import { titleBlock } from "../../../src/studies/drawings/titleBlock.ts";
import { endRemarks } from "../../../src/studies/wording/pieceWords.ts";

const LETTER = { width: 279.4, height: 215.9 };
const facts = {
  title: "Drop knuckle, not yet as ordered",
  lines: [
    "Order TS-2026-0147, Alder Lane Garage and Machine Shop, 12 pairs, left and right",
    "For Fern Street shop half-ton, aligned and on bags, variant “lower than that by an inch and a half”",
  ],
  paper: "letter",
  angle: "third",
  units: "in",
  cautions: [],
} as const;
const written = (scale: string, size = LETTER) => titleBlock({ ...facts, scale }, size).texts;
const texts = (scale: string) => written(scale).map(({ text }) => text);

describe("the foot of a drawing sheet", () => {
  it.each([LETTER, { width: 215.9, height: 279.4 }])(
    "has every word of the title, the order and the truck inside its frame, none over another: %j",
    (size) => {
      const all = written("1:4", size);
      const words = all.map(({ text }) => text).join(" ");
      for (const text of [facts.title, ...facts.lines]) expect(words).toContain(text);
      const lines = all.filter(({ anchor, at }) => anchor !== "middle" && at[0] > size.width / 3);
      for (const { at } of lines) expect(at[1]).toBeGreaterThan(MARGIN);
      const downward = [...lines].sort((a, b) => b.at[1] - a.at[1]);
      downward.slice(1).forEach(({ at, size: letters }, i) => {
        expect(downward[i]!.at[1] - at[1]).toBeGreaterThan(letters);
      });
    },
  );

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
