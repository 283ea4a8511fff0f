import { describe, expect, it } from "vitest";
import { effectiveDocument } from "../../../src/setup/editing/effectiveDocument.ts";
import { removeAt, setAt } from "../../../src/setup/reading/setAt.ts";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { DrawnTrucks } from "../../../src/studies/odds/drawnTrucks.ts";
import { type OddsOptions, oddsOf, oddsShare, oddsTogether } from "../../../src/studies/odds/oddsOf.ts";
import { Touches } from "../../../src/studies/odds/touches.ts";
import { whatMatters } from "../../../src/studies/odds/whatMatters.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import type { TruckToVary } from "../../../src/studies/window/truckOverField.ts";
import { exampleDocuments } from "../../fuzz/exampleDocuments.ts";
import { runs } from "../../runs.ts";
import { subjectOf } from "../window/windowSubject.ts";

/** The normal distribution by Abramowitz and Stegun 26.2.17, good to 7.5e-8 (from memory). */
function phi(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z >= 0 ? 1 - tail : tail;
}

const EXACT = {
  tire: { sectionWidth: 0, diameter: 0 },
  knuckle: { span: 0, pinHeight: 0, pinLead: 0, pinAngle: 0, hubFace: 0, steeringArm: 0 },
};

/** The plain truck with nothing but these parts, all exact but what tells its ±. */
function withParts(body: readonly object[], readings: readonly object[] = []): TruckToVary {
  let document: unknown = exampleDocuments.get("half-ton-on-air");
  document = setAt(removeAt(removeAt(document, ["hardware"]), ["variants"]), ["truck", "body"], body);
  document = setAt(document, ["readings"], readings);
  return subjectOf(setAt(document, ["odds"], EXACT) as object).subject;
}

/** A box far inboard of the left tire, its face so many mm from the middle of the truck. */
const inboard = (y: string) => ({
  name: "rail",
  kind: "box",
  side: "left",
  min: ["-900 mm", "-100 mm", "-900 mm"],
  max: ["900 mm", y, "1500 mm"],
});
const above = (z: string) => ({
  name: "roof",
  kind: "box",
  side: "left",
  min: ["-900 mm", "0 mm", z],
  max: ["900 mm", "1500 mm", "1500 mm"],
});

/** mm. How far the tire stays from a face at this place. */
function gapTo(part: object): number {
  const { subject, model } = { subject: withParts([part]), model: null };
  const drawn = new DrawnTrucks(subject, 1).at(new Float64Array(0));
  if (!drawn.ok || model !== null) throw new Error("does not go together");
  return checkClearance(drawn.value, { tolerance: 0.001 }).worst!.gap;
}

describe("odds", () => {
  it("of one number that moves the gap evenly are the normal distribution's", () => {
    const gap = gapTo(inboard("200 mm"));
    const cases = [
      [1, 1],
      [-0.5, 2],
      [2, 1],
      [0, 3],
    ] as const;
    for (const [off, within] of cases.slice(0, runs(1, 4))) {
      const face = 200 + gap - off * within;
      const odds = oddsOf(withParts([inboard(`${face} mm ± ${within} mm`)]), { draws: runs(120, 800) });
      expect(odds.inputs.map(({ key }) => key)).toEqual(["truck.body[0].max[1]"]);
      // One dimension of scattered points is told to a few times 1/draws.
      expect(Math.abs(odds.clears - phi(off))).toBeLessThan(0.013);
      expect(odds.low <= phi(off) && phi(off) <= odds.high).toBe(true);
    }
  });

  it("of a number that stands by its readings are those of the readings together", () => {
    const gap = gapTo(inboard("200 mm"));
    const face = 200 + gap - 1.5;
    const reading = { offset: 'body["rail"].max', is: `${face} mm`, within: "2 mm" };
    const of = (count: number) =>
      oddsOf(withParts([inboard(`${face} mm`)], Array(count).fill(reading)), { draws: runs(120, 800) });
    for (const count of runs(0, 1) === 1 ? [1, 2] : [2]) {
      const odds = of(count);
      expect(odds.inputs.map(({ key, source }) => [key, source])).toEqual(
        Array.from({ length: count }, (_, i) => [`readings[${i}][0]`, "reading"]),
      );
      // Two tapes of the same are surer by the root of two.
      const share = phi((1.5 / 2) * Math.sqrt(count));
      expect(Math.abs(odds.clears - share)).toBeLessThan(count === 1 ? 0.013 : 0.03);
    }
    // A number that was put elsewhere since does not stand by its reading.
    const moved = withParts([inboard(`${face - 5} mm`)], [reading]);
    expect(oddsOf(moved, { draws: 10 }).inputs).toEqual([]);
  });

  it("of two that move a gap each are the product, and what matters is told of both", () => {
    const [side, top] = [gapTo(inboard("200 mm")), gapTo(above("1000 mm"))];
    const body = [inboard(`${200 + side - 1.2} mm ± 1 mm`), above(`${1000 - top + 3} mm ± 2 mm`)];
    const odds = oddsOf(withParts(body), { draws: runs(150, 1200) });
    const product = phi(1.2) * phi(1.5);
    expect(Math.abs(odds.clears - product)).toBeLessThan(0.03);
    const again = Object.fromEntries(
      odds.matters.map(({ field, ifMeasuredAgain }) => [field, ifMeasuredAgain]),
    );
    expect(again["truck.body[0].max"]).toBeCloseTo(phi(2.4) * phi(1.5), 1.3);
    expect(again["truck.body[1].min"]).toBeCloseTo(phi(1.2) * phi(3), 1.3);
    expect(odds.matters[0]!.field).toBe("truck.body[0].max");
  });

  it("are the same however many share the draws out, stopped early or not", () => {
    const example = drawnSubject("half-ton-on-air", "narrow hub face", "1/4");
    const cases: readonly (readonly [truck: TruckToVary, options: OddsOptions])[] = [
      [example, { draws: 60 }],
      // All clear: precise as soon as it may be.
      [withParts([inboard("200 mm ± 1 mm")]), { draws: 300, within: 0.06 }],
      [example, { draws: 320, within: 0.06 }],
    ];
    for (const [truck, options] of cases.slice(0, runs(2, 3))) {
      const whole = oddsOf(truck, options);
      const shares = [2, 0, 1].map((at) => oddsShare(truck, { at, of: 3 }, options));
      expect(oddsTogether(truck, shares, options)).toEqual(whole);
    }
  });

  it("are the same from the same seed, whatever was drawn before, and near them from another", () => {
    const truck = drawnSubject("half-ton-on-air", "narrow hub face", "1/4");
    const draws = runs(50, 150);
    const [first, again] = [oddsOf(truck, { draws }), oddsOf(truck, { draws })];
    expect(again).toEqual(first);
    const other = oddsOf(truck, { draws, seed: 9 });
    expect(other.clears).not.toBe(first.clears);
    expect(Math.abs(other.clears - first.clears)).toBeLessThan(0.15);
    const touches = new Touches(0);
    const drawn = new DrawnTrucks(truck, 1);
    let kept = 0;
    const row = new Float64Array(drawn.inputs.length);
    // The same draws from the last to the first.
    for (let draw = draws - 1; draw >= 0; draw--) {
      drawn.deviationsTo(row, draw);
      const made = drawn.at(row);
      if (made.ok && touches.of(made.value) === "keeps") kept++;
    }
    expect(kept / draws).toBe(first.clears);
  });

  it("fall as the asked gap or the uncertainty of a truck that clears grows", () => {
    const at = (points: string, gap = 0) =>
      oddsOf(drawnSubject("half-ton-on-air", "narrow hub face", points), { draws: runs(40, 60), gap }).clears;
    const quarter = at("1/4");
    expect(quarter).toBeGreaterThan(at("1/2"));
    expect(quarter).toBeGreaterThan(at("1/4", 5));
    expect(at("0")).toBeGreaterThanOrEqual(quarter);
  });

  it("stop once precise, and where the budget ends, and say so", () => {
    const truck = withParts([inboard("200 mm ± 1 mm")]);
    const precise = oddsOf(truck, { draws: 5000, within: 0.025 });
    expect(precise.draws).toBeLessThan(1000);
    expect(precise.high - precise.low).toBeLessThanOrEqual(0.05);
    let now = 0;
    const cut = oddsOf(truck, { draws: 5000, budget: Budget.of(0.01, () => now++) });
    expect(cut.cutShort).toBe(true);
    expect(cut.draws).toBeLessThan(5000);
    const shares: number[] = [];
    oddsOf(truck, { draws: 200, onProgress: (share) => shares.push(share) });
    expect(shares).toEqual([0.25, 0.5, 0.75, 1]);
    expect(() => oddsOf(truck, { draws: 0 })).toThrow(RangeError);
    expect(() => oddsOf(truck, { draws: 1.5 })).toThrow(RangeError);
  });

  it("name what has a ± and is not drawn, and draw nothing where nothing is told", () => {
    const truck = withParts([inboard("200 mm")]);
    expect(oddsOf(truck, { draws: 5 })).toMatchObject({ clears: 1, inputs: [], matters: [] });
    const document = setAt(truck.document, ["masses"], { corner: "1000 lb ± 20", unsprung: 120 });
    const told = oddsOf(subjectOf(document as object).subject, { draws: 5 });
    expect(told.leftOut).toEqual(["masses.corner"]);
  });

  it("count a draw that does not go together as touching", () => {
    const document = setAt(
      drawnSubject("half-ton-on-air", null, "0").document,
      ["knuckle", "span"],
      "10.52 ± 4",
    );
    const odds = oddsOf(subjectOf(document as object).subject, { draws: 60 });
    expect(odds.apart).toBeGreaterThan(2);
    expect(odds.clears).toBeLessThanOrEqual(1 - odds.apart / 60);
  });
});

/** An example with every point known to so much. */
function drawnSubject(name: string, variant: string | null, points: string): TruckToVary {
  const document = setAt(exampleDocuments.get(name), ["odds"], { points });
  return subjectOf(effectiveDocument(document, variant) as object).subject;
}

describe("the proof of a draw", () => {
  const cases: readonly (readonly [name: string, variant: string | null, points: string])[] = [
    ["half-ton-on-air", "narrow hub face", "3/8"],
    ["half-ton-on-air", null, "1/4"],
    ["long-bed-steering-box", null, "1/4"],
    ["compact-front-steer", null, "6 mm"],
    ["flatbed-long-arms", null, "1/4"],
    ["half-ton-limits", null, "1/8"],
  ];
  it.each(cases.slice(0, runs(3, cases.length)))(
    "agrees with a check of the same truck: %s %s",
    (name, variant, points) => {
      const drawn = new DrawnTrucks(drawnSubject(name, variant, points), 4);
      const touches = new Touches(0);
      const row = new Float64Array(drawn.inputs.length);
      const said = new Set<string>();
      for (let draw = 0; draw < runs(2, 12); draw++) {
        drawn.deviationsTo(row, draw);
        const made = drawn.at(row);
        if (!made.ok) continue;
        const proof = touches.of(made.value);
        said.add(proof);
        const { worst } = checkClearance(made.value);
        if (worst === null) expect(proof).toBe("keeps");
        else if (worst.gap < -0.02) expect([draw, worst.part, proof]).toEqual([draw, worst.part, "misses"]);
        else if (worst.bound > 0.02) expect([draw, worst.part, proof]).toEqual([draw, worst.part, "keeps"]);
      }
      expect(said.size).toBeGreaterThan(0);
    },
  );

  it("agrees on the share with a plain loop of checks over draws at random", () => {
    const truck = drawnSubject("half-ton-on-air", "narrow hub face", "3/8");
    const odds = oddsOf(truck, { draws: runs(100, 300) });
    const drawn = new DrawnTrucks(truck, 1);
    const count = runs(12, 100);
    let clear = 0;
    let state = 12345;
    const random = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state + 0.5) / 2 ** 32;
    };
    for (let i = 0; i < count; i++) {
      // Box and Muller.
      const row = Float64Array.from(
        drawn.inputs,
        () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random()),
      );
      const made = drawn.at(row);
      if (made.ok && checkClearance(made.value).worst!.gap >= 0) clear++;
    }
    const share = clear / count;
    const spread = Math.sqrt((odds.clears * (1 - odds.clears)) / count + (odds.high - odds.low) ** 2 / 16);
    expect(Math.abs(share - odds.clears)).toBeLessThan(3.5 * spread);
    expect(odds.clears).toBeGreaterThan(0.5);
    expect(odds.clears).toBeLessThan(0.999);
  });
});

describe("what matters", () => {
  it("of a gap that changes evenly are the squares of its slopes, and odds with one known twice as well", () => {
    const slopes = [3, 2, 1, 0];
    const inputs = slopes.map((_, i) => ({
      path: ["knuckle", `k${i}`] as KeyPath,
      key: `knuckle.k${i}`,
      kind: "length" as const,
      within: 1,
      source: "typed" as const,
    }));
    let state = 7;
    const random = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state + 0.5) / 2 ** 32;
    };
    const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    const deviations = Array.from({ length: 40_000 }, () => Float64Array.from(slopes, normal));
    const clears = deviations.map((z) => 4 + slopes.reduce((sum, a, i) => sum + a * z[i]!, 0) > 0);
    const matters = whatMatters({ inputs, deviations, clears });
    expect(matters.slice(0, 3).map(({ field }) => field)).toEqual(["knuckle.k0", "knuckle.k1", "knuckle.k2"]);
    for (const [i, share] of [9 / 14, 4 / 14, 1 / 14, 0].entries())
      expect(Math.abs(matters[i]!.share - share)).toBeLessThan(0.03);
    for (const [i, a] of slopes.entries()) {
      const then = phi(4 / Math.sqrt(14 - 0.75 * a * a));
      expect(Math.abs(matters[i]!.ifMeasuredAgain - then)).toBeLessThan(0.012);
    }
  });
});
