import { describe, expect, it } from "vitest";
import { exampleTrucks, spread } from "./referee/cases.ts";
import { hearing } from "./referee/hearing.ts";

// What is told of a truck, read back from the facts that its words are made of, against pose, check, map and limits.

describe("what is told of every example, variant and stance", () => {
  for (const { who, truck } of exampleTrucks()) {
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
