import { describe, expect, it } from "vitest";
import { builtKnuckleValue } from "../../../src/app/build/asBuilt/KeepBuilt.tsx";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { exampleDocument } from "../../setup/fixtures.ts";
import { DEG, ordered } from "../../studies/jig/jigCases.ts";

describe("a knuckle as built, as a variant holds it", () => {
  it.each(["in", "mm"] as const)("reads back as what was found, to far below any reading, in %s", (units) => {
    const built = { ...ordered, pinAngle: 8.6543 * DEG, hubFace: 156.7891, toe: 0.4 * DEG };
    const knuckle = builtKnuckleValue(built, units);
    // Only lengths of the knuckle matter here; the rest of the truck is the example's, which is in inches.
    const typed = Object.fromEntries(
      Object.entries(knuckle).map(([key, value]) => {
        const text = (length: number) => `${length} ${units}`;
        if (key === "pinAngle") return [key, value];
        return [key, Array.isArray(value) ? value.map(text) : text(value as number)];
      }),
    );
    const read = resolveSetup({ ...exampleDocument(), knuckle: typed }, "truck.json");
    if (!read.ok) throw new Error(read.issues[0]?.mend);
    const found = read.value.knuckle;
    for (const key of ["span", "pinHeight", "pinLead", "hubFace"] as const)
      expect(Math.abs(found[key] - built[key])).toBeLessThan(0.002);
    found.steeringArm.forEach((value, i) => {
      expect(Math.abs(value - built.steeringArm[i]!)).toBeLessThan(0.002);
    });
    expect(Math.abs(found.pinAngle - built.pinAngle)).toBeLessThan(0.001 * DEG);
  });
});
