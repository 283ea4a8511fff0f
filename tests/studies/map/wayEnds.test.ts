import { expect, it } from "vitest";
import { lowestTravels } from "../../../src/studies/map/lowestTravels.ts";
import { steerLimits } from "../../../src/studies/map/steerLimits.ts";
import { endsTravels, wayEnds } from "../../../src/studies/map/wayEnds.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { demoModel, lipAlone } from "../demoModel.ts";

it("both ends of each way of the map are told: from full bump through the stances to full droop, and at each lock", () => {
  const model = demoModel(lipAlone());
  const { travel, stances } = model.setup;
  const travels = endsTravels(model.setup);
  expect([travels[0], travels.at(-1)]).toEqual([travel.bump, travel.droop]);
  expect(travels).toEqual(expect.arrayContaining(stances.map((stance) => stance.travel)));
  expect(travels.length).toBe(new Set([travel.bump, travel.droop, ...stances.map((s) => s.travel)]).size);
  expect(wayEnds(model, Budget.endless())).toEqual({
    steering: travels.map((one) => steerLimits(model, [one])[0]),
    lowering: [1, -1].map((lock) => lowestTravels(model, [lock])[0]),
  });
});
