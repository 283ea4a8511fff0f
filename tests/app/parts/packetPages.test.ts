import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { contentsOf, pagesOf } from "../../../src/app/parts/packetPages.ts";
import { truckOf } from "../../../src/app/state/truck.ts";
import { pageHeading, pageTitle } from "../../../src/studies/wording/packetTexts.ts";

const LIMITED = JSON.parse(readFileSync("shared/half-ton-limits.json", "utf8")) as Record<string, unknown>;

function truckWithout(keys: readonly string[]) {
  const kept = Object.entries(LIMITED).filter(([key]) => ![...keys, "variants"].includes(key));
  const made = truckOf(JSON.stringify(Object.fromEntries(kept)), "test.json", null);
  if (!made.ok) throw new Error(made.issues.map(({ key, mend }) => `${key}: ${mend}`).join("; "));
  return made.value;
}

describe("what a print packet is said to hold", () => {
  it("is named only where the truck has it", () => {
    expect(contentsOf(truckWithout(["alignment", "limits", "airSpring"]))).toBe(
      "customer sheet, stance and floor, map of height and steering, what to change",
    );
    expect(contentsOf(truckWithout([]))).toMatch(/alignment card, limits, air springs/);
  });

  it("has pages whose headings all begin alike", () => {
    const titles = pagesOf(truckWithout([]), true).map((page) =>
      pageHeading(pageTitle(page, { hasOdds: true, hasChanges: false })),
    );
    expect(titles.filter((title) => !/^[A-Z]/.test(title))).toEqual([]);
    expect(titles).toContain("Stance and floor");
  });
});
