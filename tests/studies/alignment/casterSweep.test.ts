import { describe, expect, it } from "vitest";
import { casterSweep } from "../../../src/studies/alignment/casterSweep.ts";
import { drawnTrucks, inputOf } from "../../suspension/drawnTrucks.ts";
import { leanedAxisFrontEnd } from "../../suspension/leanedAxis.ts";
import { assembled } from "../../suspension/trucks.ts";

const DEG = Math.PI / 180;

/**
 * Camber against turn-plate angle in closed form, static camber and toe 0 (derived: the wheel axis keeps its angle to
 * the steering axis): A = tan τ sin δ − tan σ cos δ, γ = asin(tan σ / √(1 + A²)) + atan A. The first-order factor
 * 1 / (2 sin 20°) = 1.4619 against the gauges' 1.5 (common practice); method: SAE Technical Paper 850219 (1985).
 */
describe("caster by a 20° sweep", () => {
  it.each([
    [3, 0, 2.05378, 3.00242, 3.08067],
    [5, 10, 3.43398, 5.02014, 5.15097],
    [8, 12, 5.51829, 8.0672, 8.27744],
  ])(
    "of %d° with %d° of inclination reads high by its known error",
    (caster, inclination, change, reading, rounded) => {
      const frontEnd = assembled(
        leanedAxisFrontEnd({ caster: caster * DEG, inclination: inclination * DEG }),
      );
      const camber = (plate: number) => {
        const lean = Math.tan(inclination * DEG);
        const a = Math.tan(caster * DEG) * Math.sin(plate * DEG) - lean * Math.cos(plate * DEG);
        return Math.asin(lean / Math.sqrt(1 + a * a)) + Math.atan(a);
      };
      expect((camber(20) - camber(-20)) / DEG).toBeCloseTo(change, 5);
      for (const side of ["left", "right"] as const) {
        const found = casterSweep(frontEnd, side, 0)!;
        expect(found.camberDifference).toBeCloseTo(camber(20) - camber(-20), 9);
        expect(found.reading / DEG).toBeCloseTo(reading, 4);
        expect(found.roundedReading / DEG).toBeCloseTo(rounded, 4);
        expect(found.trueCaster / DEG).toBeCloseTo(caster, 9);
        expect(found.error / DEG).toBeCloseTo(reading - caster, 4);
      }
    },
  );

  it("reads negative caster as negative", () => {
    const frontEnd = assembled(leanedAxisFrontEnd({ caster: -2 * DEG, inclination: 9 * DEG }));
    const { reading } = casterSweep(frontEnd, "left", 0)!;
    expect(reading / DEG).toBeCloseTo(-2, 1);
  });

  it("comes within a quarter degree of the true caster on drawn trucks, at any height", () => {
    for (const truck of drawnTrucks) {
      const frontEnd = assembled(inputOf(truck));
      for (const travel of [-30, 0, 30]) {
        for (const side of ["left", "right"] as const) {
          const found = casterSweep(frontEnd, side, travel);
          expect([truck.name, found !== null]).toEqual([truck.name, true]);
          expect(Math.abs(found!.error) / DEG).toBeLessThan(0.25);
        }
      }
    }
  });

  it("has no answer where a lock stops the wheel short of 20°", () => {
    const input = leanedAxisFrontEnd({ caster: 5 * DEG, inclination: 10 * DEG });
    if (input.steering.type !== "rack") throw new Error("not a rack");
    const short = assembled({ ...input, steering: { ...input.steering, stroke: 40 } });
    expect(casterSweep(short, "left", 0)).toBeNull();
  });
});
