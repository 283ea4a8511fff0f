import { describe, expect, it } from "vitest";
import {
  type CheckEntry,
  type CheckReport,
  checkClearance,
  type Verdict,
} from "../../../src/studies/reports/check.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { amountWords } from "../../../src/studies/wording/lengths.ts";
import { limitSentence } from "../../../src/studies/wording/limitSentences.ts";
import { nearestSurface } from "../../../src/studies/wording/nearestSurface.ts";
import { poseSentence } from "../../../src/studies/wording/poseSentence.ts";
import { heightWords, steerWords } from "../../../src/studies/wording/poseWords.ts";
import { verdictSentence } from "../../../src/studies/wording/verdictSentence.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import type { LengthFormat } from "../../../src/units/formatLength.ts";
import { demoModel, lipAlone } from "../demoModel.ts";

const INCHES: LengthFormat = { units: "in", fraction: 16 };
const inch = (inches: number) => 25.4 * inches;
const model = demoModel(lipAlone());

/** The angle of one side's wheel at travel 0, in whole degrees, for the sentences below. */
function degreesAt(side: "left" | "right", travelInches: number, steer: number): number {
  const pose = solvePose(model.frontEnd, inch(travelInches), steer);
  if (!pose.ok) throw new Error("out of reach");
  return Math.round((Math.abs(pose[side].steerAngle) * 180) / Math.PI);
}

function entry(changes: Partial<CheckEntry>): CheckEntry {
  const gap = changes.gap ?? inch(-3 / 16);
  return {
    part: "fender lip",
    side: "left",
    gap,
    bound: gap,
    tolerance: 0.1,
    travel: inch(1),
    steer: -0.9,
    point: [0, 900, 700],
    verdict: "rubs",
    ...changes,
  };
}

function report(verdict: Verdict, ...parts: CheckEntry[]): CheckReport {
  // As a check has it: the smallest gap of all.
  const [worst = null] = [...parts].sort((a, b) => a.gap - b.gap);
  return { verdict, worst, parts, limits: [] };
}

const mirrored = (e: CheckEntry): CheckEntry => ({ ...e, side: "right", steer: -e.steer });

describe("the sentence of a check", () => {
  it("of a check that was cut short tells the least found so far and what is settled", () => {
    const open = entry({ verdict: "close", gap: inch(2), bound: inch(-1), part: "frame rail", steer: 0 });
    const near = entry({ verdict: "clear", gap: inch(1 / 2), bound: inch(1 / 2), steer: 0 });
    const told = (...parts: CheckEntry[]) =>
      verdictSentence({ ...report("close", ...parts), cutShort: true }, model, INCHES);
    expect(told(open, near)).toBe(
      "So far the nearest found is the fender lip, 1/2 in from the left tire at 1 in of bump, " +
        "with the wheels straight ahead; whether something touches is still open.",
    );
    expect(told({ ...open, bound: inch(0.2) }, near)).toMatch(/; nothing comes nearer than 3\/16 in\.$/);
    const rubs = { ...report("rubs", entry({})), cutShort: true as const };
    expect(verdictSentence(rubs, model, INCHES)).toMatch(/^The left tire rubs the fender lip/);
  });

  it("names tire, part, depth, height and the wheel's own angle when something rubs", () => {
    const angle = degreesAt("left", 1, -0.9);
    expect(verdictSentence(report("rubs", entry({})), model, INCHES)).toBe(
      `The left tire rubs the fender lip by 3/16 in at 1 in of bump, steered to 90% of right lock (left wheel ${angle}°).`,
    );
    const right = entry({ side: "right", steer: 1, travel: inch(-1.25) });
    expect(verdictSentence(report("rubs", right), model, INCHES)).toBe(
      `The right tire rubs the fender lip by 3/16 in at 1 1/4 in of droop, steered to full left lock (right wheel ${degreesAt("right", -1.25, 1)}°).`,
    );
  });

  it("tells both sides at once when they are mirror images", () => {
    const left = entry({});
    const angle = degreesAt("left", 1, -0.9);
    expect(verdictSentence(report("rubs", left, mirrored(left)), model, INCHES)).toBe(
      `The tire rubs the fender lip on both sides by 3/16 in at 1 in of bump, the left one steered to 90% of right lock (left wheel ${angle}°), the right one as far to the left.`,
    );
    const straight = entry({ steer: 0 });
    expect(verdictSentence(report("rubs", straight, mirrored(straight)), model, INCHES)).toBe(
      "The tire rubs the fender lip on both sides by 3/16 in at 1 in of bump, with the wheels straight ahead.",
    );
  });

  it("does not call sides alike that differ, and says that the other rubs too", () => {
    const left = entry({});
    const right = entry({ side: "right", gap: inch(-1 / 8), steer: 0.9 });
    expect(verdictSentence(report("rubs", left, right), model, INCHES)).toMatch(
      /^The left tire rubs the fender lip by 3\/16 in .*; the other side rubs it too\.$/,
    );
  });

  it("names one or two more parts that rub and counts more", () => {
    const others = ["inner fender", "brake hose", "frame rail"].map((part) => entry({ part, gap: -1 }));
    const told = (count: number) =>
      verdictSentence(report("rubs", entry({}), ...others.slice(0, count)), model, INCHES);
    expect(told(1)).toMatch(/; the inner fender rubs too\.$/);
    expect(told(2)).toMatch(/; the inner fender and the brake hose rub too\.$/);
    expect(told(3)).toMatch(/; 3 more parts rub\.$/);
  });

  it("never calls a rub 0 in", () => {
    const light = entry({ gap: -0.01 });
    expect(verdictSentence(report("rubs", light), model, INCHES)).toContain("by less than 1/16 in at");
    expect(verdictSentence(report("rubs", light), model, { units: "mm" })).toContain(
      "by less than 0.1 mm at",
    );
  });

  it("gives the allowance when something is close, and never the same length for both", () => {
    const near = (gap: number) =>
      verdictSentence(report("close", entry({ verdict: "close", gap })), model, INCHES);
    const angle = degreesAt("left", 1, -0.9);
    expect(near(inch(1 / 8))).toBe(
      `The fender lip comes within 1/8 in of the left tire at 1 in of bump, steered to 90% of right lock (left wheel ${angle}°); you asked for 1/4 in.`,
    );
    expect(near(inch(0.249))).toContain("within just under 1/4 in of");
    expect(near(inch(0.25) + 0.005)).toContain("within hardly more than 1/4 in of");
  });

  it("names the closest part when everything clears, and says so when not all could be reached", () => {
    const clear = entry({ verdict: "clear", gap: inch(3 / 8), steer: 0 });
    const all = report("clear", clear, entry({ part: "other", verdict: "clear", gap: inch(1) }));
    const rest =
      "the closest is the fender lip, 3/8 in from the left tire at 1 in of bump, with the wheels straight ahead.";
    expect(verdictSentence(all, model, INCHES)).toBe(`Everything clears: ${rest}`);
    const limit = {
      side: "left",
      joint: "upper ball joint",
      along: "travel",
      startsAt: 50,
      travel: 50,
    } as const;
    expect(verdictSentence({ ...all, limits: [limit] }, model, INCHES)).toBe(
      `Everything clears as far as the linkage reaches: ${rest}`,
    );
  });

  it("tells of the entry that makes the verdict, in whatever order the parts stand", () => {
    const clear = entry({ part: "frame rail", verdict: "clear", gap: inch(2) });
    expect(verdictSentence(report("rubs", clear, entry({})), model, INCHES)).toMatch(
      /^The left tire rubs the fender lip/,
    );
  });

  it("says when there is nothing to rub", () => {
    expect(verdictSentence(report("clear"), model, INCHES)).toBe(
      "This setup has no body parts, so there is nothing to rub.",
    );
  });

  it("is right about a real check: the pose it names has that gap", () => {
    const real = checkClearance(model);
    if (!real?.worst) throw new Error("nothing found");
    const pose = solvePose(model.frontEnd, real.worst.travel, real.worst.steer);
    if (!pose.ok) throw new Error("out of reach");
    const least = Math.min(...gapsAt(model, pose).map((e) => e.gap));
    const sentence = verdictSentence(real, model, INCHES);
    const [, over, under] = /by (\d+)\/(\d+) in at/.exec(sentence) ?? [];
    expect(Math.abs(inch(Number(over) / Number(under)) + least)).toBeLessThanOrEqual(inch(1 / 32) + 0.01);
    const [, degrees] = /left one steered to \d+% of \w+ lock \(left wheel (\d+)°\)/.exec(sentence) ?? [];
    expect(Math.abs(Number(degrees) - Math.abs((pose.left.steerAngle * 180) / Math.PI))).toBeLessThanOrEqual(
      0.51,
    );
  });
});

describe("the words of a pose", () => {
  it.each([
    [3.25, "at the “aired out” stance"],
    [3.25 + 1 / 32, "at the “aired out” stance"],
    [3.25 - 1 / 16, "at 3 3/16 in of bump"],
    [3.25 + 1 / 16, "at 3 5/16 in of bump"],
    [0, "at the “driving” stance"],
    [-3.75, "at the “full droop” stance"],
    [-1.5, "at 1 1/2 in of droop"],
  ])("call %f in of travel %s", (travel, words) => {
    expect(heightWords(inch(travel), model, INCHES)).toBe(words);
  });

  it("call travel 0 the measured height where no stance has it, and take the nearest of two stances", () => {
    expect(heightWords(0, demoModel({ ...lipAlone(), stances: [] }), INCHES)).toBe("at the measured height");
    const stances = [
      { name: "low", travel: 1 },
      { name: "lower", travel: "1 1/16" },
    ];
    expect(heightWords(inch(1.05), demoModel({ ...lipAlone(), stances }), INCHES)).toBe(
      "at the “lower” stance",
    );
  });

  it("say the way of the turn, not the sign of the toed wheel's own angle", () => {
    const barely = solvePose(model.frontEnd, 0, 0.001);
    if (!barely.ok) throw new Error("out of reach");
    expect(barely.left.steerAngle).toBeLessThan(0); // its toe-in still outweighs the steering
    expect(steerWords(0.001, barely, "left")).toMatch(
      /^steered to less than 1% of left lock \(left wheel 0\.\d°\)$/,
    );
    expect(steerWords(0.0001, barely, "left")).toBe("with the wheels straight ahead");
    expect(steerWords(-0.5, null, "left")).toBe("at 50% of right lock");
  });

  it("never round an amount to nothing", () => {
    expect(amountWords(inch(1 / 32), INCHES)).toBe("1/16 in");
    expect(amountWords(inch(0.031), INCHES)).toBe("less than 1/16 in");
    expect(amountWords(-0.2, { units: "in", fraction: 64 })).toBe("1/64 in");
    expect(amountWords(0.0005, { units: "in", fraction: "decimal" })).toBe("less than 0.001 in");
    expect(amountWords(-142.94, { units: "mm" })).toBe("142.9 mm");
  });
});

describe("the surface that is touched", () => {
  const ball = (name: string, point: unknown[]) => ({ name, kind: "path", radius: 0.1, points: [point] });
  const parts = [ball("hose", [0, 30, 19.5]), ball("arch", [0, 32, 30])];
  const twoBalls = demoModel({ truck: { body: parts } });
  const pose = solvePose(twoBalls.frontEnd, 0, 0);
  if (!pose.ok) throw new Error("out of reach");

  it("is the wheel inside the barrel and the tire outside the tread", () => {
    expect(nearestSurface(twoBalls, pose, "left", "hose")).toBe("wheel");
    expect(nearestSurface(twoBalls, pose, "right", "hose")).toBe("wheel");
    expect(nearestSurface(twoBalls, pose, "left", "arch")).toBe("tire");
  });

  it("is named in the sentence", () => {
    const hose = entry({ part: "hose", travel: 0, steer: 0, gap: -2 });
    expect(verdictSentence(report("rubs", hose), twoBalls, INCHES)).toMatch(
      /^The left wheel rubs the hose by 1\/16 in/,
    );
  });

  it("is asked of parts that are there", () => {
    expect(() => nearestSurface(twoBalls, pose, "left", "rail")).toThrow(RangeError);
  });
});

describe("the sentence of one pose", () => {
  it("names height, angle, wheel, part and how far", () => {
    const pose = solvePose(model.frontEnd, inch(3.5), -0.9);
    if (!pose.ok) throw new Error("out of reach");
    const gaps = gapsAt(model, pose);
    const angle = Math.round((Math.abs(pose.left.steerAngle) * 180) / Math.PI);
    expect(poseSentence(gaps, pose, model, INCHES)).toBe(
      `At 3 1/2 in of bump, steered to 90% of right lock (left wheel ${angle}°): the left tire rubs the fender lip by 3/16 in, 1 3/4 in behind the axle line, 26 3/16 in above the floor. 1 more place is too near.`,
    );
    const close = gaps.map((e) => ({ ...e, gap: inch(e.side === "left" ? 1 / 8 : 2) }));
    expect(poseSentence(close, pose, model, INCHES)).toMatch(
      /: the left tire is 1\/8 in from the fender lip, .* above the floor; you asked for 1\/4 in\.$/,
    );
    const clear = gaps.map((e) => ({ ...e, gap: inch(2) }));
    expect(poseSentence(clear, pose, model, INCHES)).toMatch(
      /: everything clears, the fender lip closest at 2 in from the left tire\.$/,
    );
    expect(poseSentence([], pose, model, INCHES)).toMatch(/nothing to rub\.$/);
  });
});

describe("the sentence of a limit", () => {
  it("names the joint and where it ends", () => {
    expect(
      limitSentence(
        { side: "left", joint: "upper ball joint", along: "travel", startsAt: inch(-3), travel: inch(-3) },
        model,
        INCHES,
      ),
    ).toBe("The left upper ball joint cannot follow past 3 in of droop.");
    expect(
      limitSentence(
        { side: "right", joint: "outer tie rod end", along: "steer", startsAt: -0.819, travel: inch(3.25) },
        model,
        INCHES,
      ),
    ).toBe(
      "The right outer tie rod end cannot follow past 81% of right lock, tightest at the “aired out” stance.",
    );
  });
});
