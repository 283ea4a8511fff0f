import { describe, expect, it } from "vitest";
import { apartText, fanCount, fanPlot, fanSteps } from "../../../../src/app/choose/compare/fan.ts";
import { fieldEnd, fieldEndText, fieldStart } from "../../../../src/app/choose/compare/fieldEnds.ts";
import { truckOf } from "../../../../src/app/state/truck.ts";
import { effectiveDocument } from "../../../../src/setup/editing/effectiveDocument.ts";
import { writtenValues } from "../../../../src/setup/editing/writtenValues.ts";
import { windowField } from "../../../../src/studies/window/windowField.ts";
import type { LengthFormat } from "../../../../src/units/formatLength.ts";
import { exampleDocument, exampleText } from "../../exampleText.ts";

const IN = 25.4;
const DEG = Math.PI / 180;
const INCHES = { units: "in" } as const;

function truckFrom(text: string) {
  const made = truckOf(text, "test.json", null);
  return made.ok ? made.value : null;
}

const truck = truckFrom(exampleText)!;
const fan = (
  key: string,
  ends: readonly [number, number],
  count: number,
  document: unknown = exampleDocument,
  shownIn: LengthFormat = INCHES,
) => fanSteps(document, field(key), ends, count, shownIn, (made) => truckFrom(JSON.stringify(made)));
function field(key: string) {
  const found = windowField(exampleDocument, truck.setup, key, "test.json");
  if (!found.ok) throw new TypeError(found.issues[0]!.mend);
  return found.value;
}

describe("a fan's steps", () => {
  it("are even, ends included, either way, and each is the truck with just that number", () => {
    const steps = fan("knuckle.pinAngle", [6 * DEG, 10 * DEG], 5);
    expect(steps.map(({ text }) => text)).toEqual(["6°", "7°", "8°", "9°", "10°"]);
    for (const [i, step] of steps.entries()) {
      const { knuckle } = step.truck!.setup;
      expect(knuckle.pinAngle / DEG).toBeCloseTo(6 + i, 6);
      expect({ ...knuckle, pinAngle: 0 }).toEqual({ ...truck.setup.knuckle, pinAngle: 0 });
    }
    expect(fan("knuckle.pinAngle", [DEG, -DEG], 3).map(({ text }) => text)).toEqual(["1°", "0°", "−1°"]);
  });

  it("are written in the file's units, whatever they are shown in", () => {
    const ends = [139.7, 152.4] as const;
    const [shown, written] = [
      fan("knuckle.hubFace", ends, 2, exampleDocument, { units: "mm" }),
      fan("knuckle.hubFace", ends, 2),
    ];
    expect(shown.map(({ text }) => text)).toEqual(["139.7 mm", "152.4 mm"]);
    expect(shown.map(({ document }) => document)).toEqual(written.map(({ document }) => document));
    expect(shown[0]!.truck!.setup.knuckle.hubFace).toBeCloseTo(139.7, 9);
  });

  it.each([
    ["truck.lowerArm.ballJoint[2]", 8.6, ({ setup }: typeof truck) => setup.truck.lowerArm.ballJoint[2]],
    ["truck.upperArm.frontPivot[1]", 16.2, ({ setup }: typeof truck) => setup.truck.upperArm.frontPivot[1]],
    ["truck.steering.innerEnd[2]", 10.3, ({ setup }: typeof truck) => setup.truck.steering.innerEnd[2]],
    ["knuckle.steeringArm[0]", -5.85, ({ setup }: typeof truck) => setup.knuckle.steeringArm[0]],
    ["wheel.offset", 0, ({ setup }: typeof truck) => setup.wheel.offset],
    ["allowance", 0.25, ({ setup }: typeof truck) => setup.allowance],
  ])("of %s move it, and kept as a variant they say it exactly", (key, now, read) => {
    expect(field(key).now / IN).toBeCloseTo(now, 6);
    const [, second] = fan(key, [(now - 0.1) * IN, (now + 0.1) * IN], 3);
    const [, , third] = fan(key, [(now - 0.1) * IN, (now + 0.1) * IN], 3);
    expect(read(second!.truck!) / IN).toBeCloseTo(now, 9);
    expect(read(third!.truck!) / IN).toBeCloseTo(now + 0.1, 9);
    const values = writtenValues(exampleDocument, third!.document, [key.split(".")[0]!]);
    expect(values.map(({ path }) => path.join("."))).not.toEqual([]);
  });

  it("read in decimals where a tape's sixteenths would be alike", () => {
    expect(fan("knuckle.hubFace", [6 * IN, 6.5 * IN], 3).map(({ text }) => text)).toEqual([
      "6 in",
      "6 1/4 in",
      "6 1/2 in",
    ]);
    expect(fan("knuckle.hubFace", [6 * IN, 6.04 * IN], 3).map(({ text }) => text)).toEqual([
      "6.000 in",
      "6.020 in",
      "6.040 in",
    ]);
  });

  it("stand in the variant shown", () => {
    const [step] = fan(
      "knuckle.pinAngle",
      [9 * DEG, 9 * DEG],
      2,
      effectiveDocument(exampleDocument, "narrow"),
    );
    expect(step!.document).toMatchObject({ knuckle: { hubFace: "5 5/8", pinAngle: 9 } });
    expect(step!.document).not.toHaveProperty("variants");
    expect(exampleDocument.knuckle.pinAngle).toBe(8.4);
  });

  it("have no truck where it does not go together", () => {
    const [low, high] = fan("knuckle.span", [IN, 10.5 * IN], 2);
    expect(low!.truck).toBeNull();
    expect(high!.truck).not.toBeNull();
  });
});

describe("how many values a fan has", () => {
  it.each([
    ["2", 2],
    [" 6 ", 6],
    ["15", 15],
    ["1", null],
    ["16", null],
    ["6.5", null],
    ["-6", null],
    ["", null],
    ["six", null],
  ])("typed as %j is %j", (text, count) => expect(fanCount(text)).toBe(count));

  it("gives the step between two, as near as a tape has it or in decimals", () => {
    expect(apartText({ kind: "angle" }, [6 * DEG, 11 * DEG], 6, INCHES)).toBe("1° apart");
    expect(apartText({ kind: "angle" }, [11 * DEG, 6 * DEG], 8, INCHES)).toBe("0.71° apart");
    expect(apartText({ kind: "length" }, [5 * IN, 6 * IN], 5, INCHES)).toBe("1/4 in apart");
    expect(apartText({ kind: "length" }, [5 * IN, 6 * IN], 6, INCHES)).toBe("0.200 in apart");
    expect(apartText({ kind: "length" }, [120, 130], 4, { units: "mm" })).toBe("3.33 mm apart");
    expect(fan("knuckle.pinAngle", [6 * DEG, 11 * DEG], 6).map(({ text }) => text)).toEqual([
      "6°",
      "7°",
      "8°",
      "9°",
      "10°",
      "11°",
    ]);
  });
});

describe("the ends of a field's range", () => {
  it.each([
    ["angle", "steep", null],
    ["angle", "7 1/2", 7.5 * DEG],
    ["angle", "7.5", 7.5 * DEG],
    ["length", "5 1/2 + 1/8", 5.625 * IN],
    ["length", "150 mm", 150],
    ["length", "wide", null],
  ] as const)("of an %s typed as %j are %d", (kind, text, value) => {
    const found = fieldEnd({ kind }, text, "in");
    if (value === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(value, 9);
  });

  it("begin a little to both sides of what stands there, never below what the field takes", () => {
    expect(fieldStart(field("knuckle.pinAngle"), INCHES)).toEqual(["6.4°", "10.4°"]);
    expect(fieldStart(field("knuckle.hubFace"), INCHES)).toEqual(["5 5/8", "6 5/8"]);
    const small = { ...field("knuckle.hubFace"), now: 0.25 * IN };
    expect(fieldStart(small, INCHES)).toEqual(["0", "3/4"]);
  });

  it("are read with a minus sign and their unit", () => {
    expect(fieldEndText({ kind: "angle" }, -1.5 * DEG, INCHES)).toBe("−1.5°");
    expect(fieldEndText({ kind: "length" }, 5.5 * IN, INCHES)).toBe("5 1/2 in");
  });
});

describe("a fan's plot", () => {
  it("has a curve for each value that goes together, by its name, and is none where none does", () => {
    const steps = [
      { text: "8°", document: null, truck },
      { text: "80°", document: null, truck: null },
      { text: "9°", document: null, truck: truckFrom(JSON.stringify({ ...exampleDocument, variants: [] })) },
    ];
    const plot = fanPlot(steps, "camber")!;
    expect(plot.series.map(({ name }) => name)).toEqual(["8°", "9°"]);
    expect(new Set(plot.series.map(({ line }) => line)).size).toBe(2);
    // Over steering one truck has two curves: of each value the first is drawn.
    expect(fanPlot(steps, "camber-steer")!.series.map(({ name }) => name)).toEqual(["8°", "9°"]);
    expect(fanPlot([steps[1]!], "camber")).toBeNull();
    expect(fanPlot(steps, "no such plot")).toBeNull();
  });
});
