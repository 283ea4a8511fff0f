import { describe, expect, it } from "vitest";
import { measureOf, STANCE_MEASURES, stanceBy } from "../../../../src/app/measure/groups/stanceMeasure.ts";
import { truckOf } from "../../../../src/app/state/truck.ts";
import { exampleDocument } from "../../exampleText.ts";

/** The example with points on the body to measure heights at, and its stances as given. */
function truckWith(stances: readonly unknown[]) {
  const floor = { lip: [0, "36 1/8", "30 3/8"], frame: [0, 12.25, 15.5] };
  const text = JSON.stringify({ ...exampleDocument, floor, stances });
  const made = truckOf(text, "test.json", null);
  if (!made.ok) throw new Error(made.issues.map(({ key, mend }) => `${key}: ${mend}`).join("; "));
  return made.value;
}

const AIRED = { name: "aired out", travel: "3 1/4" };

describe("a stance's height", () => {
  it.each(STANCE_MEASURES.filter(({ measure }) => measure !== "airSpringHeight"))(
    "is kept when it is given by $label",
    ({ measure }) => {
      const before = truckWith([AIRED]);
      const stance = stanceBy(measure, AIRED, before, "in");
      expect(measureOf(stance)).toBe(measure);
      expect(Object.keys(stance).sort()).toEqual(["name", measure].sort());
      const after = truckWith([stance]);
      // A thousandth of a degree at the arm's end is under a hundredth of a mm.
      expect(after.model.setup.stances[0]!.travel).toBeCloseTo(3.25 * 25.4, 1);
    },
  );

  it("that cannot be measured yet is given a number to be typed over", () => {
    const stance = stanceBy("airSpringHeight", AIRED, truckWith([AIRED]), "in");
    expect(stance).toEqual({ name: "aired out", airSpringHeight: "10" });
  });
});
