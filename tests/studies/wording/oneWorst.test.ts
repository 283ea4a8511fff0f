import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Truck, truckOf } from "../../../src/app/state/truck.ts";
import { checkTable } from "../../../src/cli/output/checkTable.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import { checkJson } from "../../../src/studies/documents/checkJson.ts";
import { newOrder, writeOrder } from "../../../src/studies/order/writeOrder.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { worstGapSentence } from "../../../src/studies/wording/asBuiltTruckWords.ts";
import { rangeClause } from "../../../src/studies/wording/comparisonWords.ts";
import { gapMarks, partRows } from "../../../src/studies/wording/gapRows.ts";
import { worstFacts, worstFactsText } from "../../../src/studies/wording/gapTexts.ts";
import { changeTold } from "../../../src/studies/wording/lastChangeWords.ts";
import { amountText } from "../../../src/studies/wording/lengths.ts";
import { worstText } from "../../../src/studies/wording/sheetTexts.ts";
import { verdictFacts } from "../../../src/studies/wording/verdictFacts.ts";
import { verdictSentence } from "../../../src/studies/wording/verdictSentence.ts";
import { formatLength } from "../../../src/units/formatLength.ts";
import { runs } from "../../runs.ts";
import { sheetOf } from "../order/orderedTruck.ts";
import { exampleTruck, exampleTrucks } from "./referee/cases.ts";

/** A shared setup whose blocks are written by its order; with an order of the truck's own knuckle changed where it has none. */
function orderedTruck(file: string, change: object = {}): Truck {
  const own = JSON.parse(readFileSync(new URL(`../../../shared/${file}`, import.meta.url), "utf8"));
  const document = setAt(own, ["order"], { ...(own.order ?? newOrder(own)), ...change });
  const written = writeOrder(document, sheetOf(document).fields, own.units);
  const made = truckOf(JSON.stringify(written), file, null);
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  return made.value;
}

const TRUCKS = [
  // On every change those that `referee.test.ts` leaves out.
  ...exampleTrucks().filter((_, i) => i % 2 >= runs(1, 0)),
  { who: "ordered-knuckle.json, as ordered", truck: orderedTruck("ordered-knuckle.json") },
  {
    who: "ordered-knuckle.json, 3 in of drop ordered",
    truck: orderedTruck("ordered-knuckle.json", { drop: "3 in" }),
  },
  {
    who: "half-ton-on-air.json, 3 in of drop ordered",
    truck: orderedTruck("half-ton-on-air.json", { drop: "3 in" }),
  },
];

describe("the worst gap of a truck", () => {
  for (const { who, truck } of TRUCKS) {
    it(`${who}: is the smallest gap of all, in every place that tells it`, () => {
      const { model } = truck;
      const { units } = model.setup;
      const format = { units, ...(units === "in" ? { fraction: "decimal" as const } : {}), decimals: 3 };
      const report = checkClearance(model);
      const least = Math.min(...report.parts.map(({ gap }) => gap));
      const known = { model, report, ways: null };
      const json = checkJson(report, "mm");
      const marks = gapMarks([], report.worst, false, null, model.setup.allowance, format);
      expect([
        report.worst!.gap,
        verdictFacts(report, model).told!.entry.gap,
        partRows([], report)[0]!.worst!.gap,
        marks[0]!.gap,
        json.worst!.gap,
        Math.min(...json.parts.map(({ gap }) => gap)),
      ]).toEqual(Array(6).fill(least));

      const amount = amountText(least, format);
      const cell = worstFactsText(worstFacts(report, model, []), model.setup, format);
      for (const [place, words] of [
        ["sentence", verdictSentence(report, model, format)],
        ["last change", changeTold(known, known, format).worst],
        ["variants", cell],
        ["picture", marks[0]!.text],
        ["counter", rangeClause("a", report, model, format)],
        ["sheet", worstText(verdictFacts(report, model), model, format)],
      ])
        expect.soft(words, place).toContain(amount);
      const told = verdictSentence(report, model, { units, ...(units === "in" ? {} : { decimals: 1 }) });
      expect(checkTable(report, model)).toContain(told);
      const numbers = { check: report } as Parameters<typeof worstGapSentence>[0]["asBuilt"];
      const fine =
        units === "in" ? { units, fraction: "decimal" as const, decimals: 2 } : { units, decimals: 1 };
      expect(worstGapSentence({ asOrdered: numbers, asBuilt: numbers } as never, { units })).toContain(
        `Worst gap as built ${formatLength(Math.abs(least), fine)}`,
      );
    });
  }

  it("told of a lip that cuts deeper than what rubs at every pose, with that and its own depth right after", () => {
    const { model } = orderedTruck("half-ton-on-air.json", { drop: "3 in" });
    const report = checkClearance(model);
    const { told, always } = verdictFacts(report, model);
    const riding = report.parts.filter(({ together, gap }) => together && gap < 0);
    expect(told!.entry.together).toBeUndefined();
    expect(always!.entry.gap).toBe(Math.min(...riding.map(({ gap }) => gap)));
    expect(verdictSentence(report, model, { units: "in" })).toMatch(
      /^The tire rubs the fender lip on both sides by 1 5\/8 in at [^;]*; at every pose the tire rubs the lower ball joint by 7\/16 in; 3 more parts rub\.$/,
    );
  });

  it("that rides with the wheel is told to be there at every pose, and nothing twice", () => {
    const { model } = exampleTruck("flatbed-long-arms.json", "steering arm as first built");
    const sentence = verdictSentence(checkClearance(model), model, { units: "in" });
    expect(sentence.match(/at every pose/g)).toHaveLength(1);
    expect(sentence).toMatch(/^The wheel rubs the tie rod end .* at every pose/);
  });
});
