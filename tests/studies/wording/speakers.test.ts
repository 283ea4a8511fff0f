import { describe, expect, it } from "vitest";
import type { Stop } from "../../../src/studies/map/stop.ts";
import { type SteerStop, steerStop, stopFacts } from "../../../src/studies/wording/stopFacts.ts";
import {
  borderCell,
  borderText,
  lowPanelText,
  lowWayText,
  steerClauseOf,
  steerPanelText,
  steerSheetText,
  steerWayText,
  stopCell,
  stopWords,
} from "../../../src/studies/wording/stopTexts.ts";
import { exampleTruck } from "./referee/cases.ts";

// Every kind of stop through every speaker: each tells the same facts, and none a fact of another kind.

const INCHES = { units: "in" } as const;
const { model } = exampleTruck("half-ton-limits.json", null);
const touch = { stop: "touch", side: "left", part: "fender lip", gap: -0.001, point: [0, 0, 0] } as const;
const limit = { stop: "limit", side: "left", name: "steering stop" } as const;
const reach = { stop: "reach", side: "left", joint: "outer tie rod end" } as const;

const STOPS: Readonly<Record<string, Stop>> = {
  "the end": { stop: "end", at: 1 },
  "a touch": { ...touch, at: 0.5 },
  "a touch at the start": { ...touch, at: 0 },
  "a touch at every pose": { ...touch, part: "tie rod end", at: 0, together: true },
  "a limit": { ...limit, at: 0.5 },
  "a limit at the start": { ...limit, at: 0 },
  "a joint's reach": { ...reach, at: 0.5 },
  "where no more is known": { stop: "unproven", at: 0.5 },
  "where nothing is known": { stop: "unproven", at: 0 },
};

/** Every speaker of how far a truck steers. */
const STEERING: Readonly<Record<string, (stop: SteerStop) => string>> = {
  map: steerPanelText,
  sheet: (stop) => steerSheetText(stop, false),
  "sheet, both ways": (stop) => steerSheetText(stop, true),
  counter: (stop) => steerClauseOf('"a"', stop, INCHES),
  "command line": (stop) => stopCell(stop, `${stop.percent}%`, "lock"),
  "end of a sentence": stopWords,
};

/** Words by which a reader knows what kind it is; none of another kind's may be said. */
const SIGNS: Readonly<Record<Stop["stop"], RegExp>> = {
  end: /lock|nothing stops/,
  touch: /fender lip|tie rod end/,
  limit: /steering stop/,
  reach: /outer tie rod end/,
  unproven: /not known/,
};

describe.each(Object.entries(STOPS))("%s", (kind, stopped) => {
  const told = steerStop(stopped, 0, model);
  it.each(Object.entries(STEERING))("is told by the %s as what it is", (speaker, speak) => {
    const text = speak(told);
    expect(text, kind).toMatch(SIGNS[stopped.stop]);
    for (const [other, sign] of Object.entries(SIGNS)) {
      // A share of lock is how far, not that the lock is reached; both kinds name the tie rod end.
      if (other === stopped.stop || other === "end" || /tie rod end/.test(text)) continue;
      expect(text, `${kind} by ${speaker}`).not.toMatch(sign);
    }
    expect(text).not.toMatch(/\b(safe|proven|undefined|null|NaN)\b/);
    if (told.isNowhere) expect(text, `${kind} by ${speaker}`).not.toMatch(/to (5[0-9]%|[1-9]\d?°)/);
  });

  it("says the same of a way down", () => {
    const facts = stopFacts(stopped, stopped.at <= 0, null, model);
    const text = lowPanelText({ ...facts, travel: stopped.at * 50.8, from: 0 }, INCHES);
    expect(text).toMatch(stopped.stop === "end" ? /full bump/ : SIGNS[stopped.stop]);
  });
});

describe("a way of steering at whose end less than the allowance is left", () => {
  const kept = { ...touch, at: 0.25 };
  it.each([
    [
      kept,
      { ...touch, at: 0.5 },
      /^to 50% of lock \(left wheel \d+°\), then fender lip, left side; keeps 1\/4 in up to 25% of lock$/,
    ],
    [
      kept,
      { stop: "end", at: 1 },
      /^to full lock; keeps 1\/4 in up to 25% of lock \(fender lip, left side\)$/,
    ],
    [
      { ...kept, at: 0 },
      { stop: "end", at: 1 },
      /^to full lock; not even straight ahead keeps 1\/4 in \(fender lip, left side\)$/,
    ],
    [
      { ...kept, at: 0, together: true },
      { stop: "end", at: 1 },
      /^to full lock; never keeps 1\/4 in \(fender lip, left side\)$/,
    ],
    [
      { ...touch, at: 0.5 },
      { ...touch, at: 0.5 },
      /^to 50% of lock \(left wheel \d+°\), then fender lip, left side$/,
    ],
    [{ stop: "end", at: 1 }, { stop: "end", at: 1 }, /^to full lock$/],
  ] as const)("%o before %o", (first, end, text) => {
    const [low, high] = [steerStop(first, 0, model), steerStop(end, 0, model)];
    expect(steerWayText(low, high, 6.35, INCHES)).toMatch(text);
  });
});

describe("a way down at whose end less than the allowance is left", () => {
  const low = (stop: Stop, from = 0) => ({
    ...stopFacts(stop, stop.at <= from, null, model),
    travel: stop.at,
    from,
  });
  const kept = { ...touch, at: 50.8, gap: 6.3 };
  it.each([
    [
      kept,
      { ...touch, at: 76.2 },
      "keeps 1/4 in down to 2 in bump; touches past 3 in bump: fender lip, left side",
    ],
    [
      { ...kept, part: "tie rod end" },
      { ...touch, at: 76.2 },
      "keeps 1/4 in down to 2 in bump (tie rod end, left side); touches past 3 in bump: fender lip, left side",
    ],
    [
      kept,
      { stop: "end", at: 101.6 },
      "keeps 1/4 in down to 2 in bump (fender lip, left side); to full bump",
    ],
    [
      kept,
      { ...limit, name: "bump stop", at: 76.2 },
      "keeps 1/4 in down to 2 in bump (fender lip, left side); to 3 in bump, then bump stop",
    ],
    [
      { ...kept, at: 0, together: true },
      { stop: "end", at: 101.6 },
      "never keeps 1/4 in (fender lip, left side); to full bump",
    ],
    [
      { ...limit, name: "bump stop", at: 50.8 },
      { ...limit, name: "bump stop", at: 50.8 },
      "to 2 in bump, then bump stop",
    ],
  ] as const)("%o before %o", (first, end, text) => {
    expect(lowWayText(low(first), low(end), 6.35, INCHES)).toBe(text);
  });

  it("tells an allowance between two marks of a tape as no more where it is kept, as no less where it is not", () => {
    const words = (at: number, allowance: number) =>
      lowWayText(
        low({ ...kept, at, ...(at === 0 && { together: true as const }) }),
        low({ stop: "end", at: 101.6 }),
        allowance,
        INCHES,
      );
    expect(words(50.8, 6)).toBe("keeps 3/16 in down to 2 in bump (fender lip, left side); to full bump");
    expect(words(50.8, 1)).toContain("keeps less than 1/16 in down to 2 in bump");
    expect(words(0, 5)).toBe("never keeps 1/4 in (fender lip, left side); to full bump");
  });

  it("and where it touches at every pose", () => {
    const always = { ...touch, together: true } as const;
    expect(lowWayText(low({ ...always, at: -95 }, -95), low({ ...always, at: 0 }), 6.35, INCHES)).toBe(
      "nowhere: fender lip touches at every pose, left side",
    );
  });

  it("and where the highest it rides is too near already", () => {
    expect(lowWayText(low({ ...kept, at: -95 }, -95), low({ ...touch, at: 25.4 }), 6.35, INCHES)).toBe(
      "not even full droop keeps 1/4 in; touches past 1 in bump: fender lip, left side",
    );
  });
});

describe("a border of what can be reached", () => {
  const borders = [
    { stop: "limit", at: 50.8, side: "left", name: "bump stop" },
    { stop: "reach", at: 50.8, side: "left", joint: "upper ball joint" },
    { stop: "end", at: 50.8 },
    { stop: "unproven", at: 50.8, side: "left" },
  ] as const;
  it.each(borders)("that is %o is told alike by page and command line", (border) => {
    const texts = [borderText(border, "travel", 0, INCHES), borderCell(border, "2", "end of travel")];
    for (const text of texts) {
      expect(text).toContain("2");
      if ("name" in border) expect(text).toContain("bump stop");
      if ("joint" in border) expect(text).toContain("left upper ball joint");
      expect(/not known/.test(text)).toBe(border.stop === "unproven");
    }
  });
});
