import { describe, expect, it } from "vitest";
import {
  bareUnit,
  MPA_PER_PSI,
  NEWTONS_PER_POUND,
  parseQuantity,
  type Quantity,
  quantityInUnits,
} from "../../src/units/quantity.ts";

const read = (typed: number | string, quantity: Quantity, units: "in" | "mm" = "in") => {
  const parsed = parseQuantity(typed, quantity, units);
  if (!parsed.ok) throw new Error(parsed.mend);
  return parsed.value;
};
const mend = (typed: number | string, quantity: Quantity) => {
  const parsed = parseQuantity(typed, quantity, "in");
  return parsed.ok ? null : parsed.mend;
};

describe("quantities", () => {
  it("have the sizes of the tables: psi, pound, bar (NIST SP 811, appendix B, from memory)", () => {
    expect(MPA_PER_PSI).toBeCloseTo(0.006_894_757, 9);
    expect(NEWTONS_PER_POUND).toBeCloseTo(4.448_222, 6);
    expect(read("1 bar", "pressure")).toBeCloseTo(0.1, 15);
    expect(read("14.696 psi", "pressure")).toBeCloseTo(0.101_325, 5);
    expect(read(1, "volume")).toBeCloseTo(16_387.064, 9);
    expect(read("1 L", "volume")).toBe(1e6);
  });

  it("are bare in the file's unit: psi, lb, in2 in inches; kPa, kg or N, cm2 in millimeters", () => {
    expect(read(60, "pressure")).toBeCloseTo(60 * MPA_PER_PSI, 15);
    expect(read("60", "pressure", "mm")).toBeCloseTo(0.06, 15);
    expect(read(1000, "weight")).toBeCloseTo(453.592_37, 9);
    expect(read(450, "weight", "mm")).toBe(450);
    expect(read(1000, "load", "mm")).toBe(1000);
    expect(read("100 kg", "load")).toBeCloseTo(980.665, 9);
    expect(read("28 1/4 in²", "area")).toBeCloseTo(28.25 * 645.16, 8);
    expect(["in", "mm"].map((units) => bareUnit("pressure", units as "in"))).toEqual(["psi", "kPa"]);
  });

  it("come back as they were typed", () => {
    for (const quantity of ["weight", "load", "pressure", "area", "volume"] as const)
      for (const units of ["in", "mm"] as const)
        expect(quantityInUnits(read(37.25, quantity, units), quantity, units)).toBeCloseTo(37.25, 12);
  });

  it("refuse what cannot be read, with the mend", () => {
    expect(mend("60 pis", "pressure")).toMatch(/unknown unit "pis"; did you mean "psi"\?/);
    expect(mend("60 furlongs", "pressure")).toMatch(/units of pressure: psi, kPa, bar, MPa/);
    expect(mend("1,240 lb", "weight")).toMatch(/has a comma/);
    expect(mend("", "weight")).toMatch(/^empty/);
    expect(mend("heavy", "weight")).toMatch(/no number found/);
    expect(mend(Number.NaN, "load")).toMatch(/finite/);
  });
});
