import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { keyText } from "../../../src/setup/types/keyPath.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { writeOrder } from "../../../src/studies/order/writeOrder.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { orderedDocument, sheetOf } from "./orderedTruck.ts";

const MM = 25.4;

/** The fields in which blocks and order disagree. */
function differing(document: unknown): string[] {
  return sheetOf(document).fields.flatMap(({ path, agrees }) => (agrees ? [] : [keyText(path)]));
}

describe("an order sheet", () => {
  it("gives the knuckle of the base, the drop and the ordered hub face", () => {
    const values = Object.fromEntries(
      sheetOf(orderedDocument()).fields.map(({ path, ordered }) => [keyText(path), ordered]),
    );
    expect(values["knuckle.pinHeight"]).toEqual({
      kind: "length",
      mm: expect.closeTo((2.875 + 2.5) * MM, 9),
    });
    expect(values["knuckle.hubFace"]).toEqual({ kind: "length", mm: expect.closeTo(5.5 * MM, 9) });
    // Hat offset 1 5/8 in from a seat 1/4 in inboard of the face.
    expect(values["hardware.rotor.inboard"]).toEqual({ kind: "length", mm: expect.closeTo(1.875 * MM, 9) });
    expect(values["hardware.caliper.min"]).toEqual({
      kind: "point",
      point: [3.25, -4.25, -2.75].map((at) => expect.closeTo(at * MM, 9)),
    });
    // A cylinder 2 in across and 1 1/2 in high has its rim 1 1/4 in from its middle: a triangle of 3, 4 and 5.
    expect(values["hardware.upperBallJoint.radius"]).toEqual({
      kind: "length",
      mm: expect.closeTo(1.25 * MM, 6),
    });
  });

  it("a ball joint's ball holds the whole housing, to the last thousandth of an inch", () => {
    const sizes = fc.integer({ min: 500, max: 4000 });
    fc.assert(
      fc.property(sizes, sizes, (across, high) => {
        const document = orderedDocument({
          lowerBallJoint: { housingDiameter: across / 1000, housingHeight: high / 1000 },
        });
        const field = sheetOf(document).fields.find(({ path }) => path[1] === "lowerBallJoint")!;
        const inches = field.ordered.kind === "length" ? field.ordered.mm / MM : Number.NaN;
        const corner = Math.hypot(across / 2000, high / 2000);
        expect(inches).toBeGreaterThan(corner - 1e-9);
        expect(inches).toBeLessThan(corner + 0.001 + 1e-9);
      }),
      { seed: 1955, numRuns: 12 },
    );
  });

  it("tells the pin's steps from the bearings, each thinner than the one inboard of it", () => {
    const { pinSteps } = sheetOf(orderedDocument());
    expect(
      pinSteps.map(({ name, from, to, diameter }) => [name, ...[from, to, diameter].map((mm) => mm / MM)]),
    ).toEqual([
      ["seal", -5.5, -3.25, 1.75].map(near),
      ["inner bearing", -3.25, -2.625, 1.25].map(near),
      ["between bearings", -2.625, -0.75, 0.75].map(near),
      ["outer bearing", -0.75, -0.125, 0.75].map(near),
      ["nut thread", -0.125, 0.875, 0.75].map(near),
    ]);
    for (const [i, step] of pinSteps.entries()) {
      if (i === 0) continue;
      expect(step.from).toBeCloseTo(pinSteps[i - 1]!.to, 9);
      expect(step.diameter).toBeLessThanOrEqual(pinSteps[i - 1]!.diameter + 1e-9);
    }
  });

  it("tells how far the truck comes down as the rise of the wheel's center by the pose kernel, and by its slope", () => {
    const { effect } = sheetOf(orderedDocument());
    const setup = resolveSetup(orderedDocument(), "x");
    if (!setup.ok) throw new Error("the example resolves");
    const model = modelOf(setup.value, "x");
    if (!model.ok) throw new Error("the example assembles");
    const pose = solvePose(model.value.frontEnd, 0, 0);
    if (!pose.ok) throw new Error("the example stands");
    const { upperBallJoint, lowerBallJoint, wheelAxis } = pose.left;
    const span = Math.hypot(...upperBallJoint.map((at, i) => at - lowerBallJoint[i]!));
    const rise = (upperBallJoint[2] - lowerBallJoint[2]) / span;
    // 2 1/2 in along the leaning axis, less 3/4 in along the pin that points down outboard.
    expect(effect!.lowers).toBeCloseTo(2.5 * MM * rise - 0.75 * MM * wheelAxis[2], 6);
    expect(effect!.lowers).toBeGreaterThan(2.4 * MM);
    expect(effect!.narrows).toBeGreaterThan(0.75 * MM);
  });

  it("with a number of its own goes before the catalog's", () => {
    const { parts } = sheetOf(orderedDocument({ brake: null, hub: null }, {}));
    expect(parts.brake.rotorDiameter).toBeNull();
    const chosen = sheetOf(
      orderedDocument({ brake: { rotorThickness: null, item: "Kestrel 11" }, hub: null }),
    ).parts.brake;
    expect(chosen).toMatchObject({ item: "Kestrel 11", rotorThickness: expect.closeTo(1.25 * MM, 9) });
    const own = sheetOf(
      orderedDocument({
        hub: { item: "Heron 6x5.5", innerBearing: { bore: null, width: "3/4" }, boltPattern: null },
      }),
    ).parts.hub;
    expect(own.innerBearing).toMatchObject({
      number: "LM48548",
      bore: expect.closeTo(1.375 * MM, 9), // ANSI/ABMA 19.2, from memory
      width: expect.closeTo(0.75 * MM, 9),
    });
    expect(own.boltPattern).toMatchObject({ holes: 6 });
  });

  it("filled in by nothing fixes nothing and says what is open", () => {
    const bare = { ...orderedDocument(), order: {} };
    const sheet = sheetOf(bare);
    expect(sheet.fields).toEqual([]);
    expect(sheet.misfits).toEqual([]);
    expect(sheet.effect).toBeNull();
    expect(sheet.open.map(keyText)).toContain("order.hubFace");
    expect(sheet.order).toMatchObject({ side: "pair", quantity: 1 });
    expect(writeOrder(bare, sheet.fields, "in")).toBe(bare);
  });
});

describe("what an order writes", () => {
  it("tells by field where the blocks say something else, and the blocks stay what answers go by", () => {
    const document = orderedDocument(
      {},
      { knuckle: { hubFace: 6, pinHeight: 5 }, wheel: { backspacing: 4 } },
    );
    expect(differing(document)).toEqual(["knuckle.pinHeight", "knuckle.hubFace", "wheel.backspacing"]);
    expect(sheetOf(document).setup.knuckle.hubFace).toBeCloseTo(6 * MM, 9);
  });

  it("makes the blocks agree, as short as a person would type it, and leaves alone what agrees", () => {
    const document = orderedDocument({}, { knuckle: { hubFace: 6, pinHeight: 5 }, hardware: null });
    const written = writeOrder(document, sheetOf(document).fields, "in") as ReturnType<
      typeof orderedDocument
    >;
    expect(written.knuckle).toMatchObject({ hubFace: "5 1/2", pinHeight: "5 3/8", span: "10 5/8" });
    expect(written.wheel).toBe(document.wheel);
    expect(written.truck).toBe(document.truck);
    expect(written.hardware).toMatchObject({
      upperBallJoint: { radius: "1 1/4" },
      lowerBallJoint: { radius: 1.319 },
      rotor: { diameter: 11, thickness: "1 1/4", inboard: "1 7/8" },
      caliper: { frame: "hub", min: ["3 1/4", "-4 1/4", "-2 3/4"], max: ["5 3/4", -1, "2 3/4"] },
    });
    expect(differing(written)).toEqual([]);
  });

  it("puts the wheel's mounting face in one way only", () => {
    const document = orderedDocument({}, { wheel: { backspacing: null, offset: "12 mm" } });
    const written = writeOrder(document, sheetOf(document).fields, "in") as { wheel: object };
    expect(written.wheel).toMatchObject({ backspacing: "4 1/4" });
    expect(written.wheel).not.toHaveProperty("offset");
  });

  it("agrees with the order afterwards, whatever was ordered, in inches and millimeters", () => {
    const sixteenths = (least: number, most: number) =>
      fc.integer({ min: 16 * least, max: 16 * most }).map((at) => at / 16);
    const orders = fc.record({
      drop: sixteenths(0, 4),
      hubFace: sixteenths(5, 7),
      pinAngle: fc.integer({ min: 400, max: 1200 }).map((at) => at / 100),
      pinLead: sixteenths(-1, 1),
      wheel: fc.record({ rimWidth: sixteenths(6, 9), backspacing: sixteenths(3, 5) }),
      brake: fc.record({ rotorThickness: sixteenths(1, 2), hatOffset: sixteenths(1, 3) }),
    });
    fc.assert(
      fc.property(orders, fc.constantFrom("in", "mm"), (order, units) => {
        const sized = JSON.parse(JSON.stringify(order), (key, value: unknown) =>
          typeof value === "number" && key !== "pinAngle" ? `${value} in` : value,
        );
        const document = orderedDocument(sized);
        // Every bare number of the example is a length in inches, but angles and counts.
        const inUnits =
          units === "in"
            ? document
            : JSON.parse(JSON.stringify({ ...document, units }), (key, value: unknown) =>
                isBareLength(key, value) ? `${value} in` : value,
              );
        const written = writeOrder(inUnits, sheetOf(inUnits).fields, units as "in" | "mm");
        expect(differing(written)).toEqual([]);
      }),
      { seed: 1955, numRuns: 12 },
    );
  });
});

const NO_LENGTHS = ["version", "pinAngle", "toe", "quantity"];

function isBareLength(key: string, value: unknown): boolean {
  if (NO_LENGTHS.includes(key)) return false;
  return typeof value === "number" || (typeof value === "string" && /^-?[\d /]+$/.test(value));
}

function near(value: string | number): unknown {
  return typeof value === "number" ? expect.closeTo(value, 9) : value;
}
