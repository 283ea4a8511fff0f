import { describe, expect, it } from "vitest";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { exampleTrucks } from "./referee/cases.ts";
import { Judge } from "./referee/judge.ts";

// What is told of a truck, read back from the facts that its words are made of, against pose, check, map and limits.

describe("what is told of every example, variant and stance", () => {
  for (const { who, truck } of exampleTrucks()) {
    it(`${who}: agrees with pose, check, map and limits`, () => {
      const { model, setup } = truck;
      const judge = new Judge(model, who);
      const report = checkClearance(model)!;
      judge.verdict(report);
      judge.map(report);
      for (const { travel } of setup.stances) {
        for (const steer of [0, 0.6, -1]) judge.pose(travel, steer);
        judge.height(travel);
      }
      for (const steer of [0, 1]) judge.low(steer);
      expect(judge.complaints).toEqual([]);
    });
  }
});
