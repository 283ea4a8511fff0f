import { describe, expect, it } from "vitest";
import type { LimitMargin, LimitPose } from "../../../src/studies/limits/limitsOf.ts";
import { pastLimitSentence } from "../../../src/studies/wording/poseSentence.ts";

const DEG = Math.PI / 180;
const INCHES = { units: "in" } as const;

/** A pose with these margins (degrees or inches), in this order. */
function poseWith(
  ...margins: readonly (readonly ["left" | "right", string, number, ("length" | "angle")?])[]
): LimitPose {
  const told = margins.map(([side, name, amount, measure = "angle"]): LimitMargin => {
    const margin = amount * (measure === "angle" ? DEG : 25.4);
    return { side, name, measure, margin, share: margin };
  });
  return { ok: true, travel: 0, steer: 0, margins: told };
}

describe("the sentence about the limits a pose passes", () => {
  it("is empty when all are kept, at a limit to rounding, or out of reach", () => {
    expect(pastLimitSentence(poseWith(["left", "steering stop", 2]), INCHES)).toBe("");
    expect(pastLimitSentence(poseWith(["left", "bump stop", -1e-9, "length"]), INCHES)).toBe("");
    const away: LimitPose = { ok: false, travel: 0, steer: 0, side: "left", joint: "tie rod" };
    expect(pastLimitSentence(away, INCHES)).toBe("");
  });

  it("names the joint's cone, plane or angle, the side, and by how much", () => {
    const one = (name: string) => pastLimitSentence(poseWith(["left", name, -1.2]), INCHES);
    expect(one("lower ball joint")).toBe("Past the left lower ball joint's cone by 1.2°.");
    expect(one("lower ball joint, in and out")).toBe(
      "Past the left lower ball joint's limit in and out by 1.2°.",
    );
    expect(one("outer tie rod end")).toBe("Past the left outer tie rod end's angle by 1.2°.");
    expect(one("steering stop")).toBe("Past the left steering stop by 1.2°.");
    const short = poseWith(["right", "air spring compression", -0.25, "length"]);
    expect(pastLimitSentence(short, INCHES)).toBe("Past the right air spring compression limit by 1/4 in.");
  });

  it("tells two sides that do the same once, and counts what is more than two", () => {
    const same = poseWith(["left", "droop strap", -0.5, "length"], ["right", "droop strap", -0.5, "length"]);
    expect(pastLimitSentence(same, INCHES)).toBe("Past the droop strap, both sides, by 1/2 in.");
    const four = poseWith(
      ["right", "steering stop", -3],
      ["left", "steering stop", -2],
      ["left", "outer tie rod end", -1],
      ["right", "upper ball joint", -0.5],
    );
    expect(pastLimitSentence(four, INCHES)).toBe(
      "Past the right steering stop by 3.0°, the left steering stop by 2.0° and 2 more limits.",
    );
  });
});
