import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { exampleFields, withExampleAt } from "../../../src/setup/exampleMarks.ts";
import { newTruckDocument } from "../../../src/setup/newTruck.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { keyText, parseKeyText, valueAt } from "../../../src/setup/types/keyPath.ts";
import { answerState } from "../../../src/studies/doubts/doubt.ts";
import { measureAskOf } from "../../../src/studies/measure/measureAskOf.ts";
import { measureTruck } from "../../../src/studies/measure/measureTruck.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { exampleDoubts } from "../../../src/studies/wording/answerWords.ts";
import { applyReadings } from "../../../src/studies/worksheet/applyReadings.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";
import { TWELVE } from "../../reference/shortReadings.ts";

type Json = { readonly [key: string]: unknown };

function shared(name: string) {
  return JSON.parse(readFileSync(new URL(`../../../shared/${name}.json`, import.meta.url), "utf8"));
}

const measured = shared("tape-measured") as Json & {
  readonly readings: readonly Json[];
  readonly truck: Json;
};

function applied(document: unknown, units: "in" | "mm" = "in"): unknown {
  const { ask, issues } = measureAskOf(document, "truck.json");
  expect(issues).toEqual([]);
  return applyReadings(document, measureTruck(ask!), units);
}

describe("readings written into a setup", () => {
  it("give the points of the example back, which was made of its readings but for the one that is wrong", () => {
    const { suspect } = measureTruck(measureAskOf(measured, "truck.json").ask!);
    const right = { ...measured, readings: measured.readings.filter((_, i) => i !== suspect?.reading.index) };
    const { truck } = applied(right) as typeof measured;
    const points = (of: Json) =>
      JSON.stringify([of.upperArm, of.lowerArm, of.steering, of.wheelbase]).match(/-?\d[\d ./]*/g)!;
    const inches = (text: string) =>
      text
        .trim()
        .split(" ")
        .reduce((sum, part) => {
          const [over, under = "1"] = part.split("/");
          return sum + (Number(over) / Number(under)) * (sum < 0 ? -1 : 1);
        }, 0);
    const [now, before] = [points(truck).map(inches), points(measured.truck).map(inches)];
    expect(now.length).toBeGreaterThan(20);
    now.forEach((value, i) => {
      expect(Math.abs(value - before[i]!)).toBeLessThan(0.1);
    });
    expect(exampleFields(applied(right))).toEqual([]);
  });

  it("of the short list alone make a whole truck that is checked, and never drawn green", () => {
    const document = applied({ ...newTruckDocument("in"), readings: TWELVE });
    const read = resolveSetup(document, "truck.json");
    expect(read.ok ? [] : read.issues).toEqual([]);
    if (!read.ok) return;
    const model = modelOf(read.value, "truck.json");
    expect(model.ok ? [] : model.issues).toEqual([]);
    if (!model.ok) return;
    const report = checkClearance(model.value)!;
    expect(report.parts.map(({ part }) => part)).toContain("fender lip");
    expect(answerState({ verdict: "clear" }, exampleDoubts(read.value))).toBe("assumed");
    expect(read.value.fromExample?.of).toBe("assumed layout");
    expect(exampleDoubts(read.value)[0]!.text).toMatch(/\d+ numbers are still assumed/);
    const assumed = exampleFields(document).map(keyText);
    expect(assumed).toContain("truck.steering.innerEnd");
    expect(assumed).not.toContain("wheel.backspacing");
    expect(assumed).not.toContain("tire.diameter");
  });

  it("stand where the readings say: wheel center and ball joint of the truck that is made", () => {
    const read = resolveSetup(
      applied(
        {
          ...newTruckDocument("mm"),
          units: "mm",
          readings: TWELVE.map((one) => ({ ...one, is: `${one.is} in` })),
        },
        "mm",
      ),
      "t",
    );
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    const model = modelOf(read.value, "t");
    if (!model.ok) throw new Error(JSON.stringify(model.issues));
    expect(read.value.truck.lowerArm.ballJoint[2]).toBeCloseTo(8.5 * 25.4, 1);
    const { knuckle, wheel } = read.value;
    const { lowerArm, upperArm } = read.value.truck;
    const up = upperArm.ballJoint.map((value, i) => value - lowerArm.ballJoint[i]!);
    expect(Math.hypot(...up)).toBeCloseTo(knuckle.span, 1);
    // By hand in the front view: up the steering axis to the pin, then out along it, level since there is no camber.
    const lean = Math.atan2(-up[1]!, Math.hypot(up[0]!, up[2]!));
    const out = knuckle.hubFace - wheel.offset;
    const y = lowerArm.ballJoint[1] - knuckle.pinHeight * Math.sin(lean) + out;
    expect(y).toBeCloseTo((65.5 * 25.4) / 2, -1);
  });

  it("take the wheel's camber from a pin angle that was read beside the steering axis", () => {
    const setupOf = (knuckle: object) => {
      const read = resolveSetup(applied({ ...newTruckDocument("in"), knuckle, readings: TWELVE }), "t");
      if (!read.ok) throw new Error(JSON.stringify(read.issues));
      return read.value;
    };
    const upright = setupOf({});
    const lean = (upright.knuckle.pinAngle / Math.PI) * 180;
    const { knuckle, wheel, truck } = setupOf({ pinAngle: lean + 2 });
    // By hand in the front view: the pin falls outboard of the steering axis by its own angle less the axis' lean.
    const camber = (2 / 180) * Math.PI;
    const out = knuckle.hubFace - wheel.offset;
    const up = truck.upperArm.ballJoint.map((value, i) => value - truck.lowerArm.ballJoint[i]!);
    const [axisY, axisZ] = [up[1]! / knuckle.span, up[2]! / knuckle.span];
    const place = [
      truck.lowerArm.ballJoint[1] + knuckle.pinHeight * axisY + out * Math.cos(camber),
      truck.lowerArm.ballJoint[2] + knuckle.pinHeight * axisZ - out * Math.sin(camber),
    ];
    expect(place[0]).toBeCloseTo((65.5 * 25.4) / 2, -1);
    expect(Math.abs(place[1]! - 13.25 * 25.4)).toBeLessThan(0.1);
    expect(knuckle.pinHeight).toBeGreaterThan(upright.knuckle.pinHeight + 1);
  });

  it("fill with more readings what was assumed, and keep what the owner typed", () => {
    const first = applied({ ...newTruckDocument("in"), readings: TWELVE }) as Json & { readonly truck: Json };
    const more = [
      ...TWELVE,
      { height: "steering.innerEnd", is: "9 3/4" },
      { ahead: "steering.innerEnd", is: "-6 1/4" },
      { offset: "steering.innerEnd", is: "11 1/2" },
    ];
    const second = applied({ ...first, name: "Mine", readings: more }) as typeof first;
    expect((second.truck.steering as Json).innerEnd).toEqual([-6.25, 11.5, 9.75]);
    expect(second.name).toBe("Mine");
    expect(exampleFields(second).map(keyText)).not.toContain("truck.steering.innerEnd");
    expect(applied(second)).toEqual(second);
  });

  it("follow a reading corrected later, by either way in, and keep what the owner typed himself", () => {
    const typed = newTruckDocument("in") as Json & { readonly truck: Json; readonly knuckle: Json };
    const own = {
      ...typed,
      truck: {
        ...typed.truck,
        lowerArm: { ...(typed.truck.lowerArm as Json), rearPivot: [-7.25, 10.5, 9.75] },
      },
      knuckle: { ...typed.knuckle, pinAngle: 9 },
    };
    const first = applied({ ...own, readings: TWELVE }) as Json;
    const [joint, height, size] = [
      "truck.lowerArm.ballJoint[2]",
      "knuckle.pinHeight",
      "wheel.backspacing",
    ].map((key) => parseKeyText(key)!);
    const corrected = (is: string) =>
      TWELVE.map((one) =>
        one.height === "lowerArm.ballJoint" || one.size === "wheel.backspacing" ? { ...one, is } : one,
      );
    for (const follow of [applied, withReadings]) {
      const second = follow({ ...first, readings: corrected("9") });
      expect([joint!, size!].map((path) => valueAt(first, path))).toEqual([8.5, 4.25]);
      expect([joint!, size!].map((path) => valueAt(second, path))).toEqual([9, 9]);
      expect(valueAt(second, height!)).not.toBe(valueAt(first, height!));
      expect(valueAt(second, ["truck", "lowerArm", "rearPivot"])).toEqual([-7.25, 10.5, 9.75]);
      expect(valueAt(second, ["knuckle", "pinAngle"])).toBe(9);
      expect(follow({ ...(second as Json), readings: TWELVE })).toEqual(first);
    }
  });

  it("follow a reading corrected later also in a setup that has all its own numbers", () => {
    const of = (is: string) => ({
      ...measured,
      readings: [{ height: "lowerArm.ballJoint", is, within: "1/32" }],
    });
    const first = applied(of("9 1/4")) as Json;
    const second = applied({ ...first, readings: of("8 3/4").readings });
    const place = ["truck", "lowerArm", "ballJoint", 2];
    expect([first, second].map((one) => Number(valueAt(one, place)))).toEqual([
      expect.closeTo(9.25, 1),
      expect.closeTo(8.75, 1),
    ]);
    expect(valueAt(second, ["knuckle"])).toEqual(measured.knuckle);
  });

  it("change nothing of a document without readings that has its own numbers", () => {
    const { readings: _, ...plain } = measured;
    expect(applied(plain)).toBe(plain);
    const { body: _body, ...truck } = measured.truck;
    const bare = { ...plain, truck };
    expect(applied(bare)).toBe(bare);
  });

  it("keep the right inner end of a steering box that was typed where nothing of it is read", () => {
    const box = shared("long-bed-steering-box");
    const { truck } = applied({
      ...box,
      readings: [{ height: "lowerArm.frontPivot", is: 9.375 }],
    }) as typeof box;
    expect(truck.lowerArm.frontPivot[2]).toBeCloseTo(9.375, 3);
    expect(truck.steering).toEqual(box.truck.steering);
    expect(truck.steering.innerEndRight).toHaveLength(3);
  });

  it("of a truck that has marks leave what they fill in marked as nobody's, but for what they tell", () => {
    const { build, ...own } = shared("ordered-knuckle");
    const marked = withExampleAt({ ...own, build }, ["build"], "a knuckle") as typeof own;
    const { pinAngle: _, ...knuckle } = own.knuckle;
    const { droop: __, ...travel } = own.travel;
    const [x, y] = own.truck.lowerArm.frontPivot;
    const lowerArm = { ...own.truck.lowerArm, frontPivot: [x, y, ""] };
    const readings = [{ height: "lowerArm.frontPivot", is: 9.375 }];
    const open = { ...marked, knuckle, travel, truck: { ...own.truck, lowerArm }, readings };
    const left = exampleFields(applied(open)).map(keyText);
    expect(left.filter((key) => !/^(build|readings)/.test(key))).toEqual([
      "knuckle.pinAngle",
      "travel.droop",
    ]);
  });

  it("of a truck that has marks take the mark off a number filled from the layout once they tell it", () => {
    const { build, ...own } = shared("ordered-knuckle");
    const marked = withExampleAt({ ...own, build }, ["build"], "a knuckle") as typeof own;
    const [x, y] = own.truck.lowerArm.frontPivot;
    const lowerArm = { ...own.truck.lowerArm, frontPivot: [x, y, ""] };
    const readings = [{ offset: "lowerArm.frontPivot", is: 10.5 }];
    const filled = applied({ ...marked, truck: { ...own.truck, lowerArm }, readings }) as typeof own;
    const left = (document: unknown) =>
      exampleFields(document)
        .map(keyText)
        .filter((key) => !/^(build|readings)/.test(key));
    expect(left(filled)).toEqual(["truck.lowerArm.frontPivot"]);
    const told = applied({
      ...filled,
      readings: [...readings, { height: "lowerArm.frontPivot", is: 9.375 }],
    });
    expect(left(told)).toEqual([]);
    expect(valueAt(told, ["truck", "lowerArm", "frontPivot", 2])).toBeCloseTo(9.375, 3);
  });

  it("write the right inner end of a steering box where it was read", () => {
    const POINT = ["", "", ""];
    const arm = { pivot: POINT, end: POINT };
    const document = {
      ...newTruckDocument("in"),
      truck: {
        ...(newTruckDocument("in").truck as object),
        steering: { type: "pitman", innerEnd: POINT, swing: 35, pitman: arm, idler: arm },
      },
      readings: [
        { offset: "steering.innerEnd", is: 9 },
        { offset: "steering.innerEnd", side: "right", is: "9 1/2" },
      ],
    };
    const { truck } = applied(document) as {
      readonly truck: {
        readonly steering: {
          readonly innerEnd: unknown[];
          readonly innerEndRight: unknown[];
          readonly idler: { readonly end: number[] };
        };
      };
    };
    expect([truck.steering.innerEnd[1], truck.steering.innerEndRight[1]]).toEqual([9, -9.5]);
    expect(Number(truck.steering.idler.end[1])).toBeLessThan(0);
  });
});
