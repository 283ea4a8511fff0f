import { describe, expect, it } from "vitest";
import { DEFAULT_READING_ACCURACY as WITHIN } from "../../../src/setup/types/defaults.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { type AsBuiltSide, asBuiltSides } from "../../../src/studies/jig/asBuiltReport.ts";
import { toTheOrder } from "../../../src/studies/jig/corrections.ts";
import { knuckleOf, UNKNOWNS, type Unknown, valuesOf } from "../../../src/studies/jig/fitKnuckle.ts";
import { jigReadingsOf, turned } from "../../../src/studies/jig/jigReadings.ts";
import { jigSheetOf } from "../../../src/studies/jig/jigSheet.ts";
import { correctionSentences } from "../../../src/studies/wording/correctionWords.ts";
import type { LengthFormat } from "../../../src/units/formatLength.ts";
import { DEG, jig, ordered } from "./jigCases.ts";

const { toe, ...knuckle } = ordered;
const MILLIMETERS: LengthFormat = { units: "mm", decimals: 1 };
const setup = { knuckle, jig: { ...jig, toe }, order: null };
type Off = Partial<Record<Unknown, number>>;

/** The left knuckle, read without error. @param off built − ordered; @param misread added to a reading */
function leftOf(off: Off, misread: Partial<ReturnType<typeof jigReadingsOf>> = {}): AsBuiltSide {
  const built = knuckleOf(valuesOf(ordered).map((value, i) => value + (off[UNKNOWNS[i]!] ?? 0)));
  const reads = jigReadingsOf(built, setup.jig, ordered.pinHeight);
  const readings = Object.fromEntries(
    Object.entries(reads).map(([key, is]) => [key, is + (misread[key as keyof typeof reads] ?? 0)]),
  );
  const asBuilt = { left: { readings, clampedAt: null }, right: null, within: WITHIN };
  return asBuiltSides({ ...setup, asBuilt } as unknown as Setup)!.left!;
}

const told = (side: AsBuiltSide) =>
  correctionSentences([side], jigSheetOf({ ...setup } as unknown as Setup), MILLIMETERS);

/** What to do, after what is to be read again first. */
const mendOf = (side: AsBuiltSide) => told(side)[0]!.replace(/^First read [^.]*\. /, "");

/** Far past every tolerance, and which way that member must go: by hand, from what each dimension is. */
const CASES: readonly (readonly [Unknown, off: number, words: string])[] = [
  ["hubFace", 4, "move the hub face 4.00 mm inward along the pin"],
  ["hubFace", -4, "move the hub face 4.00 mm outward along the pin"],
  ["pinHeight", 4, "move the pin 4.00 mm down the ball joint line"],
  ["pinAngle", DEG, "tilt the pin’s outer end up 1.00°"],
  ["pinAngle", -DEG, "tilt the pin’s outer end down 1.00°"],
  ["pinLead", 4, "move the pin 4.00 mm back"],
  ["toe", DEG, "turn the pin’s outer end back 1.00° (the steering arm turns with it)"],
  ["toe", -DEG, "turn the pin’s outer end forward 1.00° (the steering arm turns with it)"],
  ["span", -4, "set the ball joint seats 4.00 mm farther apart"],
  ["armX", -4, "move the steering arm’s end 4.00 mm forward"],
  ["armY", 4, "move the steering arm’s end 4.00 mm inboard"],
  ["armZ", -4, "move the steering arm’s end 4.00 mm up"],
];

describe("what to correct of a knuckle as built", () => {
  it.each(CASES)("is the one member that is off, the other way: %s by %f", (key, off, words) => {
    const side = leftOf({ [key]: off });
    expect(side.allPass).toBe(false);
    expect(side.corrections.changes.map((one) => one.key)).toEqual([key]);
    expect(side.corrections.changes[0]!.by).toBeCloseTo(-off, 6);
    expect(mendOf(side)).toBe(
      `To bring the left knuckle within tolerance, ${words}; then all 13 checks pass.`,
    );
    expect(told(side)[1]).toMatch(/qualified welder/);
  });

  it("turns an outer end back that points ahead: such a pin leads at its face", () => {
    expect(jigReadingsOf({ ...ordered, toe: DEG }, jig, ordered.pinHeight).lead).toBeGreaterThan(2);
  });

  it("leaves the steering arm where it stands right on the jig, though the pin was turned from it", () => {
    const [x, y, z] = ordered.steeringArm;
    const stands = turned(turned(ordered.steeringArm, ordered.toe), -(ordered.toe + DEG));
    const side = leftOf({ toe: DEG, armX: stands[0] - x, armY: stands[1] - y, armZ: stands[2] - z });
    expect(side.passes.filter(({ passes }) => !passes).map(({ key }) => key)).not.toContain("armOut");
    expect(mendOf(side)).toBe(
      "To bring the left knuckle within tolerance, turn the pin’s outer end back 1.00° (the steering arm stays where it stands); then all 13 checks pass.",
    );
    // Measured from the pin it is off by 2.7 mm: nothing of that is asked for in either list.
    expect(Math.hypot(stands[0] - x, stands[1] - y)).toBeGreaterThan(2);
    const all = toTheOrder(side.fit, ordered);
    expect(all.map(({ key }) => key)).toEqual(["toe"]);
    expect(all[0]!.by).toBeCloseTo(-DEG, 6);
  });

  it("moves the arm by what it is off on the jig where both were built wrong", () => {
    const [x, y, z] = ordered.steeringArm;
    const [ahead, out, up] = turned(ordered.steeringArm, ordered.toe);
    const stands = turned([ahead, out + 5, up], -(ordered.toe + DEG));
    const side = leftOf({ toe: DEG, armX: stands[0] - x, armY: stands[1] - y, armZ: stands[2] - z });
    const arm = side.corrections.changes.find(({ key }) => key === "armY");
    expect(arm?.by).toBeCloseTo(-5, 6);
    expect(side.corrections.failing).toEqual([]);
  });

  it("asks for a failing reading again first where no other checks it, and says nothing of that where one does", () => {
    const reads = jigReadingsOf({ ...ordered, span: ordered.span + 6 }, setup.jig, ordered.pinHeight);
    const asBuilt = {
      left: { readings: { span: reads.span }, clampedAt: null },
      right: null,
      within: WITHIN,
    };
    const alone = asBuiltSides({ ...setup, asBuilt } as unknown as Setup)!.left!;
    expect(told(alone)[0]).toMatch(
      /^First read ball joint span again: no other reading checks it\. To bring/,
    );
    expect(told(leftOf({ span: 6 }))[0]).not.toMatch(/First read/);
  });

  it("names what fails, not what is off within tolerance", () => {
    const side = leftOf({ hubFace: 2.4, pinAngle: 0.3 * DEG, toe: 0.1 * DEG });
    expect(side.corrections.changes.map(({ key }) => key)).toEqual(["hubFace", "pinAngle"]);
    expect(leftOf({ hubFace: 1 }).corrections).toEqual({ changes: [], failing: [] });
    expect(told(leftOf({ hubFace: 1 }))).toEqual([]);
  });

  it("asks for the reading again, and for no cut, where one contradicts the others", () => {
    const words = told(leftOf({}, { lowerToArm: 12 }));
    expect(words).toHaveLength(1);
    expect(words[0]).toMatch(
      /^Before the left knuckle is changed, read .*lower joint to tie rod end.* again/,
    );
  });
});
