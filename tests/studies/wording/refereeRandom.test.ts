import { describe, expect, it } from "vitest";
import { runs } from "../../runs.ts";
import { randomTrucks } from "./referee/cases.ts";
import { Judge } from "./referee/judge.ts";

const TRUCKS = runs(25, 100);

describe(`what is told of ${TRUCKS} random trucks`, () => {
  it("agrees with pose, map and limits", () => {
    const complaints = randomTrucks(TRUCKS, 20261).flatMap(({ who, truck }) => {
      const judge = new Judge(truck.model, who);
      const { droop, bump } = truck.setup.travel;
      for (const travel of [0, 0.8 * bump, droop]) {
        judge.pose(travel, 0.5);
        judge.height(travel);
      }
      judge.low(0);
      judge.map(null);
      return judge.complaints;
    });
    expect(complaints).toEqual([]);
  });
});
