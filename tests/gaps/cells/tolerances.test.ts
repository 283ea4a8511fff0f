import { expect, it } from "vitest";
import { slackAt } from "../../../src/gaps/cells/cellSearch.ts";
import { gapSlack } from "../../../src/gaps/cells/tolerances.ts";

it("a gap at one pose is told to a millionth of a millimeter, a depth to five thousandths and a ten-thousandth of itself", () => {
  expect([gapSlack(0), gapSlack(12)]).toEqual([1e-6, 1e-6]);
  expect(gapSlack(-10)).toBeCloseTo(0.005 + 0.001, 12);
  expect([slackAt(0), slackAt(12)]).toEqual([1e-6, 1e-6]);
  expect(slackAt(-10)).toBeCloseTo(1e-6 + 0.001, 12);
});
