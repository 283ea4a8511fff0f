import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import type { TruckToVary } from "../../../src/studies/window/truckOverField.ts";
import { isInside, variantTicks } from "../../../src/studies/window/variantTicks.ts";
import { type WindowOptions, windowOf } from "../../../src/studies/window/windowOf.ts";
import type { FieldWindow } from "../../../src/studies/window/windowTypes.ts";
import { narrowestHubFace } from "../../reference/narrowestHubFace.ts";
import { stepBudget } from "../../reference/stepBudget.ts";
import { runs } from "../../runs.ts";
import { demoDocument, lipAlone } from "../demoModel.ts";
import { checkedMargin, subjectOf, windowSubject } from "./windowSubject.ts";

/** mm. What searches for gaps leave open. */
const SEARCHED = 0.02;

function found(subject: TruckToVary, key: string, options: WindowOptions = {}): FieldWindow {
  const window = windowOf(subject, key, options);
  if (!window.ok) throw new TypeError(window.issues[0]!.mend);
  return window.value;
}

/** Every value of a dense row against a plain check: inside it clears, outside by more than the tolerance it does not. */
function expectAsChecked(subject: TruckToVary, window: FieldWindow, count: number): void {
  const { from, to, tolerance, fits, field } = window;
  for (let i = 0; i < count; i++) {
    // Not the values the search itself begins with.
    const value = from + ((to - from) * (i + 0.37)) / count;
    const margin = checkedMargin(subject, [field, value]);
    const near = fits.some((fit) => [fit.from, fit.to].some((end) => Math.abs(value - end) <= tolerance));
    if (isInside(window, value))
      expect([value, margin]).toEqual([value, expect.toSatisfy((m) => m > -SEARCHED)]);
    else if (!near) expect([value, margin]).toEqual([value, expect.toSatisfy((m) => m < SEARCHED)]);
  }
}

describe("the window of the plain truck's hub face", () => {
  const { subject, model } = windowSubject("half-ton-on-air.json");
  const window = found(subject, "knuckle.hubFace");
  const [fit] = window.fits;

  it("is one piece, from the rotor at its ball joint to the lip at full bump", () => {
    expect(window.fits).toHaveLength(1);
    expect(window.between.rank).toBe("proven");
    expect(fit!.fromSetBy).toMatchObject({ kind: "part", part: "rotor to lower ball joint", together: true });
    expect(fit!.toSetBy).toMatchObject({ kind: "part", part: "fender lip" });
    expect(isInside(window, window.now)).toBe(false);
  });

  it("begins where the closed form has the rotor at the allowance", () => {
    const least = narrowestHubFace(model)!;
    expect(fit!.from).toBeGreaterThanOrEqual(least - 1e-6);
    expect(fit!.from).toBeLessThanOrEqual(least + window.tolerance);
  });

  it("is what a loop of checks says, on both sides of each end and between", () => {
    expectAsChecked(subject, window, 6);
    for (const [end, out] of [
      [fit!.from, -1],
      [fit!.to, 1],
    ] as const) {
      expect(checkedMargin(subject, ["knuckle.hubFace", end])).toBeGreaterThanOrEqual(0);
      expect(checkedMargin(subject, ["knuckle.hubFace", end + out * window.tolerance])).toBeLessThan(0);
    }
  });

  it("has the variants on it, by the values they give", () => {
    const ticks = variantTicks(subject.document, subject.setup, "knuckle.hubFace", "test");
    expect(ticks.map(({ name, value }) => [name, isInside(window, value)])).toEqual([
      [null, false],
      ["narrow hub face", true],
      ["one inch more drop", false],
      ["steeper pin", false],
    ]);
  });
});

const FIELDS = [
  ["half-ton-on-air.json", "knuckle.pinHeight", {}, "proven"],
  ["half-ton-on-air.json", "wheel.backspacing", { from: 115, to: 160 }, "proven"],
  ["half-ton-on-air.json", "truck.body[0].points[5][2]", { from: 770, to: 830 }, "proven"],
  ["half-ton-on-air.json", "tire.sectionWidth", { from: 195, to: 220 }, "sampled"],
  ["half-ton-limits.json", "knuckle.hubFace", { from: 120, to: 150 }, "proven"],
  // Its sides are no mirror images, and limits cut its poses.
  ["long-bed-steering-box.json", "knuckle.hubFace", { from: 130, to: 180 }, "proven"],
] as const;

describe("windows of other fields and trucks are what a loop of checks says", () => {
  it.each(FIELDS.slice(0, runs(2, FIELDS.length)))("%s, %s", (file, key, range, rank) => {
    const { subject } = windowSubject(file, null, (document) =>
      file.startsWith("long-bed") ? { ...document, allowance: "1 mm", variants: [] } : document,
    );
    const window = found(subject, key, range);
    expect(window.between.rank).toBe(rank);
    expectAsChecked(subject, window, 3);
  });
});

it("windows of random trucks are what a loop of checks says", () => {
  const shift = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
  const truck = fc.record({
    lip: shift(2),
    pinAngle: fc.double({ min: 5, max: 12, noNaN: true }),
    backspacing: fc.double({ min: 3.5, max: 5, noNaN: true }),
    bump: fc.double({ min: 1.5, max: 3.75, noNaN: true }),
    key: fc.constantFrom("knuckle.hubFace", "knuckle.pinHeight", "knuckle.pinLead", "wheel.backspacing"),
  });
  fc.assert(
    fc.property(truck, ({ lip, pinAngle, backspacing, bump, key }) => {
      const { subject } = windowSubject("half-ton-on-air.json", null, (document) => {
        const { knuckle, wheel, truck } = document as Record<string, Record<string, unknown>>;
        const points = [14, 5, -5, -14].map((x) => [x, 36 + lip, 30 - 0.03 * x * x]);
        const body = [{ name: "lip", kind: "path", radius: 0.1, points }];
        return {
          ...{ ...document, variants: [], stances: [], travel: { droop: -2, bump } },
          knuckle: { ...knuckle, pinAngle },
          wheel: { ...wheel, backspacing },
          truck: { ...truck, body },
        };
      });
      // What opens an empty one is another test's.
      const now = found(subject, key, { budget: Budget.of(30, () => performance.now()) });
      expectAsChecked(subject, now, 2);
    }),
    { seed: 1955, numRuns: runs(1, 20) },
  );
});

describe("a window with a hole", () => {
  // A thin wheel that hardly moves, and a post that it meets as it slides out along the pin, and leaves behind again.
  const { subject } = windowSubject("half-ton-on-air.json", null, (document) => ({
    ...document,
    variants: [],
    tire: { diameter: 28, sectionWidth: 2, treadWidth: 1.5 },
    wheel: { rimDiameter: 15, rimWidth: 1, backspacing: 1 },
    travel: { droop: "-1/8", bump: "1/8" },
    stances: [],
    hardware: undefined,
    truck: {
      ...(document.truck as object),
      steering: { type: "rack", innerEnd: ["-6 3/8", "11 3/4", "10 1/8"], stroke: "1/8" },
      body: [
        {
          ...{ name: "post", kind: "path", radius: "1/4" },
          points: [
            ["0", "34 1/2", "26"],
            ["0", "34 1/2", "33"],
          ],
        },
      ],
    },
  }));
  const window = found(subject, "knuckle.hubFace");

  it("shows it, with what sets each of its sides", () => {
    expect(window.between.rank).toBe("proven");
    expect(window.fits).toHaveLength(2);
    const [narrow, wide] = window.fits;
    expect(narrow!.toSetBy).toMatchObject({ kind: "part", part: "post" });
    expect(wide!.fromSetBy).toMatchObject({ kind: "part", part: "post" });
    expect(narrow!.fromSetBy).toEqual({ kind: "range" });
    expect(wide!.toSetBy).toEqual({ kind: "range" });
    expectAsChecked(subject, window, 25);
  });
});

describe("a window that goes on to what a setup may hold", () => {
  const bare = { ...lipAlone(), stances: null };
  const { subject } = subjectOf(demoDocument(bare));
  const clear = subjectOf(demoDocument({ ...bare, knuckle: { hubFace: "5 5/16" } })).subject;

  it("says so of its lower end, and of one that was asked for that nothing past it was looked at", () => {
    const { fits } = found(subject, "travel.bump");
    expect(fits[0]!.from).toBeLessThan(0.001);
    expect(fits[0]!.fromSetBy).toEqual({ kind: "setup" });
    expect(fits.at(-1)!.toSetBy).toMatchObject({ kind: "part", part: "fender lip" });
    const asked = found(subject, "travel.bump", { from: 1, to: 20 }).fits;
    expect(asked).toEqual([{ from: 1, to: 20, fromSetBy: { kind: "range" }, toSetBy: { kind: "range" } }]);
  });

  it("says so of its upper end", () => {
    const { fits } = found(clear, "travel.droop", { from: -50 });
    expect(fits).toHaveLength(1);
    expect(fits[0]).toMatchObject({ from: -50, fromSetBy: { kind: "range" }, toSetBy: { kind: "setup" } });
    expect(fits[0]!.to).toBeGreaterThan(-0.001);
  });

  it("but not of a tire as narrow as its rim: there the search ends", () => {
    const { fits } = found(clear, "tire.sectionWidth", { to: 205 });
    expect(fits[0]!.from).toBeLessThan(203.21);
    expect(fits[0]!.fromSetBy).toEqual({ kind: "range" });
  });
});

describe("an empty window", () => {
  const closed = [
    ["half-ton-on-air.json", "knuckle.hubFace", { from: 150, to: 160 }],
    ["half-ton-on-air.json", "knuckle.pinHeight", { from: 125, to: 140 }],
  ] as const;
  it.each(closed.slice(0, runs(1, 2)))(
    "%s, %s: what opens it is proven by a check, and half of that change does not",
    (file, key, range) => {
      const { subject } = windowSubject(file);
      const window = found(subject, key, range);
      expect(window.fits).toEqual([]);
      expect(window.closedBy[0]!.by).toMatchObject({ part: "fender lip" });
      const { field, from, to, at } = window.opens!;
      expect(checkedMargin(subject, [field, to], [key, at])).toBeGreaterThanOrEqual(0);
      expect(checkedMargin(subject, [field, 0.5 * (from + to)], [key, at])).toBeLessThan(0);
    },
  );

  it("says of a gap that the field does not move that it closes every value", () => {
    // The caliper goes with the hub face: no hub face takes it out of the barrel.
    const { subject } = windowSubject("half-ton-on-air.json", null, (document) => ({
      ...document,
      hardware: { rotor: {}, caliper: { frame: "hub", min: [3.25, -3.625, -2.75], max: [6.5, -0.75, 2.75] } },
    }));
    const window = found(subject, "knuckle.hubFace", { from: 130, to: 140 });
    expect(window.fits).toEqual([]);
    expect(window.closedBy).toContainEqual(
      expect.objectContaining({
        isUnmoved: true,
        by: expect.objectContaining({ part: "caliper to barrel" }),
      }),
    );
  });
});

describe("what ends a search for a window", () => {
  const { subject } = windowSubject("half-ton-on-air.json");

  it("is told of a budget that was spent: what is not proven is left out", () => {
    let now = 0;
    const budget = Budget.of(6, () => 1000 * now++);
    const window = found(subject, "knuckle.hubFace", { budget });
    expect(window.cutShort).toBe(true);
    for (const { from, to } of window.fits)
      for (const value of [from, to])
        expect(checkedMargin(subject, ["knuckle.hubFace", value])).toBeGreaterThan(-SEARCHED);
  });

  it("is the same however the value is typed", () => {
    const { knuckle } = subject.document as { readonly knuckle: object };
    const same = subjectOf({
      ...(subject.document as object),
      knuckle: { ...knuckle, hubFace: "160.3375 mm" },
    });
    const range = { from: 120, to: 150 };
    const typed = found(same.subject, "knuckle.hubFace", range);
    expect(typed.fits).toEqual(found(subject, "knuckle.hubFace", range).fits);
  });

  it("is a field that is none, with the nearest that is", () => {
    const refused = (key: string) => {
      const window = windowOf(subject, key);
      return window.ok ? "" : window.issues[0]!.mend;
    };
    expect(refused("knuckle.hubFase")).toContain('did you mean "knuckle.hubFace"?');
    expect(refused("name")).toContain("holds no single length or angle");
    expect(refused("tire.size")).toContain("tire.sectionWidth");
    expect(refused("knuckle")).toContain("knuckle.span");
    expect(refused("limits.bumpStop.travel")).toContain("give it a value first");
  });
});

it("looks at no section width under the rim's: the beads stand as far apart as its flanges", () => {
  const { subject } = windowSubject("half-ton-on-air.json");
  const { from, now } = found(subject, "tire.sectionWidth", { budget: stepBudget(1) });
  expect(from).toBeCloseTo(subject.setup.wheel.rimWidth, 2);
  expect(now - from).toBeGreaterThan(0);
  expect(found(subject, "tire.sectionWidth", { budget: stepBudget(1), from: 150 }).from).toBe(150);
});

it("an empty window that the time cut short says of no gap that the field does not change it, unless it does not", () => {
  const { subject } = windowSubject("ordered-knuckle.json");
  const unmovedOf = ({ closedBy }: FieldWindow) =>
    closedBy.flatMap(({ by, isUnmoved }) =>
      isUnmoved && by.kind === "part" ? [`${by.part} ${by.side}`] : [],
    );
  const whole = unmovedOf(found(subject, "knuckle.hubFace", { budget: stepBudget(20_000) }));
  for (const looks of [100, 400, 40, 200].slice(0, runs(2, 4))) {
    const cut = found(subject, "knuckle.hubFace", { budget: stepBudget(looks) });
    expect([looks, cut.fits.length, cut.cutShort]).toEqual([looks, 0, true]);
    for (const name of unmovedOf(cut)) expect(whole).toContain(name);
  }
});
