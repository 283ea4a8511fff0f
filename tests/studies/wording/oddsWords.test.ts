import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import type { OddsReport } from "../../../src/studies/odds/oddsOf.ts";
import type { Matter } from "../../../src/studies/odds/whatMatters.ts";
import {
  againSentence,
  LIKELY_CAUTION,
  matterRows,
  oddsNotes,
  oddsSentence,
  shareWords,
} from "../../../src/studies/wording/oddsWords.ts";
import { exampleDocument } from "../../setup/fixtures.ts";

const example = resolveSetup(exampleDocument(), "truck.json");
if (!example.ok) throw new Error(example.issues[0]!.mend);
const { truck } = example.value;
const MEASURED = { setup: { fromExample: null, truck } };
const speech = {
  format: { units: "in", fraction: 16 } as const,
  document: exampleDocument(),
  ...MEASURED,
};
const said = (change: Partial<OddsReport> = {}) => oddsSentence(reportOf(change), MEASURED);

function reportOf(change: Partial<OddsReport> = {}): OddsReport {
  const lip = ["truck", "body", 0, "points", 1] as const;
  const inputs = [0, 1, 2].map((axis) => ({
    path: [...lip, axis],
    key: `truck.body[0].points[1][${axis}]`,
    kind: "length" as const,
    within: 25.4 / 16,
    source: "typed" as const,
  }));
  const tire = {
    path: ["tire", "diameter"],
    key: "tire.diameter",
    kind: "length" as const,
    within: 5,
    source: "tire" as const,
  };
  return {
    clears: 0.9,
    low: 0.884,
    high: 0.914,
    confidence: 0.95,
    draws: 2000,
    seed: 1,
    gap: 0,
    open: 0,
    apart: 0,
    inputs: [...inputs, tire],
    matters: [
      { field: "truck.body[0].points[1]", share: 0.7, ifMeasuredAgain: 0.972 },
      { field: "tire.diameter", share: 0.3, ifMeasuredAgain: 0.93 },
    ],
    leftOut: [],
    ...change,
  };
}

describe("odds in words", () => {
  it("are one sentence that says likely, the share and between what it lies, never narrower", () => {
    expect(said()).toBe("Odds: clears in about 9 of 10 trucks measured like this (88 to 92 of 100).");
    expect(said({ clears: 0.08, low: 0.069, high: 0.093 })).toBe(
      "Odds: clears in about 8 of 100 trucks measured like this (6 to 10 of 100).",
    );
    expect(said({ clears: 0.001, low: 0, high: 0.004 })).toBe(
      "Odds: almost surely rubs: fewer than 1 of 100 trucks measured like this clear (0 to 1 of 100).",
    );
    expect(said({ clears: 0, low: 0, high: 0.114, draws: 30 })).toBe(
      "Odds: clears in none of the 30 trucks drawn that are measured like this (0 to 12 of 100).",
    );
    expect(said({ clears: 1, low: 0.998, high: 1, gap: 6 })).toBe(
      "Odds: almost surely keeps its gap, which is not proven: more than 99 of 100 trucks measured like this keep the gap (99 to 100 of 100).",
    );
    expect(said({ clears: 0.999, low: 0.996, high: 1 })).toBe(
      "Odds: almost surely clears, which is not proven: more than 99 of 100 trucks measured like this clear (99 to 100 of 100).",
    );
    expect(said({ clears: 0.001, low: 0, high: 0.004, gap: 6 })).toMatch(
      /almost surely does not keep its gap: fewer/,
    );
    expect(said({ clears: 1, low: 0.886, high: 1, draws: 30 })).toBe(
      "Odds: clears in all 30 trucks drawn that are measured like this (88 to 100 of 100).",
    );
    expect(said({ inputs: [] })).toMatch(/^No number of this truck says how well it is known/);
    expect(said({ draws: 0, clears: 0 })).toMatch(/nothing is known/);
  });

  it("say at the number what they take for right: numbers that nobody measured, but on the example itself", () => {
    const withMarks = (of: string, count: number, isAsItCame: boolean) => {
      const fields = Array.from({ length: count }, (_, i) => ["truck", "body", i]);
      const fromExample = { of, fields, mine: [], read: [], mineInAll: [], isAsItCame };
      return oddsSentence(reportOf(), { setup: { fromExample } });
    };
    expect(withMarks("assumed layout", 22, true)).toBe(
      "Odds: clears in about 9 of 10 trucks measured like this (88 to 92 of 100), if the 22 numbers assumed are right.",
    );
    expect(withMarks("Half-ton on air", 1, false)).toMatch(
      /, if the one number of the example’s is right\.$/,
    );
    expect(withMarks("Half-ton on air", 86, true)).toBe(said());
  });

  it("never say all of so many draws are all trucks", () => {
    expect([shareWords(1), shareWords(0.996), shareWords(0.97), shareWords(0.5), shareWords(0.004)]).toEqual([
      "more than 99 of 100",
      "more than 99 of 100",
      "about 97 of 100",
      "about 5 of 10",
      "fewer than 1 of 100",
    ]);
  });

  it("say what to measure again by its name, and what that would do; nothing where nothing is worth it", () => {
    expect(againSentence(reportOf(), speech)).toBe(
      "Measure again: fender lip over the axle. If it were known twice as well, about 97 of 100 would clear.",
    );
    const still = reportOf().matters.map((matter) => ({ ...matter, ifMeasuredAgain: 0.903 }));
    expect(againSentence(reportOf({ matters: still }), speech)).toBeNull();
    const less = reportOf().matters.map((matter) => ({ ...matter, ifMeasuredAgain: 0.85 }));
    expect(againSentence(reportOf({ matters: less }), speech)).toBeNull();
  });

  it("name the part that stations are read along, where the file leaves it to be the fender lip", () => {
    const nameOf = (reading: object) => {
      const document = { ...exampleDocument(), readings: [{ stations: [], ...reading }] };
      const { matters, inputs } = reportOf();
      const [path, key] = [["readings", 0, "stations"], "readings[0].stations"];
      const read = {
        matters: [{ ...matters[0]!, field: key }],
        inputs: [{ ...inputs[0]!, path, key, source: "reading" as const }],
      };
      return againSentence(reportOf(read), { ...speech, document });
    };
    expect(nameOf({})).toContain("stations along the fender lip.");
    expect(nameOf({ part: "inner fender" })).toContain("stations along the inner fender.");
  });

  it("say what to know better by what matters most, and where that raises nothing, say so", () => {
    const [lip, tire] = reportOf().matters as [Matter, Matter];
    const second = [{ ...tire, share: 0.8, ifMeasuredAgain: 0.9 }, lip];
    expect(againSentence(reportOf({ matters: second }), speech)).toMatch(
      /^Measure again: fender lip over the axle\. .* 97 of 100 would clear; tire diameter matters more, but known better it raises the odds by less than 1 of 100\.$/,
    );
    const lower = [lip, tire].map((matter) => ({ ...matter, ifMeasuredAgain: 0.43 }));
    expect(againSentence(reportOf({ clears: 0.44, matters: lower }), speech)).toMatch(
      /^Measure again: fender lip over the axle\. .* 43 of 100 would clear: that tells more surely which way it is, and lowers the odds; see what to change\.$/,
    );
  });

  it.each([
    [0.309, "about 31 of 100", "raises the odds by less than 1 of 100"],
    [0.3, "about 3 of 10", "raises the odds by less than 1 of 100"],
    [0.293, "about 29 of 100", "lowers the odds by less than 1 of 100"],
    [0.2, "about 2 of 10", "lowers the odds"],
  ])("of 0.3 that would be %d say which way they go, and promise no change", (again, share, way) => {
    const [, tire] = reportOf().matters as [Matter, Matter];
    const matters = [{ ...tire, ifMeasuredAgain: again }];
    expect(againSentence(reportOf({ clears: 0.3, matters }), speech)).toBe(
      `Measure the tire itself: tire diameter. If it were known twice as well, ${share} would clear: that tells more surely which way it is, and ${way}; see what to change.`,
    );
  });

  it("have a word that says nothing of how many, however few", () => {
    expect(said({ clears: 0.08, low: 0.069, high: 0.093 })).not.toMatch(/likely/i);
    expect(LIKELY_CAUTION).not.toMatch(/likely/i);
  });

  it("tell each of what matters with how well it is known and by what", () => {
    expect(matterRows(reportOf(), speech)).toEqual([
      {
        field: "truck.body[0].points[1]",
        name: "fender lip over the axle",
        within: "± 1/16 in",
        source: "typed",
        share: 0.7,
        shareText: "70%",
        again: "97 of 100",
      },
      expect.objectContaining({ name: "Tire diameter", within: "± 0.197 in", source: "tire standard" }),
    ]);
  });

  it("leave out what so few draws cannot tell, and say so where that is all", () => {
    const none = reportOf().matters.map((matter) => ({ ...matter, share: 0 }));
    expect(matterRows(reportOf({ matters: none }), speech)).toEqual([]);
    expect(oddsNotes(reportOf({ matters: none }), speech).join(" ")).toMatch(/Too few of the trucks drawn/);
  });

  it("say that a knuckle worked out of readings moves with its truck's points, and only then", () => {
    const [first] = reportOf().inputs;
    const read = reportOf({ inputs: [{ ...first!, source: "reading" }] });
    const document = { ...exampleDocument(), fromExample: { of: "assumed layout" } };
    expect(oddsNotes(read, { ...speech, document }).join(" ")).toMatch(
      /knuckle that was worked out of them moves with/,
    );
    expect(oddsNotes(reportOf(), { ...speech, document }).join(" ")).not.toMatch(/knuckle that was/);
    expect(oddsNotes(read, speech).join(" ")).not.toMatch(/knuckle that was/);
  });

  it("name the draws, the seed, the source of the tire's figure, and what is too near to tell or left out", () => {
    const notes = oddsNotes(reportOf({ open: 1, apart: 2, leftOut: ["masses.corner"] }), speech).join(" ");
    expect(notes).toMatch(/2000 trucks drawn.*seed 1/);
    expect(notes).toMatch(/UN R30.*from memory/);
    expect(notes).toMatch(/4 numbers were drawn, each off by less than its ± two times in three;/);
    expect(notes).not.toMatch(/standard deviation/);
    expect(notes).toMatch(/1 truck is too near to tell/);
    expect(notes).toMatch(/2 did not go together/);
    expect(notes).toMatch(/Not drawn.*Corner weight, left/);
  });
});
