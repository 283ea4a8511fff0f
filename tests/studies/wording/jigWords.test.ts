import { describe, expect, it } from "vitest";
import { jigSheetOf } from "../../../src/studies/jig/jigSheet.ts";
import {
  jigAskedLength,
  jigCells,
  jigFormat,
  jigSketchWords,
} from "../../../src/studies/wording/jigWords.ts";
import { parseLength } from "../../../src/units/parseLength.ts";
import { jig, ordered } from "../jig/jigCases.ts";

const INCHES = jigFormat({ units: "in" });

/** What a tape is asked to read, mm. */
function asked(text: string): number {
  const read = parseLength(text.replace("−", "-"), "in");
  if (!read.ok) throw new Error(read.mend);
  return read.mm;
}

/** The jig sheet of a knuckle whose hub face is a little off a sixteenth, all lengths within one tolerance. */
function sheetFor(off: number, tolerance: number) {
  const knuckle = { ...ordered, hubFace: 6 * 25.4 + off };
  const { faceAngle } = jig.tolerances;
  const all = Object.fromEntries(Object.keys(jig.tolerances).map((key) => [key, tolerance]));
  const tolerances = { ...jig.tolerances, ...all, faceAngle };
  return jigSheetOf({ knuckle, jig: { ...jig, tolerances }, order: null });
}

describe("what a jig is asked to read", () => {
  it("is in sixteenths only where that takes less than a quarter of the tolerance, however tight", () => {
    for (const tolerance of [0.1, 0.2, 0.3, 0.5, 1.6])
      for (const off of [0.01, 0.03, 0.06, 0.09, -0.09, 0.12]) {
        const sheet = sheetFor(off, tolerance);
        const front = sheet.rows.find(({ key }) => key === "front")!;
        const [mustRead] = jigCells(front, INCHES);
        // Decimals are of thousandths of an inch.
        const most = Math.max(Math.min(0.1, tolerance / 4), 0.0005 * 25.4);
        expect(Math.abs(asked(mustRead) - front.mustRead), `${off} of ${tolerance}`).toBeLessThan(
          most + 1e-9,
        );
        // The sketch beside the table says the same.
        expect(jigSketchWords(sheet, "left", INCHES).length(front.mustRead)).toBe(mustRead);
      }
  });

  it("stays in sixteenths where a tape is all that is asked for", () => {
    const [mustRead] = jigCells(sheetFor(0.09, 1.6).rows[0]!, INCHES);
    expect(mustRead).toBe("6 in");
    const [tight] = jigCells(sheetFor(0.09, 0.2).rows[0]!, INCHES);
    expect(tight).toBe("6.004 in");
  });

  it("is fine enough for the tightest of its lines where none asks for that very length", () => {
    expect(jigAskedLength(50.8 + 0.09, sheetFor(0, 1.6), INCHES)).toBe("2 in");
    expect(jigAskedLength(50.8 + 0.09, sheetFor(0, 0.2), INCHES)).toBe("2.004 in");
  });
});
