import { describe, expect, it } from "vitest";
import { tireGivenBy } from "../../../../src/app/measure/groups/ways.ts";
import { truckOf } from "../../../../src/app/state/truck.ts";
import { checkClearance } from "../../../../src/studies/reports/check.ts";
import { exampleDocument } from "../../exampleText.ts";

function truckOn(tire: unknown, units: "in" | "mm") {
  const document = { ...exampleDocument, tire, ...(units === "mm" ? MM : {}) };
  const made = truckOf(JSON.stringify(document), "test.json", null);
  if (!made.ok) throw new Error(made.issues.map(({ key, mend }) => `${key}: ${mend}`).join("; "));
  return made.value;
}

/** Every number of the example says its own unit, so that the same truck can be kept in a file in mm. */
const MM = {
  ...(JSON.parse(
    JSON.stringify(exampleDocument, (key, value) =>
      typeof value === "number" && !["version", "pinAngle", "toe"].includes(key) ? `${value} in` : value,
    ),
  ) as object),
  units: "mm",
};

/** mm. Where all answers are worked out to: far below the third decimal of an inch. */
const NO_CHANGE = 2e-3;

describe("a tire given in another way", () => {
  it.each(["P235/70R15", "31x10.50R15LT", "LT245/75R15"])("is the same tire: %s", (size) => {
    for (const units of ["in", "mm"] as const) {
      const before = truckOn({ size, loadedRadius: "13 in" }, units);
      for (const way of ["diameter", "profile"] as const) {
        const given = tireGivenBy(
          way,
          { size, loadedRadius: "13 in" },
          before.model.tire,
          before.setup.wheel,
          units,
        );
        expect(given).not.toHaveProperty("size");
        const after = truckOn(given, units);
        const [was, is] = [before.model.tire.profile, after.model.tire.profile];
        expect(is).toHaveLength(was.length);
        expect(Math.max(...was.map((value, i) => Math.abs(is[i]! - value)))).toBeLessThan(NO_CHANGE);
        const [a, b] = [checkClearance(before.model), checkClearance(after.model)];
        expect(b.verdict).toBe(a.verdict);
        expect(Math.abs(b.worst!.gap - a.worst!.gap)).toBeLessThan(2 * NO_CHANGE);
      }
    }
  });

  it("is written in the truck's own unit, outward, and names none", () => {
    for (const units of ["in", "mm"] as const) {
      const before = truckOn({ size: "P235/70R15", loadedRadius: "13 in" }, units);
      const give = (way: "diameter" | "profile") =>
        tireGivenBy(way, {}, before.model.tire, before.setup.wheel, units) as Record<string, unknown>;
      const written = [...Object.values(give("diameter")), ...(give("profile").profile as string[][]).flat()];
      expect(written.filter((text) => !/^-?\d+(?:\.\d{1,5})?$/.test(String(text)))).toEqual([]);
      const diameter = Number(give("diameter").diameter) * (units === "in" ? 25.4 : 1);
      expect(diameter - 2 * before.model.tire.freeRadius).toBeGreaterThanOrEqual(-1e-6);
      expect(diameter - 2 * before.model.tire.freeRadius).toBeLessThanOrEqual(2e-3);
    }
    // 711 mm, which a tape in inches reads as just below 28.
    const { model, setup } = truckOn({ size: "P235/70R15", loadedRadius: "13 in" }, "in");
    expect(tireGivenBy("diameter", {}, model.tire, setup.wheel, "in")).toMatchObject({ diameter: "27.9922" });
  });
});
