import { describe, expect, it } from "vitest";
import { flatTieRod } from "../../../src/studies/geometry/flatTieRod.ts";
import { followedRange } from "../../../src/studies/geometry/geometryReport.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { type SolveOptions, solveOf } from "../../../src/studies/solve/solveOf.ts";
import { POSE_TARGETS, type SolveReport, type SolveTarget } from "../../../src/studies/solve/solveTypes.ts";
import { poseNumber } from "../../../src/studies/solve/targetOf.ts";
import { widerRange } from "../../../src/studies/solve/widerRange.ts";
import { type TruckToVary, truckWith } from "../../../src/studies/window/truckOverField.ts";
import { windowField } from "../../../src/studies/window/windowField.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { runs } from "../../runs.ts";
import { demoDocument, lipAlone } from "../demoModel.ts";
import { checkedMargin, subjectOf, windowSubject } from "../window/windowSubject.ts";

const DEG = Math.PI / 180;

function solved(
  subject: TruckToVary,
  key: string,
  target: SolveTarget,
  options: SolveOptions = {},
): SolveReport {
  const found = solveOf(subject, key, target, options);
  if (!found.ok) throw new TypeError(found.issues[0]!.mend);
  return found.value;
}

/** A truck with one field at another value. */
function trucks(subject: TruckToVary, key: string) {
  const field = windowField(subject.document, subject.setup, key, "test");
  if (!field.ok) throw new TypeError(field.issues[0]!.mend);
  return (value: number) => {
    const made = truckWith(subject, [[field.value, value]]);
    return made.ok ? made.value : null;
  };
}

const { subject, model } = windowSubject("half-ton-on-air.json");

it("the gap to keep changes no gap: no value of it gives one", () => {
  const report = solved(subject, "allowance", { of: "gap", value: 3 });
  expect([report.found, report.isUnmoved]).toEqual([[], true]);
  expect(report.reachedNow).toBeCloseTo(checkedMargin(subject) + model.setup.allowance, 6);
});

describe("a number at a pose", () => {
  it("camber as measured moves one to one with the pin angle", () => {
    const now = poseNumber(model, "camber");
    const report = solved(subject, "knuckle.pinAngle", { of: "camber", value: -0.5 * DEG });
    expect(report.reachedNow).toBeCloseTo(now, 12);
    expect(report.found).toHaveLength(1);
    const [one] = report.found;
    expect(one!.reached).toBeCloseTo(-0.5 * DEG, 9);
    // In the front view the pin leans with the axis: included angle = kingpin inclination + camber. Toe and caster tilt that
    // by less than a hundredth of a degree here.
    expect(one!.value - report.now).toBeCloseTo(-0.5 * DEG - now, 3);
    expect(one!.value).toBeCloseTo(poseNumber(model, "kingpinInclination") - 0.5 * DEG, 3);
  });

  it("at a height is what the truck made with the value reads there", () => {
    const at = 50.8;
    const report = solved(subject, "knuckle.pinAngle", { of: "camber", value: -0.5 * DEG, at });
    expect(report.reachedNow).toBeCloseTo(poseNumber(model, "camber", at), 12);
    expect(report.reachedNow).not.toBeCloseTo(poseNumber(model, "camber"), 2);
    const field = windowField(subject.document, subject.setup, "knuckle.pinAngle", subject.file);
    if (!field.ok) throw new TypeError("no such field");
    const made = truckWith(subject, [[field.value, report.found[0]!.value]]);
    if (!made.ok) throw new TypeError("does not go together");
    expect(poseNumber(made.value, "camber", at)).toBeCloseTo(-0.5 * DEG, 7);
  });

  it("scrub radius moves with the hub face by the cosine of camber, half track with it", () => {
    const [scrub, half] = [poseNumber(model, "scrubRadius"), poseNumber(model, "halfTrack")];
    const report = solved(subject, "knuckle.hubFace", { of: "scrubRadius", value: scrub - 12 });
    expect(report.found).toHaveLength(1);
    const step = report.found[0]!.value - report.now;
    expect(Math.abs(step + 12 / Math.cos(poseNumber(model, "camber")))).toBeLessThan(0.02);
    const track = solved(subject, "knuckle.hubFace", { of: "halfTrack", value: half - 12 });
    expect(track.found[0]!.value).toBeCloseTo(report.found[0]!.value, 1);
  });

  it("is what the same knuckle solved by hand has: pin angle for level wheels is the axis's lean", () => {
    // Ball joints at (y, z): upper 24 7/8, 18 3/4; lower 26 3/8, 8 1/2. The axis leans in by atan(1.5 / 10.25) = 8.325°.
    const byHand = Math.atan2(26.375 - 24.875, 18.75 - 8.5);
    const straight = subjectOf(
      { ...(demoDocument(lipAlone()) as Record<string, unknown>), alignment: { toe: 0 } },
      "level",
    );
    const level = solved(straight.subject, "knuckle.pinAngle", { of: "camber", value: 0 });
    const kingpin = poseNumber(straight.model, "kingpinInclination");
    expect(kingpin).toBeCloseTo(byHand, 2);
    expect(level.found[0]!.value).toBeCloseTo(kingpin, 3);
  });

  const scanned = [
    ["truck.upperArm.ballJoint[1]", "kingpinInclination"],
    ["truck.upperArm.ballJoint[0]", "caster"],
    ["truck.upperArm.ballJoint[0]", "mechanicalTrail"],
    ["truck.lowerArm.ballJoint[1]", "scrubRadius"],
    ["wheel.backspacing", "halfTrack"],
  ] as const;
  it.each(scanned)("%s for %s is all that a plain fine scan finds, and each gives it", (key, of) => {
    const at = trucks(subject, key);
    const field = windowField(subject.document, subject.setup, key, "test");
    if (!field.ok) throw new TypeError(field.issues[0]!.mend);
    const wanted = poseNumber(at(field.value.now + 7.3)!, of);
    const report = solved(subject, key, { of, value: wanted });
    const off = (value: number) => {
      const made = at(value);
      return made === null ? Number.NaN : poseNumber(made, of) - wanted;
    };
    const count = runs(331, 1009);
    const crossings: [number, number][] = [];
    for (let i = 0; i < count; i++) {
      const [a, b] = [i, i + 1].map((k) => report.from + ((report.to - report.from) * k) / count) as [
        number,
        number,
      ];
      if (off(a) * off(b) <= 0) crossings.push([a, b]);
    }
    expect(report.found.length).toBe(crossings.length);
    expect(crossings.length).toBeGreaterThan(0);
    for (const [i, { value, reached }] of report.found.entries()) {
      expect(value).toBeGreaterThanOrEqual(crossings[i]![0] - 1e-9);
      expect(value).toBeLessThanOrEqual(crossings[i]![1] + 1e-9);
      expect(Math.abs(off(value))).toBeLessThan(1e-7);
      expect(reached).toBeCloseTo(wanted, 7);
    }
  });

  it("is read as a pose has it", () => {
    const pose = solvePose(model.frontEnd, 0, 0);
    if (!pose.ok) throw new TypeError("stands");
    const { left } = pose;
    expect(POSE_TARGETS.map((of) => poseNumber(model, of))).toEqual([
      left.camber,
      left.caster,
      left.kingpinInclination,
      left.scrubRadius,
      left.mechanicalTrail,
      left.contactPatch[1],
    ]);
  });

  it("that the field does not change is told so, and one out of its reach has the nearest", () => {
    const still = solved(subject, "truck.body[0].points[5][2]", { of: "camber", value: 0 });
    expect(still).toMatchObject({ found: [], isUnmoved: true });
    const far = solved(subject, "knuckle.pinAngle", { of: "camber", value: 40 * DEG });
    expect(far).toMatchObject({ found: [], isUnmoved: false });
    expect([far.from, far.to]).toContain(far.nearest!.value);
  });

  it("is looked for only in the range asked for, and ends with the budget", () => {
    const target = { of: "camber", value: -0.5 * DEG } as const;
    const all = solved(subject, "knuckle.pinAngle", target);
    const { value } = all.found[0]!;
    expect(
      solved(subject, "knuckle.pinAngle", target, { from: value + 0.001, to: value + 0.1 }).found,
    ).toEqual([]);
    let clock = 0;
    const cut = solved(subject, "knuckle.pinAngle", target, { budget: Budget.of(0.01, () => clock++) });
    expect(cut.cutShort).toBe(true);
  });

  it("tells its progress, rising to all of it", () => {
    const shares: number[] = [];
    solved(
      subject,
      "knuckle.pinAngle",
      { of: "camber", value: 0 },
      { onProgress: (share) => shares.push(share) },
    );
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});

describe("the least bump steer", () => {
  it("over the height of the inner tie rod end is what flattens the curve", () => {
    const report = solved(subject, "truck.steering.innerEnd[2]", { of: "bumpSteer" });
    const flat = flatTieRod(model.frontEnd, "inner", followedRange(model))!;
    expect(report.found).toHaveLength(1);
    expect(report.found[0]!.value).toBeCloseTo(flat.height, 2);
    expect(report.found[0]!.reached).toBeCloseTo(flat.mostAfter, 5);
    expect(Math.abs(report.found[0]!.reached)).toBeLessThan(Math.abs(report.reachedNow!));
  });
});

describe("a wanted gap", () => {
  const lip = subjectOf(demoDocument(lipAlone()) as object);

  it.each([
    ["knuckle.hubFace", 8, "proven"],
    ["wheel.backspacing", 8, "proven"],
  ] as const)("of %s clears at the value and not beyond it, by plain checks", (key, wanted, rank) => {
    const report = solved(lip.subject, key, { of: "gap", value: wanted });
    expect(report.between.rank).toBe(rank);
    expect(report.found.length).toBeGreaterThan(0);
    // A check's margin is over the setup's own allowance.
    const short = wanted - lip.subject.setup.allowance;
    for (const { value, reached, bracket } of report.found) {
      expect(checkedMargin(lip.subject, [key, value])).toBeGreaterThanOrEqual(short - 0.01);
      expect(checkedMargin(lip.subject, [key, bracket!.beyond])).toBeLessThan(short);
      expect(reached).toBeCloseTo(wanted, 0);
      expect(bracket!.bound).toBeLessThanOrEqual(reached);
      expect(bracket!.by.gap).toBeLessThan(wanted);
    }
  });

  it("finds the values between which a plain scan of checks crosses it", () => {
    const wanted = 8;
    const report = solved(
      lip.subject,
      "knuckle.hubFace",
      { of: "gap", value: wanted },
      { from: 120, to: 170 },
    );
    const short = wanted - lip.subject.setup.allowance;
    const margin = (value: number) => checkedMargin(lip.subject, ["knuckle.hubFace", value]) - short;
    const values = Array.from({ length: 26 }, (_, i) => 120 + 2 * i);
    const crossings = values.slice(1).filter((value, i) => margin(values[i]!) >= 0 !== margin(value) >= 0);
    expect(report.found.length).toBe(crossings.length);
    for (const [i, { value }] of report.found.entries()) {
      expect(value).toBeLessThanOrEqual(crossings[i]!);
      expect(value).toBeGreaterThanOrEqual(crossings[i]! - 2);
    }
  });

  it("of a field that does not change it has none, and none that cannot be has the nearest", () => {
    const none = solved(lip.subject, "knuckle.hubFace", { of: "gap", value: 900 }, { from: 140, to: 160 });
    expect(none.found).toEqual([]);
    expect(none.nearest!.value).toBe(140);
    const still = solved(lip.subject, "truck.wheelbase", { of: "gap", value: 900 }, { from: 2900, to: 3000 });
    expect(still).toMatchObject({ found: [], isUnmoved: true });
  });
});

describe("where what comes nearest stands at the end of the range", () => {
  const range = { from: 0.5 * DEG, to: 10 * DEG };
  const wanted = { of: "camber", value: -9 * DEG } as const;

  it("it is looked on past it, and said over which range", () => {
    const short = solved(subject, "knuckle.pinAngle", wanted, range);
    expect(short.found).toEqual([]);
    // One to one with the pin angle: the nearest stands at an end.
    const end = short.nearest!.value;
    expect([range.from, range.to].some((one) => Math.abs(one - end) < 1e-9)).toBe(true);
    const on = solved(
      subject,
      "knuckle.pinAngle",
      { ...wanted, value: 9 * DEG },
      { ...range, looksOn: true },
    );
    expect(on.asked).toEqual(range);
    expect(on.to).toBeGreaterThan(range.to);
    expect(on.found[0]!.reached).toBeCloseTo(9 * DEG, 7);
    expect(on.found[0]!.value).toBeGreaterThan(range.to);
    const made = trucks(subject, "knuckle.pinAngle")(on.found[0]!.value)!;
    expect(poseNumber(made, "camber")).toBeCloseTo(9 * DEG, 7);
  });

  it("a value tells what else it moves, as the truck with it has it, and that a camber no truck has is unusual", () => {
    const report = solved(
      subject,
      "knuckle.pinAngle",
      { of: "scrubRadius", value: poseNumber(model, "scrubRadius") - 60 },
      { ...range, looksOn: true, tellsAlso: true },
    );
    const one = report.found[0] ?? report.nearest!;
    const after = trucks(subject, "knuckle.pinAngle")(one.value)!;
    const camber = one.also!.numbers.find(({ what }) => what === "camber")!;
    expect(camber.from).toBeCloseTo(poseNumber(model, "camber"), 9);
    expect(camber.to).toBeCloseTo(poseNumber(after, "camber"), 9);
    // Past 9 degrees either way.
    expect(camber.isUnusual).toBe(Math.abs(camber.to) > 9 * DEG);
    expect(Math.abs(camber.to)).toBeGreaterThan(9 * DEG);
    expect(one.also!.moves.every(({ what }) => what !== "scrubRadius")).toBe(true);
  });

  it("there is no more to look at past what the file may hold, nor where it stands inside", () => {
    const at = (nearest: number, least: number, most: number) =>
      widerRange(
        { least, most, now: 5 },
        { from: 1, to: 8 },
        {
          found: [],
          nearest: { value: nearest, reached: 0 },
          isUnmoved: false,
        },
      );
    expect(at(8, 0, 100)).toEqual({ from: 1, to: 15 });
    expect(at(1, -100, 100)).toEqual({ from: -6, to: 8 });
    expect(at(4, -100, 100)).toBeNull();
    expect(at(8, 0, 8)).toBeNull();
    expect(at(8, 0, 10)!.to).toBeCloseTo(10, 6);
  });
});
