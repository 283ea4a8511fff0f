import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { truckOf } from "../../../src/app/state/truck.ts";
import type { Doubt } from "../../../src/studies/doubts/doubt.ts";
import type { HeightStop } from "../../../src/studies/limits/heightWay.ts";
import { steerLimits } from "../../../src/studies/map/steerLimits.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import type { FieldWindow, SetBy } from "../../../src/studies/window/windowTypes.ts";
import { cardComesTo, cardPlace } from "../../../src/studies/wording/cardPlace.ts";
import { rangeClause } from "../../../src/studies/wording/comparisonWords.ts";
import { cardFacts } from "../../../src/studies/wording/counterFacts.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { codeText, coverLine, pageTitle, plottedLine } from "../../../src/studies/wording/packetTexts.ts";
import { barredNote, cutSentence } from "../../../src/studies/wording/pictureTexts.ts";
import { truckName } from "../../../src/studies/wording/truckName.ts";
import { SAME_TRUCK, whyInBrief, whyWords } from "../../../src/studies/wording/whyWords.ts";
import { exampleTruck } from "./referee/cases.ts";

const IN = 25.4;
const EXAMPLE_FILE = join(import.meta.dirname, "..", "..", "..", "shared", "half-ton-on-air.json");
const wide = exampleTruck("half-ton-on-air.json", null).model;
const narrow = exampleTruck("half-ton-on-air.json", "narrow hub face").model;
const format = formatOf(wide.setup);
const speech = { model: narrow, format, document: null };
const A = { letter: "A", model: wide };
const B = { letter: "B", model: narrow };
const BOTH = { hasOdds: true, hasChanges: true };

const EXAMPLE: readonly Doubt[] = [
  { kind: "fromExample", path: ["knuckle", "hubFace"], text: "not measured" },
];

const PART: SetBy = {
  ...{
    kind: "part",
    part: "rotor to lower ball joint",
    side: "left",
    travel: 0,
    steer: 0,
    gap: 6,
    together: true,
  },
};
function windowOf(fromSetBy: SetBy, more: Partial<FieldWindow> = {}): FieldWindow {
  const fit = { from: 125, to: 141, fromSetBy, toSetBy: { kind: "range" } as const };
  return {
    ...{ field: "knuckle.hubFace", kind: "length", now: 5.3125 * IN, from: 100, to: 180, tolerance: 0.1 },
    ...{ between: { rank: "proven" }, outside: "proven", fits: [fit], closedBy: [], opens: null },
    ...more,
  };
}

/** The wide one on another wheel or tire, inches; what is not given is as it is. */
function onWheel(wheel: object, letter = "B", tire: object | null = null) {
  const document = JSON.parse(readFileSync(EXAMPLE_FILE, "utf8"));
  const patched = { ...document, wheel: { ...document.wheel, ...wheel }, tire: tire ?? document.tire };
  const made = truckOf(JSON.stringify(patched), "test", null);
  if (!made.ok) throw new Error(made.issues[0]!.mend);
  return { letter, model: made.value.model };
}

/** Every sentence the counter has of its own, of a known truck; read it whole. */
it("the counter's own sentences read as they did", async () => {
  const report = checkClearance(wide);
  const heights = wide.setup.stances.map(({ name, travel }) => {
    const [steering] = steerLimits(wide, [travel]);
    return `${name}: ${cardPlace(report, travel, steering ?? null, wide, format)}`;
  });
  const why = (window: FieldWindow | null, trucks = [A, B], isLooking = window === null) => {
    const told = whyWords(trucks, { window, isLooking }, speech);
    return [told.why, ...told.downsides].join("\n");
  };
  const told = [
    ...heights,
    why(windowOf(PART)),
    why(windowOf({ kind: "range" }), [B, A]),
    why(windowOf({ kind: "unfinished" })),
    why(windowOf(PART, { fits: [] })),
    why(windowOf(PART, { fits: [], cutShort: true })),
    why(windowOf(PART, { fits: [], cutShort: true }), [A, B], true),
    why(windowOf({ kind: "unfinished" }), [A, B], true),
    why(null, [B]),
    why(null, [B], false),
    why(windowOf(PART), [A, { letter: "B", model: wide }]),
    why(windowOf(PART), [A, onWheel({ backspacing: 5 })]),
    why(windowOf(PART), [onWheel({ backspacing: 3.5 }, "A"), { letter: "B", model: wide }]),
    why(windowOf(PART), [A, onWheel({ rimWidth: 10, backspacing: 5.25 })]),
    why(windowOf(PART), [A, onWheel({ rimWidth: 10, backspacing: 4.25 })]),
    why(windowOf(PART), [A, onWheel({}, "B", { size: "P255/60R15" })]),
    [whyInBrief([A, B], format).why, ...whyInBrief([A, B], format).downsides].join("\n"),
    whyInBrief([A, onWheel({ backspacing: 5 })], format).why,
    SAME_TRUCK,
    truckName(null),
    cutSentence("front", -66, format, true),
    cutSentence("front", 0, format, false),
    cutSentence("above", 640, format, true),
    barredNote([
      { letter: "A", stands: false },
      { letter: "B", stands: true },
    ]),
    codeText(1200, true),
    codeText(2100, false),
    coverLine(
      ...(["Marrow Lane", "Shop truck, as bolted on", "May 4, 2026"] as const),
      (["sheet", "limits", "map", "choose"] as const).map((page) => pageTitle(page, BOTH)),
    ),
    pageTitle("choose", { ...BOTH, hasOdds: false }),
    pageTitle("choose", { ...BOTH, hasChanges: false }),
    plottedLine(narrow.setup, 82.55, -1, "May 4, 2026"),
  ];
  await expect(`${told.join("\n")}\n`).toMatchFileSnapshot(join(import.meta.dirname, "counterSentences.txt"));
});

describe("why two trucks with one hub face differ", () => {
  const told = (trucks: Parameters<typeof whyWords>[0]) =>
    whyWords(trucks, { window: windowOf(PART), isLooking: false }, speech);

  it("speaks of the wheel and of nothing else, from whichever side", () => {
    const deep = told([A, onWheel({ backspacing: 5 })]);
    expect(deep.why).toMatch(
      /B's wheel stands 3\/4 in farther in, .*: backspacing 5 in against 4 1\/4 in on A\.$/,
    );
    expect(deep.why).not.toContain("ball joint line");
    expect(deep.downsides.map((line) => line.split(":")[0])).toEqual([
      "Downside of B, farther in",
      "Downside of A, farther out",
    ]);
    expect(told([onWheel({ backspacing: 5 }, "A"), { letter: "B", model: wide }]).why).toMatch(
      /B's wheel stands 3\/4 in farther out, .*: backspacing 4 1\/4 in against 5 in on A\.$/,
    );
  });

  it("tells where the edges of another rim stand, and no place where that is the same", () => {
    // Two inches more rim and one of backspacing: the center plane stays, an inch on either side.
    const { why, downsides } = told([A, onWheel({ rimWidth: 10, backspacing: 5.25 })]);
    expect(why).toContain(
      "B's rim is 10 in wide against 8 in, with its inner edge 1 in farther in and its outer edge 1 in farther out",
    );
    expect(why).not.toMatch(/B's wheel stands/);
    expect(downsides).toEqual([]);
    // The same backspacing: all two inches stand out.
    const out = told([A, onWheel({ rimWidth: 10 })]).why;
    expect(out).toMatch(
      /B's wheel stands 1 in farther out, .*: backspacing 4 1\/4 in on both; B's rim is 10 in wide against 8 in, with its outer edge 2 in farther out/,
    );
  });

  it("is the hub face's where that differs too, or nothing of the wheel does", () => {
    expect(told([A, B]).why).toContain("ball joint line on A");
    expect(told([A, { letter: "B", model: wide }]).why).toContain("ball joint line on both");
  });
});

it("says of a hub face's reach that it is looked for as long as it is, and no longer", () => {
  const open = windowOf(PART, { fits: [], cutShort: true });
  for (const window of [open, windowOf({ kind: "unfinished" })]) {
    expect(whyWords([A, B], { window, isLooking: true }, speech).why).toMatch(/still being looked for\.$/);
    expect(whyWords([A, B], { window, isLooking: false }, speech).why).toMatch(
      /found in the time allowed\.$/,
    );
  }
});

it("names no distance of nothing where none fits, and says that it is of those looked at", () => {
  const none = windowOf(PART, { fits: [], from: 0.02, to: 266.4 });
  const { why } = whyWords(
    [A, B],
    { window: none, isLooking: false },
    { ...speech, format: { units: "mm" } },
  );
  expect(why).toContain("and no distance that was looked at, up to 266.4 mm, fits on B.");
  expect(why).not.toContain(" 0.0 mm");
});

describe("where a card's verdict is met", () => {
  it("is not told of what clears, and never says of a height where something touches that nothing does", () => {
    expect(cardPlace(checkClearance(narrow), 0, null, narrow, format)).toBe("");
    const low = wide.setup.stances.find(({ name }) => name === "aired out")!.travel;
    const [steering] = steerLimits(wide, [low]);
    expect(cardPlace(checkClearance(wide), low, steering!, wide, format)).not.toMatch(/nothing touches/);
    const [driving] = steerLimits(wide, [0]);
    expect(cardPlace(checkClearance(wide), 0, driving!, wide, format)).toMatch(/nothing touches\.$/);
    // Of another height than the one shown nothing is known.
    expect(cardPlace(checkClearance(wide), 5, driving!, wide, format)).not.toMatch(/nothing touches/);
  });

  it("says what it comes to where the sign withholds that it clears, and there alone", () => {
    const comesTo = (model: typeof wide, doubts: readonly Doubt[], heights: readonly [HeightStop | null]) => {
      const report = checkClearance(model);
      const facts = cardFacts({ report, heights, steering: null, failure: null }, 0, doubts);
      return cardComesTo(facts, report, model, format);
    };
    const stop = { stop: "reach", side: "left", joint: "upper arm", at: 70 } as const;
    const told = comesTo(narrow, EXAMPLE, [null]);
    expect(told).toMatch(/^Everything clears by [\d/ ]+ in\b/);
    expect(rangeClause("b", checkClearance(narrow), narrow, format)).toContain(
      told.replace("Everything ", "").replace(/\.$/, ","),
    );
    expect(comesTo(narrow, [], [null])).toBe("");
    expect(comesTo(narrow, EXAMPLE, [stop])).toBe("");
    expect(comesTo(wide, EXAMPLE, [null])).toBe("");
  });
});
