import { expect, it } from "vitest";
import { coarseAt, toleranceAt } from "../../../src/studies/search/deepTolerance.ts";

it("past 25 mm of overlap a bound comes within 2 mm, or what is asked for where that is more, and poses are told by a tenth", () => {
  expect([5, -25, -25.001].map((gap) => toleranceAt(gap, 0.1))).toEqual([0.1, 0.1, 2]);
  expect(toleranceAt(-40, 3)).toBe(3);
  expect([Number.POSITIVE_INFINITY, -25, -25.001].map(coarseAt)).toEqual([0.001, 0.001, 0.1]);
});
