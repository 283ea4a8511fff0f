import { describe, expect, it } from "vitest";
import { isOpen } from "../../../src/app/clear/map/mapRegions.ts";
import { drawnMapOf } from "../../../src/app/work/drawnMap.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { demoModel, lipAlone } from "../../studies/demoModel.ts";

/** A truck whose wheels are looked at one by one: the lip of each is a part of its own. */
function twoLips() {
  const [lip] = lipAlone().truck.body as { points: unknown[]; side?: string }[];
  return demoModel({
    truck: {
      body: [
        { ...lip, side: "left" },
        { ...lip, name: "lip, right", side: "right" },
      ],
    },
  });
}

/** One that is spent when its clock has been read so often. */
function looks(count: number): Budget {
  let read = 0;
  return Budget.of(count / 1000, () => read++);
}

describe("the map of the worse wheel", () => {
  it("has a rub of the one wheel where the time was up before the other was looked at, and nothing where the one clears", () => {
    const model = twoLips();
    const seen = { rubs: 0, clears: 0 };
    for (let count = 2; count < 60 && (seen.rubs === 0 || seen.clears === 0); count++) {
      const { map, gap } = drawnMapOf(model, looks(count));
      for (const [cell, both] of gap.both.entries()) {
        if (map.reach.status[cell] !== 0) continue;
        const known = [gap.left[cell]!, gap.right[cell]!].filter((each) => !Number.isNaN(each));
        if (known.length === 2) expect(both).toBe(Math.min(...known));
        else if (known.length === 1 && known[0]! < 0) {
          expect(both).toBe(known[0]);
          expect(isOpen(map, gap.both, cell)).toBe(false);
          seen.rubs++;
        } else {
          expect(isOpen(map, gap.both, cell)).toBe(true);
          if (known.length === 1) seen.clears++;
        }
      }
    }
    expect(seen.rubs).toBeGreaterThan(0);
    expect(seen.clears).toBeGreaterThan(0);
  });
});
