import { describe, expect, it } from "vitest";
import type { FloorSetup, MeasuredStance } from "../../../src/setup/types/floorTypes.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { stanceMeasures } from "../../../src/studies/stances/stanceMeasures.ts";
import { travelForMeasure } from "../../../src/studies/stances/travelForMeasure.ts";
import { drawnTrucks, inputOf } from "../../suspension/drawnTrucks.ts";
import {
  LEVEL_ARMS,
  type PlanarWishbone,
  planarFrontEnd,
  UNEQUAL_ARMS,
} from "../../suspension/planarWishbone.ts";
import { modelAround } from "../geometry/modelAround.ts";
import { bareSpring } from "../limits/limitTruck.ts";

const DEG = Math.PI / 180;
const FLOOR: FloorSetup = { rear: "follows", lip: [0, 900, 760], frame: [-100, 350, 400], points: [] };
const MEASURES = ["lowerArmAngle", "airSpringHeight", "lipHeight", "frameHeight"] as const;

/** Lower arm angles at travels, + = up, worked out by bisection in the front view (as in planarLinkages.test.ts). */
const ARM_ANGLES = [
  [-75, -11.948651],
  [-25, -5.639503],
  [0, -2.544804],
  [25, 0.524399],
  [75, 6.623419],
] as const;

describe("a height in every measure", () => {
  const floor = { ...FLOOR };
  const airSpring = bareSpring([0, 550, 500], [0, 550, 236.666667]);
  const model = modelAround(planarFrontEnd(UNEQUAL_ARMS), { floor, airSpring });

  it.each(ARM_ANGLES)("at %d mm has the hand-worked arm angle, + = ball joint lower: %d", (travel, angle) => {
    expect(stanceMeasures(model, travel)!.lowerArmAngle / DEG).toBeCloseTo(-angle, 5);
  });

  it("reads floor to lip and frame from the patch: at rest as typed, else less what the patch rises", () => {
    expect(stanceMeasures(model, 0)).toMatchObject({
      travel: 0,
      lipHeight: expect.closeTo(760, 9),
      frameHeight: expect.closeTo(400, 9),
    });
    // Patch height by hand: wheel center less R cos camber, −1.22385° at +50.
    const patch = 410 - 360 * Math.cos(1.22385 * DEG);
    const low = stanceMeasures(model, 50)!;
    expect(low.lipHeight).toBeCloseTo(760 - patch, 5);
    expect(low.frameHeight).toBeCloseTo(400 - patch, 5);
  });

  it("reads the air spring mount to mount: its arm mount two thirds out swings on the lower arm", () => {
    // The mount lies on the arm's line, 300 of 450 mm out; at +25 the arm stands at 0.524399°.
    const reach = (300 / 450) * Math.hypot(450, 20);
    const [cos, sin] = [Math.cos(0.524399 * DEG), Math.sin(0.524399 * DEG)];
    const [y, z] = [250 + reach * cos, 250 + reach * sin];
    expect(stanceMeasures(model, 25)!.airSpringHeight).toBeCloseTo(Math.hypot(550 - y, 500 - z), 4);
  });

  it("leaves out what the setup does not say, and has nothing out of reach", () => {
    const bare = stanceMeasures(modelAround(planarFrontEnd(UNEQUAL_ARMS), { airSpring: null }), 0);
    expect(bare).toMatchObject({ airSpringHeight: null, lipHeight: null, frameHeight: null });
    expect(stanceMeasures(model, 900)).toBeNull();
  });
});

describe.each(["follows", "stays"] as const)("with a rear that %s", (rear) => {
  it.each(drawnTrucks.map((truck) => [truck.name, truck] as const))(
    "%s: every measure leads back to the travel it was read at",
    (_, truck) => {
      const airSpring = bareSpring([0, 480, 520], [0, 520, 230]);
      const input = { ...inputOf(truck), loadedRadius: 345 };
      const model = modelAround(input, { floor: { ...FLOOR, rear }, airSpring });
      for (const travel of [-61.3, -12, 0, 0.25, 47.9]) {
        const read = stanceMeasures(model, travel)!;
        for (const measure of MEASURES) {
          const found = travelForMeasure(model, measure, read[measure]!);
          expect(found, measure).toEqual({ ok: true, travel: expect.closeTo(travel, 6) });
        }
      }
    },
  );
});

describe("stances typed by a measure", () => {
  const airSpring = bareSpring([0, 550, 500], [0, 550, 236.666667]);
  const base = modelAround(planarFrontEnd(UNEQUAL_ARMS), { floor: FLOOR, airSpring });
  const typed = (index: number, measure: MeasuredStance["measure"], value: number): MeasuredStance => ({
    name: `by ${measure}`,
    index,
    measure,
    value,
    typed: "as typed",
  });
  const placed = (measuredStances: MeasuredStance[], stances = [{ name: "road", travel: 0 }]) =>
    modelOf({ ...base.setup, stances, measuredStances }, "truck.json");

  it("get their travel when the truck is put together, in the file's order, and again when it is again", () => {
    const at = stanceMeasures(base, 40)!;
    const made = placed([
      typed(0, "lipHeight", at.lipHeight!),
      typed(2, "lowerArmAngle", at.lowerArmAngle),
      typed(3, "airSpringHeight", at.airSpringHeight!),
    ]);
    if (!made.ok) throw new Error("must be placed");
    const wanted = [
      { name: "by lipHeight", travel: expect.closeTo(40, 7) },
      { name: "road", travel: 0 },
      { name: "by lowerArmAngle", travel: expect.closeTo(40, 7) },
      { name: "by airSpringHeight", travel: expect.closeTo(40, 7) },
    ];
    expect(made.value.setup.stances).toEqual(wanted);
    const again = modelOf(made.value.setup, "truck.json");
    expect(again.ok && again.value.setup.stances).toEqual(made.value.setup.stances);
  });

  it("are other travels with another knuckle: an inch more drop is at an inch less bump for the same lip height", () => {
    const upright: PlanarWishbone = LEVEL_ARMS;
    const input = planarFrontEnd(upright);
    const stance = { measuredStances: [typed(0, "lipHeight", 730)], stances: [], floor: FLOOR };
    const dropped = { ...input, knuckle: { ...input.knuckle, pinHeight: input.knuckle.pinHeight + 25.4 } };
    // Level parallel arms keep the wheel upright, so its patch rises with its center.
    expect(modelAround(input, stance).setup.stances[0]!.travel).toBeCloseTo(30, 9);
    expect(modelAround(dropped, stance).setup.stances[0]!.travel).toBeCloseTo(30 - 25.4, 9);
  });

  it("leave a setup whose stances are all typed by travel as it is", () => {
    const made = modelOf(base.setup, "truck.json");
    expect(made.ok && made.value.setup).toBe(base.setup);
  });

  it("that no travel gives are issues that name the least and the most", () => {
    const made = placed([typed(1, "frameHeight", 2000), typed(2, "lowerArmAngle", 1.39)]);
    if (made.ok) throw new Error("no truck is that high");
    expect(made.issues.map(({ key }) => key)).toEqual(["stances[1].frameHeight", "stances[2].lowerArmAngle"]);
    const [high, steep] = made.issues;
    expect(high!.mend).toMatch(/^no travel in reach gives it; between .* in and .* in one does$/);
    expect(high!.value).toBe('"as typed"');
    expect(steep!.mend).toMatch(/^no travel in reach gives it; between -?\d+\.\d° and \d+\.\d° one does$/);
    const { least, most } = high!.range!;
    for (const value of [least, most]) {
      const found = travelForMeasure(base, "frameHeight", value + (value === least ? 1e-6 : -1e-6));
      expect(found.ok).toBe(true);
    }
  });

  it("that nothing can read are issues too, not a travel", () => {
    const without = modelAround(planarFrontEnd(UNEQUAL_ARMS), { airSpring: null });
    expect(travelForMeasure(without, "airSpringHeight", 300)).toEqual({ ok: false, least: null, most: null });
  });
});
