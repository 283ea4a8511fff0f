import { describe, expect, it } from "vitest";
import { runs } from "../runs.ts";
import { exampleDocuments } from "./exampleDocuments.ts";
import { seeded } from "./seeded.ts";
import { faultsOf, PART_RUNS, runVerb, VERB_RUNS } from "./verbs.ts";
import { wildCases } from "./wildValues.ts";

/** Of each example; `npm run fuzz` takes them all. */
const SAMPLES = runs(2, 10);

const examples = [...exampleDocuments].filter(([name]) => name !== "scanned-fender");

describe("a number of an example set to something wild: every verb ends, and answers finitely or refuses", () => {
  it.each(examples)(
    "%s",
    (name, document) => {
      const random = seeded(name.length);
      const cases = wildCases(document);
      expect(cases.length).toBeGreaterThan(1000);
      for (let i = 0; i < SAMPLES; i++) {
        const { path, value, text } = random.pick(cases);
        const verbs = i % 4 === 0 ? [...VERB_RUNS, ...PART_RUNS] : VERB_RUNS;
        const faults = verbs.flatMap((run) => faultsOf(runVerb(text, run, random.chance(0.5)), text));
        expect(faults, `${path.join(".")} = ${JSON.stringify(value)}`).toEqual([]);
      }
    },
    180_000,
  );
});
