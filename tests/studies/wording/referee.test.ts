import { describe, expect, it } from "vitest";
import { runs } from "../../runs.ts";
import { exampleTrucks, spread } from "./referee/cases.ts";
import { hearing } from "./referee/hearing.ts";

// What is told of a truck, read back from the facts that its words are made of, against pose, check, map and limits.

describe("what is told of every example, variant and stance", () => {
  // On every change every other one; the worst gap of those between is looked at beside it, in `oneWorst.test.ts`.
  for (const { who, truck } of exampleTrucks().filter((_, i) => i % runs(2, 1) === 0)) {
    it(`${who}: agrees with pose, check, map and limits`, () => {
      const { model, setup } = truck;
      const complaints = hearing(model, who, {
        ...{
          stances: setup.stances,
          steers: [0, 0.6, -1],
          lows: [0, 1],
          samples: spread(24, 7),
          looks: null,
        },
      });
      expect(complaints).toEqual([]);
    });
  }
});
