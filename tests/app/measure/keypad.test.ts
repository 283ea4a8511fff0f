import { describe, expect, it } from "vitest";
import {
  afterPadKey,
  FRACTIONS,
  type PadKey,
  padFraction,
} from "../../../src/app/measure/worksheet/keypadText.ts";
import { parseLength } from "../../../src/units/parseLength.ts";

const press = (...keys: readonly PadKey[]) => keys.reduce(afterPadKey, "");

describe("the keys of a reading", () => {
  it("write whole inches and a fraction in either order, and another fraction takes its place", () => {
    expect(press("2", "6", "5/8")).toBe("26 5/8");
    expect(press("5/8", "2", "6")).toBe("26 5/8");
    expect(press("2", "6", "5/8", "7/16")).toBe("26 7/16");
    expect(press("2", "6", "5/8", "5/8")).toBe("26");
    expect(press("0", "8")).toBe("8");
    expect([padFraction("26 5/8"), padFraction("26"), padFraction('5-5/8"')]).toEqual(["5/8", null, null]);
  });

  it("go back the fraction first, then a digit at a time, and stop at nothing", () => {
    const texts: string[] = [];
    let text = press("1", "2", "1/2");
    for (let i = 0; i < 4; i++) {
      text = afterPadKey(text, "⌫");
      texts.push(text);
    }
    expect(texts).toEqual(["12", "1", "", ""]);
  });

  it("write decimals and less than 0, and no number longer than a truck", () => {
    expect(press(".", "5")).toBe("0.5");
    expect(press("6", "7", "3", ".", "2", "5", "1", "9", ".")).toBe("673.251");
    expect(press("±", "6", "1/4")).toBe("-6 1/4");
    expect(press("±", "6", "±")).toBe("6");
    expect(press("1", "2", "3", "4", "5", "6")).toBe("12345");
  });

  it("leave text alone that was typed another way", () => {
    expect(afterPadKey('5-5/8"', "⌫")).toBe("5-5/8");
    expect(afterPadKey("142.9 mm", "1")).toBe("142.9 mm1");
    expect(afterPadKey("142.9", "1/2")).toBe("142 1/2");
  });

  it("write every mark of a tape so that it is read back", () => {
    const marks = FRACTIONS.flat();
    expect(marks).toHaveLength(15);
    for (const mark of marks) {
      const [over, under] = mark.split("/").map(Number) as [number, number];
      const mm = expect.closeTo((8 + over / under) * 25.4, 9);
      expect(parseLength(press("8", mark), "in")).toEqual({ ok: true, mm });
    }
  });
});
