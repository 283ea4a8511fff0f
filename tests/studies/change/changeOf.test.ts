import { describe, expect, it } from "vitest";
import { alsoMoves } from "../../../src/studies/change/alsoMoves.ts";
import { EFFORT, SPACER, TRIM } from "../../../src/studies/change/changeField.ts";
import { changeOf } from "../../../src/studies/change/changeOf.ts";
import { changeJson } from "../../../src/studies/documents/changeJson.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { TRIM_MORE, trimOf } from "../../../src/studies/trim/trimOf.ts";
import { smallestStep } from "../../../src/studies/window/opening.ts";
import { truckWith } from "../../../src/studies/window/truckOverField.ts";
import { windowField } from "../../../src/studies/window/windowField.ts";
import { windowOf } from "../../../src/studies/window/windowOf.ts";
import { changeSentence, movesSentences } from "../../../src/studies/wording/changeWords.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { runs } from "../../runs.ts";
import { demoDocument, lipAlone } from "../demoModel.ts";
import { subjectOf, windowSubject } from "../window/windowSubject.ts";

const DEG = Math.PI / 180;

const { subject, model } = subjectOf(demoDocument(lipAlone()) as object, "lip");

/** The check's verdict with some fields at other values. */
function verdictWith(set: readonly { readonly key: string; readonly to: number }[]): string {
  const settings = set.map(({ key, to }) => {
    const found = windowField(subject.document, subject.setup, key, subject.file);
    if (!found.ok) throw new TypeError(key);
    return [found.value, to] as const;
  });
  const made = truckWith(subject, settings);
  if (!made.ok) throw new TypeError("does not go together");
  return checkClearance(made.value).verdict;
}

/** The same truck with its pin elsewhere. */
function withPin(pinHeight: string): object {
  const document = demoDocument(lipAlone()) as { readonly knuckle: object };
  return { ...document, knuckle: { ...document.knuckle, pinHeight } };
}

describe("what to change on a truck that rubs", () => {
  const order = ["wheel.backspacing", "tire.sectionWidth", TRIM, "travel.bump"];
  const report = changeOf(subject, model, { order });

  it("is in the order of effort given, each proven by a check to clear", () => {
    expect(report.verdict).toBe("rubs");
    expect(report.changes.map(({ set, trim }) => (trim === null ? set[0]!.key : TRIM))).toEqual(order);
    for (const { set, bound } of report.changes) {
      if (set.length > 0) expect(verdictWith(set)).toBe("clear");
      expect(bound!).toBeGreaterThanOrEqual(subject.setup.allowance - 0.01);
    }
  });

  it("is hardly more than it takes: a tenth of a millimeter less does not clear", () => {
    for (const { set } of report.changes)
      for (const { key, from, to } of set)
        expect(verdictWith([{ key, to: to - Math.sign(to - from) * 0.1 }])).not.toBe("clear");
  });

  it("a smaller tire is one though its loaded radius was measured of the larger one", () => {
    const { changes } = changeOf(subject, model, { order: ["tire.diameter"] });
    const [{ set }] = changes as [(typeof changes)[number]];
    expect(set[0]!.to).toBeLessThan(set[0]!.from);
    const tire = { size: null, loadedRadius: null, sectionWidth: "250.48 mm", diameter: `${set[0]!.to} mm` };
    const document = demoDocument({ ...lipAlone(), tire });
    expect(checkClearance(subjectOf(document as object, "smaller").model).verdict).toBe("clear");
  });

  it("ends where the window of the field begins", () => {
    const [{ set }] = report.changes as [(typeof report.changes)[number]];
    const window = windowOf(subject, "wheel.backspacing");
    if (!window.ok) throw new TypeError("no window");
    const ends = window.value.fits.flatMap(({ from, to }) => [from, to]);
    expect(Math.min(...ends.map((end) => Math.abs(end - set[0]!.to)))).toBeLessThanOrEqual(0.2);
  });

  it("tells what else moves: backspacing brings the wheel in and scrub radius down by as much, along the pin", () => {
    const [{ set, alsoMoves: others }] = report.changes as [(typeof report.changes)[number]];
    const by = set[0]!.to - set[0]!.from;
    const moved = (what: string) => {
      const found = others.find((one) => one.what === what);
      if (found === undefined || !("to" in found)) throw new TypeError(what);
      return found.to - found.from;
    };
    expect(moved("halfTrack")).toBeCloseTo(-by, 0);
    expect(moved("scrubRadius")).toBeCloseTo(-by, 0);
    expect(others.some(({ what }) => what === "fenderCover")).toBe(false);
  });

  it("tells by how much the truck is raised: by what the pin comes down, near enough", () => {
    const moved = alsoMoves(model, subjectOf(withPin("4 3/8"), "lower pin").model, Budget.endless());
    const [ride] = moved;
    if (ride?.what !== "rideHeight") throw new TypeError(ride?.what);
    // The pin leans by its angle of 8.5° and the joints by theirs: a few percent.
    expect(ride.to - ride.from).toBeGreaterThan(24.5);
    expect(ride.to - ride.from).toBeLessThan(25.5);
    const speech = { format: { units: "in" }, document: subject.document, allowance: 0 } as const;
    const change = {
      set: [],
      trim: null,
      gap: null,
      bound: null,
      smaller: { rank: "searched" },
      alsoMoves: moved,
    } as const;
    expect(movesSentences(change, speech)).toContain(
      "It raises the truck 1 in with the arms at the same angles.",
    );
  });

  it("tells how much smaller a change might be in the units shown, never as less than it is", () => {
    const set = [{ key: "wheel.backspacing", kind: "length", from: 100, to: 120 }] as const;
    const change = {
      set,
      trim: null,
      gap: 1,
      bound: 1,
      smaller: { rank: "proven", within: 0.3 },
      alsoMoves: [],
    } as const;
    const said = (units: "in" | "mm") =>
      movesSentences(change, { format: { units }, document: subject.document, allowance: 0 })[0];
    expect(said("in")).toBe("Proven to be the smallest, to within 1/64 in: nothing less clears.");
    expect(said("mm")).toBe("Proven to be the smallest, to within 0.3 mm: nothing less clears.");
  });

  it("says how deep a lip is to be cut along its panel: no less than the worst gap is short of the allowance", () => {
    const { worst } = checkClearance(model);
    const { trim, gap } = report.changes.find((one) => one.trim !== null)!;
    expect(trim!.part).toBe("fender lip");
    expect(trim!.depth).toBe(trim!.regions[0]!.depth);
    expect(trim!.depth).toBeGreaterThanOrEqual(subject.setup.allowance - worst!.gap - 1e-9);
    // The cut edge is what is checked.
    expect(trim!.left!.part.name).toBe("fender lip");
    expect(gap!).toBeGreaterThanOrEqual(subject.setup.allowance);
  });

  it("of a trim it is proven that an edge left nearer by a millimeter does not clear", () => {
    const { smaller, trim } = report.changes.find((one) => one.trim !== null)!;
    expect(smaller).toEqual({ rank: "stepped", steps: [1] });
    const less = trimOf(model, trim!.part, { more: TRIM_MORE - 1 })!;
    expect(less.regions[0]!.depth).toBeLessThan(trim!.depth);
    const { part, index } = less.left!;
    const body = model.setup.truck.body.map((as, i) => (i === index ? part : as));
    const made = modelOf({ ...model.setup, truck: { ...model.setup.truck, body } }, "less");
    if (!made.ok) throw new TypeError("does not go together");
    expect(checkClearance(made.value).verdict).not.toBe("clear");
  });

  it("tells what is known of smaller changes: of a field that slides the wheel it is proven, else looked at", () => {
    const rankOf = (key: string) => report.changes.find(({ set }) => set[0]?.key === key)!.smaller.rank;
    expect(rankOf("wheel.backspacing")).toBe("proven");
    expect(rankOf("tire.sectionWidth")).toBe("sampled");
  });
});

describe("what to change otherwise", () => {
  it("is nothing on a truck that clears", () => {
    const clear = windowSubject("half-ton-on-air.json", "narrow hub face");
    expect(changeOf(clear.subject, clear.model)).toEqual({
      verdict: "clear",
      changes: [],
      without: [],
    });
  });

  it("is a pair where no single change does it, each of the two more than nothing", () => {
    const order = ["travel.droop", "knuckle.pinAngle", "wheel.backspacing"];
    const narrow = { ...subject, document: subject.document };
    const alone = changeOf(narrow, model, { order: order.slice(0, 2) });
    expect(alone.without.map(({ key }) => key)).toEqual(order.slice(0, 2));
    // Less droop takes away poses alone; of the pin, which turns the wheel, values are looked at with steps between.
    const [droop, pin] = alone.without;
    expect(droop).toMatchObject({ from: model.setup.travel.droop, step: null });
    expect(pin!.from).toBeCloseTo(model.setup.knuckle.pinAngle - 10 * DEG, 5);
    expect(pin!.to - pin!.from).toBeCloseTo(20 * DEG, 5);
    const speech = { format: formatOf(model.setup), document: subject.document, allowance: 0 };
    expect(changeSentence({ ...alone, changes: [] }, speech)).toMatch(
      / Not enough alone: [^;]+, tried from −3 3\/4 in to 0 in; pin angle, tried every [\d.]+° from −1\.50?° to 18\.50?°\.$/,
    );
    for (const { set } of alone.changes) {
      expect(set).toHaveLength(2);
      expect(verdictWith(set)).toBe("clear");
    }
  });

  it("is found where all that fits lies between two steps that do not: as its window has it", () => {
    // Out of the lip the wheel is soon in the rail; from 9 in steps of 3 and of 6 in pass over what fits between.
    const rail = { name: "rail", kind: "box", min: [-32, 12, 15.5], max: [32, 17, 22] };
    const wide = demoDocument({ truck: { body: [...lipAlone().truck.body, rail] } }) as { knuckle: object };
    const between = subjectOf({ ...wide, knuckle: { ...wide.knuckle, hubFace: 9 } }, "between");
    const { changes, without } = changeOf(between.subject, between.model, { order: ["knuckle.hubFace"] });
    expect(without).toEqual([]);
    const [{ set, gap }] = changes as [(typeof changes)[number]];
    const window = windowOf(between.subject, "knuckle.hubFace");
    if (!window.ok) throw new TypeError("no window");
    const [fit] = window.value.fits as [(typeof window.value.fits)[number]];
    expect(window.value.between.rank).toBe("proven");
    expect(window.value.fits).toHaveLength(1);
    expect(set[0]!.to).toBeLessThanOrEqual(fit.to + 0.1);
    expect(set[0]!.to).toBeGreaterThan(fit.to - 0.4);
    expect(gap!).toBeGreaterThanOrEqual(between.subject.setup.allowance);
  });

  it("says that no value of a field is enough where its window has none", () => {
    const { without } = changeOf(subject, model, { order: ["knuckle.pinAngle", SPACER] });
    for (const { key } of without) {
      if (key === SPACER) continue;
      const window = windowOf(subject, key, { isOpened: false });
      expect(window.ok && window.value.fits).toEqual([]);
    }
    expect(without.map(({ key }) => key)).toContain("knuckle.pinAngle");
  });

  it("is a spacer where the wheel must come out: as thick as backspacing would have to be less", () => {
    const rail = { name: "rail", kind: "box", min: [-32, 12, 15.5], max: [32, 19.6, 22] };
    const inner = subjectOf(demoDocument({ truck: { body: [rail] } }) as object, "rail");
    expect(checkClearance(inner.model).verdict).not.toBe("clear");
    const { changes } = changeOf(inner.subject, inner.model, { order: [SPACER, "wheel.backspacing"] });
    const [spacer, backspacing] = changes.map(({ set }) => set[0]!);
    expect([spacer!.key, spacer!.from]).toEqual([SPACER, 0]);
    expect(spacer!.to).toBeGreaterThan(0);
    expect(Math.abs(spacer!.to - (backspacing!.from - backspacing!.to))).toBeLessThan(0.2);
  });

  it("less steering comes after what is bolted on once, and what it costs is told", () => {
    const at = (key: string) => EFFORT.indexOf(key);
    for (const less of ["limits.steeringStop.angle", "truck.steering.stroke", "truck.steering.swing"])
      for (const bolted of ["wheel.backspacing", SPACER, "tire.diameter"])
        expect(at(less)).toBeGreaterThan(at(bolted));
    const { changes } = changeOf(subject, model, { order: ["truck.steering.stroke"] });
    const speech = { format: { units: "in" }, document: subject.document, allowance: 6.35 } as const;
    expect(movesSentences(changes[0]!, speech).join(" ")).toContain(
      "It takes away 77% of the steering each way",
    );
  });

  it("tells less steering as a share of what there is, whole where it is whole: of a stop, of the lock that is reached", () => {
    const speech = { format: { units: "in" }, document: subject.document, allowance: 6.35 } as const;
    const lost = (key: string, from: number, to: number, reached?: number) => {
      const set = [{ key, kind: "angle", from, to, ...(reached === undefined ? {} : { reached }) }] as const;
      const rest = { trim: null, gap: 7, bound: 7, smaller: { rank: "searched" }, alsoMoves: [] } as const;
      return movesSentences({ set, ...rest }, speech)
        .join(" ")
        .match(/takes away (\d+)%/)?.[1];
    };
    // In binary 1 − 0.86 is a hair more than 0.14.
    expect(100 * (1 - 0.86)).toBeGreaterThan(14);
    expect(lost("truck.steering.swing", 1, 0.86)).toBe("14");
    expect(lost("truck.steering.swing", 1, 0.8599)).toBe("15");
    expect(lost("limits.steeringStop.angle", 0.8, 0.4)).toBe("50");
    expect(lost("limits.steeringStop.angle", 0.8, 0.4, 0.5)).toBe("20");
  });

  it("knows how far a stop that no wheel meets is beyond the lock", () => {
    const set = (angle: number) => {
      const limits = { steeringStop: { angle } };
      const stopped = subjectOf(
        demoDocument({ ...lipAlone(), knuckle: { hubFace: 5.59 }, limits }),
        "stopped",
      );
      const { changes } = changeOf(stopped.subject, stopped.model, { order: ["limits.steeringStop.angle"] });
      return { stopped, one: changes[0]!.set[0]! };
    };
    const { stopped, one } = set(38);
    const locks = [-1, 1].flatMap((steer) => {
      const pose = solvePose(stopped.model.frontEnd, 0, steer);
      return pose.ok ? [Math.abs(pose.left.steerAngle), Math.abs(pose.right.steerAngle)] : [];
    });
    expect(one.reached!).toBeGreaterThanOrEqual(Math.max(...locks));
    expect(one.reached!).toBeLessThan(Math.max(...locks) + 0.05);
    if (runs(0, 1) === 1) expect(set(33).one).not.toHaveProperty("reached");
  });

  it("says that an answer takes away the drop ordered, and tries two changes together before a new knuckle alone", () => {
    const lip = demoDocument(lipAlone()) as { readonly knuckle: object };
    const { knuckle } = lip;
    const order = { base: knuckle, drop: "3 in", hubFace: "6 5/16 in" };
    const dropped = { ...lip, knuckle: { ...knuckle, pinHeight: "8 3/8" }, order };
    const on = subjectOf(dropped, "dropped");
    const fields = ["travel.droop", "alignment.toe", "knuckle.pinHeight"];
    const report = changeOf(on.subject, on.model, { order: fields });
    const speech = { format: { units: "in" }, document: dropped, allowance: 6.35 } as const;
    expect(report.isPaired).toBe(true);
    const [only] = report.changes as [(typeof report.changes)[number]];
    const drop = only.alsoMoves.find(({ what }) => what === "drop") as { from: number; to: number };
    expect(drop.from).toBeCloseTo(3 * 25.4, 6);
    expect(drop.from - drop.to).toBeCloseTo(only.set[0]!.from - only.set[0]!.to, 6);
    expect(movesSentences(only, speech).join(" ")).toMatch(/It takes away (all the )?drop that is ordered/);
    expect(changeSentence(report, speech)).toMatch(
      / Of the fields tried, only the knuckle's are enough alone; no pair of the others that was tried is enough\.$/,
    );
    expect(changeJson(report, "in")).toHaveProperty("paired", true);
  });

  it("of a truck that is not as ordered yet tells the drop it has, and what is ordered beside it", () => {
    const { knuckle } = demoDocument() as { readonly knuckle: object };
    const pinned = (pinHeight: string, drop: string) => {
      const order = { base: { ...knuckle, pinHeight: "4 in" }, drop };
      return subjectOf(demoDocument({ ...lipAlone(), knuckle: { pinHeight }, order }), "pinned").model;
    };
    const speech = { format: { units: "in" }, document: subject.document, allowance: 0 } as const;
    const said = (from: string, to: string, drop: string) => {
      const moved = alsoMoves(pinned(from, drop), pinned(to, drop), Budget.endless());
      const smaller = { rank: "searched" } as const;
      const change = { set: [], trim: null, gap: null, bound: null, smaller, alsoMoves: moved };
      const { alsoMoves: json } = changeJson({ verdict: "rubs", changes: [change], without: [] }, "in")
        .changes[0]!;
      expect(json.find(({ what }) => what === "drop")).toHaveProperty(
        "ordered",
        expect.closeTo(drop === "2 1/2" ? 2.5 : 1.5, 9),
      );
      return movesSentences(change, speech).filter((sentence) => /drop/.test(sentence));
    };
    expect(said("5 1/2", "5", "1 1/2")).toEqual([
      "It takes away drop that is ordered: of 1 1/2 in it leaves 1 in.",
    ]);
    expect(said("5 1/2", "5", "2 1/2")).toEqual([
      "It takes away drop the truck has: of 1 1/2 in it leaves 1 in; 2 1/2 in is ordered.",
    ]);
    expect(said("5 1/2", "4", "2 1/2")).toEqual([
      "It takes away all the drop the truck has, 1 1/2 in: the pin then stands as high as on the base knuckle; 2 1/2 in is ordered.",
    ]);
  });

  it.each([[["knuckle.pinHeight"]], [["travel.droop", "knuckle.pinHeight"]]])(
    "says nothing of pairs where there is none to try: %j",
    (order) => {
      const report = changeOf(subject, model, { order });
      expect(report.changes.map(({ set }) => set.map(({ key }) => key))).toEqual([["knuckle.pinHeight"]]);
      expect(report).not.toHaveProperty("isPaired");
      expect(changeJson(report, "in")).not.toHaveProperty("paired");
      const speech = { format: { units: "in" }, document: subject.document, allowance: 6.35 } as const;
      expect(changeSentence(report, speech)).not.toMatch(/pair|two|knuckle/i);
    },
  );

  it("tells of pairs in words of their own, and where the time ended before all were tried", () => {
    const speech = { format: { units: "in" }, document: subject.document, allowance: 6.35 } as const;
    const one = { trim: null, gap: 7, bound: 7, smaller: { rank: "searched" }, alsoMoves: [] } as const;
    const of = (...keys: string[]) => ({
      ...one,
      set: keys.map((key) => ({ key, kind: "length", from: 10, to: 20 }) as const),
    });
    const [single, pair] = [of("knuckle.hubFace"), of("travel.bump", "tire.diameter")];
    const said = (changes: readonly (typeof single)[], more: object) =>
      changeSentence({ verdict: "rubs", changes, without: [], ...more }, speech).replace(/^.*?first\./, "");
    const only = " Of the fields tried, only the knuckle's are enough alone";
    const [isPaired, cutShort] = [true, true] as const;
    expect(said([pair, single], { isPaired })).toBe(
      `${only}; pairs of the others that are enough stand first.`,
    );
    expect(said([pair, single], { isPaired, cutShort })).toMatch(/stand first, perhaps not all there are\.$/);
    expect(said([single], { isPaired, cutShort })).toBe(
      " Of the fields tried, only the knuckle's were found to be enough alone in the time allowed, and no pair of the others.",
    );
    expect(said([pair], {})).toBe(" No single change is enough; these are pairs.");
    expect(said([pair], { cutShort })).toBe(
      " No single change that is enough was found in the time allowed; these are pairs, perhaps not all there are.",
    );
  });

  it("tries pairs of all fields, least effort first, until there are some", () => {
    const order = [
      "knuckle.pinAngle",
      "travel.droop",
      "truck.steering.stroke",
      "tire.diameter",
      "alignment.toe",
      "wheel.backspacing",
    ];
    // Above two of them are told of as well.
    if (runs(0, 1) === 1)
      expect(changeOf(subject, model, { order: order.slice(0, 2) }).changes.length).toBeLessThanOrEqual(1);
    const pairs = changeOf(subject, model, { order, budget: Budget.endless() });
    expect(pairs.changes.length).toBeGreaterThan(0);
  });

  it("of a pair a check says that it clears, that a step less of either one does not, and that it is proven no smaller pair does", () => {
    // Between lip and rail there is no room for the tire as it turns and rises: out of the one it is in the other.
    const rail = { name: "rail", kind: "box", min: [-32, 12, 15.5], max: [32, 20, 22] };
    const body = [...lipAlone().truck.body, rail];
    const rubbing = subjectOf(demoDocument({ truck: { body } }) as object, "far");
    const order = ["travel.bump", "knuckle.hubFace"];
    const { changes, without } = changeOf(rubbing.subject, rubbing.model, { order });
    expect([changes.length, without.length]).toEqual([1, 2]);
    const [{ set, smaller }] = changes as [(typeof changes)[number]];
    expect(smaller).toEqual({
      rank: "proven pair",
      within: [expect.closeTo(0.3, 9), expect.closeTo(0.3, 9)],
    });
    const verdict = (shares: readonly number[]) => {
      const settings = set.map(({ key, from, to }, i) => {
        const found = windowField(rubbing.subject.document, rubbing.subject.setup, key, "far");
        if (!found.ok) throw new TypeError(key);
        return [found.value, from + shares[i]! * (to - from)] as const;
      });
      const made = truckWith(rubbing.subject, settings);
      if (!made.ok) throw new TypeError("does not go together");
      return checkClearance(made.value).verdict;
    };
    expect(verdict([1, 1])).toBe("clear");
    const smallerPairs = [-1, -0.4, 0, 0.3, 0.7, 0.9, 1].flatMap((a) =>
      [-0.5, 0, 0.5, 0.9, 1].filter((b) => a < 1 || b < 1).map((b) => [a, b] as const),
    );
    // On every change every other one.
    const looked = smallerPairs.filter((_, i) => i % runs(2, 1) === 0);
    for (const shares of looked) expect(verdict(shares), String(shares)).not.toBe("clear");
    for (const [i] of set.entries())
      expect(verdict(set.map((_, k) => (k === i ? 1 - 0.1 / Math.abs(set[i]!.to - set[i]!.from) : 1)))).toBe(
        "close",
      );
  });

  it("that the budget ended are not said to be of no use", () => {
    // On every change of a few fields, of which two are of no use.
    const few = ["travel.droop", "knuckle.pinAngle", "wheel.backspacing"];
    const order = runs(0, 1) === 1 ? EFFORT : few;
    const all = changeOf(subject, model, { order }).without.map(({ key }) => key);
    expect(all).toContain("knuckle.pinAngle");
    for (const [i, seconds] of [0.3, 1, 3].entries()) {
      let now = 0;
      const cut = changeOf(subject, model, { order, budget: Budget.of(seconds, () => now++) });
      if (i === 0) expect(cut.cutShort).toBe(true);
      for (const { key } of cut.without) expect(all).toContain(key);
    }
  });

  it("is cut short by a budget, and says so", () => {
    let now = 0;
    const report = changeOf(subject, model, {
      budget: Budget.of(0.05, () => now++),
    });
    expect(report.cutShort).toBe(true);
  });
});

describe("the smallest step", () => {
  const never = () => false;
  it.each([0.01, 0.7, 3.3, 40])("to %d is found to the tolerance, never short of it", (end) => {
    const step = smallestStep((one) => one >= end, 0.2, 50, 0.1, never)!;
    expect(step).toBeGreaterThanOrEqual(end);
    expect(step).toBeLessThanOrEqual(Math.max(end + 0.1, 0.2));
  });

  it("is none where the greatest does not do, and the greatest where only that does", () => {
    expect(smallestStep(() => false, 0.2, 50, 0.1, never)).toBe(null);
    expect(smallestStep((one) => one >= 50, 0.2, 50, 0.1, never)).toBeCloseTo(50, 0);
  });
});
