import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Doubt } from "../../../src/studies/doubts/doubt.ts";
import type { HeightStop } from "../../../src/studies/limits/heightWay.ts";
import { steerLimits } from "../../../src/studies/map/steerLimits.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import type { FieldWindow, SetBy } from "../../../src/studies/window/windowTypes.ts";
import { cardComesTo, cardPlace } from "../../../src/studies/wording/cardPlace.ts";
import { rangeClause } from "../../../src/studies/wording/comparisonWords.ts";
import { cardFacts } from "../../../src/studies/wording/counterFacts.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { codeText, coverLine } from "../../../src/studies/wording/packetTexts.ts";
import { barredNote, cutSentence } from "../../../src/studies/wording/pictureTexts.ts";
import { truckName } from "../../../src/studies/wording/truckName.ts";
import { SAME_TRUCK, whyWords } from "../../../src/studies/wording/whyWords.ts";
import { exampleTruck } from "./referee/cases.ts";

const IN = 25.4;
const wide = exampleTruck("half-ton-on-air.json", null).model;
const narrow = exampleTruck("half-ton-on-air.json", "narrow hub face").model;
const format = formatOf(wide.setup);
const speech = { model: narrow, format, document: null };
const A = { letter: "A", model: wide };
const B = { letter: "B", model: narrow };

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

/** Every sentence the counter has of its own, of a known truck; read it whole. */
it("the counter's own sentences read as they did", async () => {
  const report = checkClearance(wide);
  const heights = wide.setup.stances.map(({ name, travel }) => {
    const [steering] = steerLimits(wide, [travel]);
    return `${name}: ${cardPlace(report, travel, steering ?? null, wide, format)}`;
  });
  const why = (window: FieldWindow | null, trucks = [A, B]) => {
    const told = whyWords(trucks, window, speech);
    return [told.why, ...told.downsides].join("\n");
  };
  const told = [
    ...heights,
    why(windowOf(PART)),
    why(windowOf({ kind: "range" }), [B, A]),
    why(windowOf({ kind: "unfinished" })),
    why(windowOf(PART, { fits: [] })),
    why(windowOf(PART, { fits: [], cutShort: true })),
    why(null, [B]),
    why(windowOf(PART), [A, { letter: "B", model: wide }]),
    SAME_TRUCK,
    truckName(null),
    cutSentence("front", -66, format, true),
    cutSentence("front", 0, format, false),
    cutSentence("above", 640, format, true),
    barredNote([
      { letter: "A", stands: false },
      { letter: "B", stands: true },
    ]),
    codeText(1200, 1732),
    codeText(2100, 1732),
    coverLine("Marrow Lane", "Shop truck, as bolted on", "May 4, 2026", ["sheet", "limits", "map"]),
  ];
  await expect(`${told.join("\n")}\n`).toMatchFileSnapshot(join(import.meta.dirname, "counterSentences.txt"));
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
