import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  isSameThread,
  minorDiameter,
  parseThread,
  pitchDiameter,
  stressArea,
  type ThreadCallout,
  tapDrill,
  threadText,
} from "../../src/units/threadCallout.ts";

function threadOf(text: string): ThreadCallout {
  const parsed = parseThread(text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.mend}`);
  return parsed.thread;
}

const inches = (mm: number) => mm / 25.4;
const squareInches = (mm2: number) => mm2 / 25.4 ** 2;

describe("a thread callout", () => {
  it.each([
    ["5/8-18", "5/8-18 UNF"],
    ["5/8 - 18 UNF", "5/8-18 UNF"],
    ["5/8-18 UNF-2A", "5/8-18 UNF-2A"],
    ["5/8-18 LH", "5/8-18 UNF LH"],
    ["0.625-18", "5/8-18 UNF"],
    ['5/8"-11', "5/8-11 UNC"],
    ["5/8x18", "5/8-18 UNF"],
    ["⅝-18", "5/8-18 UNF"],
    ["1-14", "1-14"],
    ["1 1/8-12", "1 1/8-12 UNF"],
    ["1-1/8-12", "1 1/8-12 UNF"],
    ["10-32", "#10-32"],
    ["#10-24", "#10-24"],
    ["M16x1.5", "M16x1.5"],
    ["m16 × 1,5 lh", "M16x1.5 LH"],
    ["M16", "M16x2"],
    ["M16x1.5-6H", "M16x1.5-6H"],
  ])("%j is read and written %j", (text, written) => {
    expect(threadText(threadOf(text))).toBe(written);
  });

  it.each([
    ["", /^empty/],
    ["5/8", /write a thread/],
    ["5/8-18 UNC", /UNC of this size has 11 threads/],
    ["5/0-18", /divides by zero/],
    ["5/8-1", /pitch does not go/],
    ["5/8-0", /must have threads/],
    ["M11", /no coarse pitch/],
    ["M16x12", /pitch does not go/],
    ["#99-32", /no size number/],
    ["40-18", /no size of a thread/],
    ["five eighths", /write a thread/],
    ["-5/8-18", /write a thread/],
  ])("%j is refused with its mend", (text, mend) => {
    expect(parseThread(text)).toEqual({ ok: false, mend: expect.stringMatching(mend) });
  });

  it("comes back from its text", () => {
    const unified = fc
      .record({ over: fc.integer({ min: 12, max: 128 }), tpi: fc.integer({ min: 8, max: 40 }) })
      .map(({ over, tpi }) => `${over}/64-${tpi}`);
    const metric = fc
      .record({ size: fc.integer({ min: 6, max: 40 }), pitch: fc.constantFrom(0.75, 1, 1.25, 1.5, 2) })
      .map(({ size, pitch }) => `M${size}x${pitch}`);
    const hand = fc.constantFrom("", " LH");
    fc.assert(
      fc.property(fc.oneof(unified, metric), hand, (text, side) => {
        const read = parseThread(text + side);
        fc.pre(read.ok);
        const back = threadOf(threadText(read.thread));
        expect(isSameThread(back, read.thread)).toBe(true);
        expect(back.series).toBe(read.thread.series);
        expect(threadText(back)).toBe(threadText(read.thread));
      }),
      { seed: 1955, numRuns: 300 },
    );
  });

  it("5/8-18 UNF has the sizes of ASME B1.1 as tabulated (boltport.com/threads/unf)", () => {
    const thread = threadOf("5/8-18");
    expect(inches(pitchDiameter(thread))).toBeCloseTo(0.5889, 4);
    expect(inches(minorDiameter(thread))).toBeCloseTo(0.5649, 4);
    expect(squareInches(stressArea(thread))).toBeCloseTo(0.256, 3);
  });

  it("stress areas are those of the formula worked by hand, and of the same table to its last digit", () => {
    const area = (text: string) => squareInches(stressArea(threadOf(text)));
    expect(area("5/8-18")).toBeCloseTo(0.255957, 6);
    expect(stressArea(threadOf("5/8-18"))).toBeCloseTo(165.1, 1);
    const sizes = { "1/2-20": 0.16, "3/4-16": 0.373, "7/8-14": 0.5095, "1-14": 0.6799 };
    for (const [text, expected] of Object.entries(sizes))
      expect([text, Math.abs(area(text) - expected) < 1e-4]).toEqual([text, true]);
  });

  it("proof stress times area is the proof load of 5/8-18 bolts (proof stresses: SAE J429, from memory)", () => {
    const area = squareInches(stressArea(threadOf("5/8-18")));
    expect(Math.abs((85_000 * area) / 21_760 - 1)).toBeLessThan(0.002);
    expect(Math.abs((120_000 * area) / 30_720 - 1)).toBeLessThan(0.002);
  });

  it("M16x1.5 and M16 have the stress areas of ISO 898-1, table of fine and coarse threads (from memory)", () => {
    expect(stressArea(threadOf("M16x1.5"))).toBeCloseTo(167, 0);
    expect(stressArea(threadOf("M16"))).toBeCloseTo(157, 0);
    expect(pitchDiameter(threadOf("M16x1.5"))).toBeCloseTo(15.026, 3); // ISO 724, from memory
    expect(minorDiameter(threadOf("M16x1.5"))).toBeCloseTo(14.376, 3);
  });

  it("the tap drill leaves three quarters of the thread and lies between the nut's least and the pitch diameter", () => {
    expect(inches(tapDrill(threadOf("5/8-18")))).toBeCloseTo(0.625 - (1.299 * 0.75) / 18, 4);
    // 27/64 in for 1/2-13 and 14.5 mm for M16x1.5 are on every tap drill chart (Machinery's Handbook, from memory).
    expect(inches(tapDrill(threadOf("1/2-13")))).toBeCloseTo(27 / 64, 2);
    expect(Math.abs(tapDrill(threadOf("M16x1.5")) - 14.5)).toBeLessThan(0.05);
    for (const text of ["5/8-18", "3/4-16", "M12x1.25", "1/4-20"]) {
      const thread = threadOf(text);
      expect(tapDrill(thread)).toBeGreaterThan(minorDiameter(thread));
      expect(tapDrill(thread)).toBeLessThan(pitchDiameter(thread));
    }
  });
});
