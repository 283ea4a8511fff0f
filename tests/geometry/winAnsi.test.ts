import { describe, expect, it } from "vitest";
import { isSpelledOtherwise, lettersWithout, winAnsiText } from "../../src/geometry/winAnsi.ts";

describe("letters of a PDF's standard fonts", () => {
  // The code page as Microsoft and the Unicode consortium's CP1252.TXT list it, from memory.
  it.each([
    ...[
      ["€", 0x80],
      ["‚", 0x82],
      ["…", 0x85],
      ["‰", 0x89],
      ["Š", 0x8a],
      ["Œ", 0x8c],
      ["Ž", 0x8e],
      ["‘", 0x91],
    ],
    ...[
      ["”", 0x94],
      ["–", 0x96],
      ["—", 0x97],
      ["™", 0x99],
      ["š", 0x9a],
      ["œ", 0x9c],
      ["ž", 0x9e],
      ["Ÿ", 0x9f],
    ],
    ...[
      ["¡", 0xa1],
      ["ÿ", 0xff],
      ["Ø", 0xd8],
      ["ß", 0xdf],
      ["A", 0x41],
      ["~", 0x7e],
    ],
  ] as [string, number][])("are those of Windows code page 1252: %s is %i", (letter, code) => {
    expect(winAnsiText(letter)).toBe(String.fromCharCode(code));
    expect(isSpelledOtherwise(letter)).toBe(false);
  });

  it("keep what drawings are full of: ± × ° – ½ ²", () => {
    expect(winAnsiText("±1/16 in × 8.5° – ½ in²")).toBe("\xb11/16 in \xd7 8.5\xb0 \x96 \xbd in\xb2");
    expect(isSpelledOtherwise("−5 7/8 in, 3′ 2″ → ≈ 4")).toBe(false);
  });

  it.each([
    ["Łódź, č ő ğ ș", "L\u00f3dz", "c o g s"],
    ["Jiří Dvořák", "Jirí Dvorák", ""],
    ["Ιωάννης", "Ioannis", ""],
    ["Жуков щит", "Zhukov", "shhit"],
    ["ﬁllet", "fillet", ""],
  ])("others become the nearest: %s", (text, first, second) => {
    const spelled = winAnsiText(text);
    expect(spelled).toContain(first);
    expect(spelled).toContain(second);
    expect(spelled).not.toContain("?");
    expect(isSpelledOtherwise(text)).toBe(true);
  });

  it("an accent that is written by itself belongs to its letter", () => {
    expect(winAnsiText("e\u0301")).toBe("\xe9");
    expect(winAnsiText("q\u0301")).toBe("q");
  });

  it("without any nearest letter a question mark stands, and it is told", () => {
    expect(winAnsiText("工場 7")).toBe("?? 7");
    expect(isSpelledOtherwise("工場 7")).toBe(true);
    expect(lettersWithout("工場 7 工 Ωmega Жук ½? é q\u0301 👍🏽")).toEqual(["工", "場", "👍", "🏽"]);
  });
});
