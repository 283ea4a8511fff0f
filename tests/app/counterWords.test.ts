import { describe, expect, it } from "vitest";
import { type Truck, truckOf } from "../../src/app/state/truck.ts";
import type { SteerLimits } from "../../src/studies/map/steerLimits.ts";
import { type Stop, wheelStops } from "../../src/studies/map/stop.ts";
import type { CheckEntry, CheckReport, Verdict } from "../../src/studies/reports/check.ts";
import {
  outSentence,
  rangeClause,
  rangeSentence,
  type SteeringFacts,
  steerClause,
  steeringFacts,
  steerSentence,
} from "../../src/studies/wording/comparisonWords.ts";
import { gapLabel } from "../../src/studies/wording/pictureTexts.ts";
import { firstStop } from "../../src/studies/wording/stopFacts.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { exampleText } from "./exampleText.ts";

const IN = 25.4;
const FORMAT = { units: "in" } as const;

function exampleTruck(): Truck {
  const made = truckOf(exampleText, "test.json", null);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

const { model } = exampleTruck();
const LOW = 3.25 * IN;
const touch = (at: number, side: "left" | "right" = "left"): Stop => ({
  ...{ stop: "touch", at, side, part: "lip", gap: -0.001, point: [0, 0, 0] },
});
const end = (at: number): Stop => ({ stop: "end", at });

/** Limits by wheel: left and right in a left turn, then in a right turn. Those of the allowance are not asked for. */
function limits(ll: Stop, lr: Stop, rl: Stop, rr: Stop): SteerLimits {
  const turn = (left: Stop, right: Stop, way: 1 | -1) => {
    const touched = wheelStops(left, right, way);
    return { touch: touched, allowance: touched };
  };
  return { ok: true, travel: LOW, leftTurn: turn(ll, lr, 1), rightTurn: turn(rl, rr, -1) };
}

function entry(gap: number, verdict: Verdict, part = "lip"): CheckEntry {
  const point = [0, 880, 700] as const;
  return { part, side: "left", gap, bound: gap, tolerance: 0.1, travel: LOW, steer: 0, point, verdict };
}

function report(verdict: Verdict, parts: readonly CheckEntry[]): CheckReport {
  const [worst = null] = [...parts].sort((a, b) => a.gap - b.gap);
  return { verdict, parts, worst, limits: [] };
}

describe("what is said at the counter", () => {
  it("how much farther out one stands, whichever it is", () => {
    expect(outSentence(["wide", "narrow"], [800 + 15.875, 800], FORMAT)).toBe(
      "As measured, the wheels of “wide” sit 5/8 in farther out per side than those of “narrow”.",
    );
    expect(outSentence(["narrow", "wide"], [800, 815.875], FORMAT)).toBe(
      "As measured, the wheels of “wide” sit 5/8 in farther out per side than those of “narrow”.",
    );
    expect(outSentence(["a", "b"], [800, 800.5], FORMAT)).toBe(
      "As measured, the wheels of “a” and “b” sit equally far out.",
    );
    expect(outSentence(["a", "b"], [812.5, 800], { units: "mm" })).toContain("12.5 mm farther out");
    // By their letters, where the names stand beside those.
    expect(outSentence([{ letter: "A" }, { letter: "B" }], [800 + 15.875, 800], FORMAT)).toBe(
      "As measured, the wheels of A sit 5/8 in farther out per side than those of B.",
    );
  });

  it("at which steer the tire meets what, by the angle of the wheel that meets it", () => {
    const pose = solvePose(model.frontEnd, LOW, 0.5);
    if (!pose.ok) throw new Error("the test's own truck must reach half lock");
    const angle = Math.floor((Math.abs(pose.left.steerAngle) * 180) / Math.PI);
    const told = limits(touch(0.5), end(1), end(-1), touch(-0.7, "right"));
    expect(steerClause("wide", steeringFacts(told, null, model, FORMAT), model, FORMAT)).toBe(
      `the tire of “wide” meets the lip at ${angle}° of steer`,
    );
  });

  it("that it touches straight ahead, that nothing touches, and what is not proven", () => {
    const stuck = limits(touch(0), touch(0, "right"), touch(0), touch(0, "right"));
    expect(steerClause("wide", steeringFacts(stuck, null, model, FORMAT), model, FORMAT)).toBe(
      "the tire of “wide” touches the lip even straight ahead",
    );
    const free = limits(end(1), end(1), end(-1), end(-1));
    expect(steerClause("narrow", steeringFacts(free, null, model, FORMAT), model, FORMAT)).toBe(
      "“narrow” steers lock to lock and nothing touches",
    );
    const unknown: Stop = { stop: "unproven", at: 0.5 };
    expect(
      steerClause(
        "odd",
        steeringFacts(limits(unknown, end(1), end(-1), end(-1)), null, model, FORMAT),
        model,
        FORMAT,
      ),
    ).toMatch(/^“odd” touches nothing up to \d+° of steer; past that it is not known$/);
    const rod: Stop = { stop: "reach", at: -0.8, side: "right", joint: "tie rod" };
    expect(
      steerClause(
        "long",
        steeringFacts(limits(end(1), end(1), end(-1), rod), null, model, FORMAT),
        model,
        FORMAT,
      ),
    ).toMatch(
      /^“long” steers to \d+°, where the right tie rod cannot follow any farther; nothing touches before$/,
    );
    const height = { stop: "reach", side: "left", joint: "upper arm", at: 70 } as const;
    const facts = steeringFacts(free, height, model, FORMAT);
    expect(steerClause("tall", facts, model, FORMAT)).toBe(
      "“tall” cannot come down to “aired out”: the left upper arm cannot follow past 2 3/4 in of bump",
    );
  });

  it("puts both into one sentence that begins with the height", () => {
    const free = steeringFacts(limits(end(1), end(1), end(-1), end(-1)), null, model, FORMAT);
    const height = { stop: "reach", side: "left", joint: "upper arm", at: 70 } as const;
    const barred = steeringFacts(limits(end(1), end(1), end(-1), end(-1)), height, model, FORMAT);
    const told = (facts: readonly SteeringFacts[]) => steerSentence(LOW, model, ["a", "b"], facts, FORMAT);
    expect(told([free, barred])).toBe("At the “aired out” stance, a; b.");
    // Where neither can stand there each says so itself.
    expect(told([barred, barred])).toBe("A; b.");
  });

  it("over the whole range: rubs by, comes within, clears by, and by what part", () => {
    const rubs = report("rubs", [entry(2, "close", "rail"), entry(-0.375 * IN, "rubs")]);
    expect(rangeClause("wide", rubs, model, FORMAT)).toBe("the tire of “wide” rubs the lip by 3/8 in");
    const close = report("close", [entry(0.125 * IN, "close")]);
    expect(rangeClause("wide", close, model, FORMAT)).toBe(
      "the tire of “wide” comes within 1/8 in of the lip, nearer than the 1/4 in asked for",
    );
    const clear = report("clear", [entry(0.375 * IN, "clear")]);
    expect(rangeClause("narrow", clear, model, FORMAT)).toBe(
      "“narrow” clears by 3/8 in, the lip being nearest",
    );
    expect(rangeClause("bare", report("clear", []), model, FORMAT)).toBe("nothing is measured on “bare”");
    const both = rangeSentence([
      rangeClause("a", rubs, model, FORMAT),
      rangeClause("b", clear, model, FORMAT),
    ]);
    expect(both).toBe(
      "Over every height and steering angle, the tire of “a” rubs the lip by 3/8 in; “b” clears by 3/8 in, the lip being nearest.",
    );
    expect(both).not.toMatch(/safe/i);
  });

  it("says of a clear check how far it holds, when the linkage cannot follow everywhere", () => {
    const clear = report("clear", [entry(IN, "clear")]);
    const limit = { side: "left", joint: "tie rod", along: "steer", startsAt: 0.9, travel: 0 } as const;
    expect(rangeClause("b", { ...clear, limits: [limit] }, model, FORMAT)).toBe(
      "“b” clears by 1 in as far as the linkage reaches, the lip being nearest",
    );
  });
});

describe("what stops the steering first", () => {
  it("is the nearest of both wheels and both ways", () => {
    expect(firstStop(limits(touch(0.7), touch(0.6, "right"), touch(-0.4), end(-1)))).toMatchObject({
      at: -0.4,
      side: "left",
    });
  });

  it("is the left wheel's where both sides are mirror images, up to rounding", () => {
    const told = limits(touch(0.44), touch(0.63, "right"), touch(-0.63), touch(-0.4399999, "right"));
    expect(firstStop(told)).toMatchObject({ at: 0.44, side: "left" });
  });

  it("is a touch rather than the lock, where both come together", () => {
    expect(firstStop(limits(end(1), touch(1, "right"), end(-1), end(-1)))).toMatchObject({ stop: "touch" });
  });
});

describe("a gap on the picture", () => {
  it("says its state in words, and touches when it is neither in nor out", () => {
    expect(gapLabel(-4, 6.35, FORMAT)).toEqual({ word: "rubs", said: "rubs", amount: "3/16 in" });
    expect(gapLabel(4, 6.35, FORMAT)).toEqual({ word: "close", said: "close", amount: "3/16 in" });
    expect(gapLabel(0.3, 6.35, FORMAT).amount).toBe("< 1/16 in");
    expect(gapLabel(10, 6.35, FORMAT)).toEqual({ word: "clear", said: "clear", amount: "3/8 in" });
    expect(gapLabel(-0.0003, 6.35, FORMAT)).toEqual({ word: "rubs", said: "touches", amount: "" });
  });
});
