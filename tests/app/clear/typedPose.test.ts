import { describe, expect, it } from "vitest";
import { readSteer, readTravel } from "../../../src/app/clear/typedPose.ts";

const RANGE = { droop: -76.2, bump: 101.6 };
const INCHES = { units: "in", fraction: 16 } as const;

const travel = (text: string) => readTravel(text, RANGE, "in", INCHES);

describe("a travel as it is typed", () => {
  it.each([
    ["2", 50.8],
    ["2 bump", 50.8],
    ["2 in up", 50.8],
    ["1 1/2 droop", -38.1],
    ["-1 1/2", -38.1],
    ["20 mm Droop", -20],
    ["0", 0],
    // What a readout has rounded away is not refused.
    ["4.01", 101.6],
  ])("%s is so many mm", (text, mm) => {
    const read = travel(text);
    expect(read.ok && read.value).toBeCloseTo(mm, 9);
  });

  it("takes bare numbers in the units shown", () => {
    const read = readTravel("40 droop", RANGE, "mm", { units: "mm" });
    expect(read.ok && read.value).toBeCloseTo(-40, 9);
  });

  it.each([
    ["5", "the setup’s travel is from 3 in droop to 4 in bump"],
    ["3 1/4 droop", "the setup’s travel is from 3 in droop to 4 in bump"],
    ["-1 droop", "write either a minus or droop, not both"],
    ["up", "empty; write a length such as 5 5/8"],
  ])("%s is refused with what would be right", (text, mend) => {
    const read = travel(text);
    expect(read.ok ? read.value : read.mend.replaceAll("\u00a0", " ")).toContain(mend.split(";")[0]);
  });
});

describe("a steering input as it is typed", () => {
  it.each([
    ["50 left", 0.5],
    ["50% left lock", 0.5],
    ["30 R", -0.3],
    ["-30 %", -0.3],
    ["100", 1],
    ["0", 0],
  ])("%s is such a share of lock", (text, share) => {
    const read = readSteer(text);
    expect(read.ok && read.value).toBeCloseTo(share, 12);
  });

  it.each(["120", "-20 left", "half", ""])("“%s” is refused", (text) => {
    const read = readSteer(text);
    expect(read.ok ? read.value : read.mend).toMatch(/^write /);
  });
});
