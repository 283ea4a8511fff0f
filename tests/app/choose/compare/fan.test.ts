import { describe, expect, it } from "vitest";
import { fanDocument, fanFields, fanValues, fileValue } from "../../../../src/app/choose/compare/fan.ts";
import { fanEnd, fanEndText, fanStart } from "../../../../src/app/choose/compare/fanEnds.ts";
import { fanPlot } from "../../../../src/app/choose/compare/fanPlot.ts";
import { truckOf } from "../../../../src/app/state/truck.ts";
import { exampleDocument, exampleText } from "../../exampleText.ts";

const IN = 25.4;
const INCHES = { units: "in" } as const;

function truckFrom(text: string) {
  const made = truckOf(text, "test.json", null);
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  return made.value;
}

const truck = truckFrom(exampleText);
const fields = fanFields(exampleDocument);
const field = (key: string) => fields.find(({ pattern }) => pattern.join(".") === key)!;

describe("what can be fanned", () => {
  it("are single numbers of knuckle, wheel, tire and alignment, of backspacing and offset the one that stands", () => {
    const keys = fields.map(({ pattern }) => pattern.join("."));
    expect(keys).toEqual(
      expect.arrayContaining(["knuckle.hubFace", "knuckle.pinAngle", "wheel.backspacing"]),
    );
    expect(keys).not.toContain("wheel.offset");
    expect(keys.filter((key) => !/^(knuckle|wheel|tire|alignment)\.\w+$/.test(key))).toEqual([]);
    const { backspacing: _, ...wheel } = exampleDocument.wheel;
    const other = fanFields({ ...exampleDocument, wheel: { ...wheel, offset: 10 } });
    expect(other.map(({ pattern }) => pattern.join("."))).toContain("wheel.offset");
  });
});

describe("a fan's values", () => {
  it("are even, ends included, either way", () => {
    expect(fanValues(6, 10, 5)).toEqual([6, 7, 8, 9, 10]);
    expect(fanValues(1, -1, 3)).toEqual([1, 0, -1]);
  });

  it("go into the file exactly: a length as text, an angle in degrees", () => {
    expect(fileValue(field("knuckle.pinAngle"), 8.25, "in")).toBe(8.25);
    const text = fileValue(field("knuckle.hubFace"), 6.3125 * IN, "in");
    const document = fanDocument(exampleDocument, null, ["knuckle", "hubFace"], text);
    expect(truckFrom(JSON.stringify(document)).setup.knuckle.hubFace).toBeCloseTo(6.3125 * IN, 9);
  });

  it("stand in the variant shown, as a document of its own", () => {
    const document = fanDocument(exampleDocument, "narrow", ["knuckle", "pinAngle"], 9);
    expect(document).toMatchObject({ knuckle: { hubFace: "5 5/8", pinAngle: 9 } });
    expect(document).not.toHaveProperty("variants");
    expect(exampleDocument.knuckle.pinAngle).toBe(8.4);
  });
});

describe("a fan's ends", () => {
  it.each([
    ["knuckle.pinAngle", "steep", null],
    ["knuckle.pinAngle", "7 1/2", 7.5],
    ["knuckle.pinAngle", "7.5", 7.5],
    ["knuckle.hubFace", "5 1/2 + 1/8", 5.625 * IN],
    ["knuckle.hubFace", "150 mm", 150],
    ["knuckle.hubFace", "wide", null],
  ])("of %s typed as %j are %d", (key, text, value) => {
    const found = fanEnd(field(key), text, "in");
    if (value === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(value, 9);
  });

  it("begin a little to both sides of what stands there, never below what the field takes", () => {
    expect(fanStart(field("knuckle.pinAngle"), truck.setup, INCHES)).toEqual(["6.4°", "10.4°"]);
    expect(fanStart(field("knuckle.hubFace"), truck.setup, INCHES)).toEqual(["5 5/8", "6 5/8"]);
    const small = { ...truck.setup, knuckle: { ...truck.setup.knuckle, hubFace: 0.25 * IN } };
    expect(fanStart(field("knuckle.hubFace"), small, INCHES)).toEqual(["0", "3/4"]);
  });

  it("are read with a minus sign and their unit", () => {
    expect(fanEndText(field("knuckle.pinAngle"), -1.5, INCHES)).toBe("−1.5°");
    expect(fanEndText(field("knuckle.hubFace"), 5.5 * IN, INCHES)).toBe("5 1/2 in");
  });
});

describe("a fan's plot", () => {
  it("has a curve for each value that goes together, by its name, and is none where none does", () => {
    const steps = [
      { value: 8, text: "8°", truck },
      { value: 80, text: "80°", truck: null },
      { value: 9, text: "9°", truck: truckFrom(JSON.stringify({ ...exampleDocument, variants: [] })) },
    ];
    const plot = fanPlot(steps, "camber")!;
    expect(plot.series.map(({ name }) => name)).toEqual(["8°", "9°"]);
    expect(new Set(plot.series.map(({ line }) => line)).size).toBe(2);
    expect(fanPlot([steps[1]!], "camber")).toBeNull();
    expect(fanPlot(steps, "no such plot")).toBeNull();
  });
});
