import { describe, expect, it } from "vitest";
import { outsideTravelSentence } from "../../../src/studies/wording/poseWords.ts";
import { mmFromInches } from "../../../src/units/lengthUnits.ts";
import { demoSetup } from "../../reference/demoModel.ts";

const INCHES = { units: "in" } as const;
const setup = { ...demoSetup(), travel: { droop: mmFromInches(-3), bump: mmFromInches(2) } };
const told = (left: number, right: number) =>
  outsideTravelSentence({ left: mmFromInches(left), right: mmFromInches(right) }, setup, INCHES);

describe("a pose with each wheel at its own travel", () => {
  it("is refused where halfway between the wheels is past the setup's travel, and told by how far that goes", () => {
    expect(told(3, 2)).toBe(
      "Halfway between its wheels this pose is at 2 1/2 in bump; the setup’s travel ends at 2 in bump.",
    );
    expect(told(-3, -4)).toBe(
      "Halfway between its wheels this pose is at 3 1/2 in droop; the setup’s travel ends at 3 in droop.",
    );
  });

  it("is shown where that is within, its ends too, though a wheel alone is past it", () => {
    expect(told(3, 1)).toBe("");
    expect(told(-5, -1)).toBe("");
    expect(told(4, -2)).toBe("");
  });
});
