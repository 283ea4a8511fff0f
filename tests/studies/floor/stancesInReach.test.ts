import { describe, expect, it } from "vitest";
import { modelOf } from "../../../src/studies/model/model.ts";
import { parseLength } from "../../../src/units/parseLength.ts";
import { captured } from "../../cli/captured.ts";
import { exampleDocuments, type SetupJson } from "../../fuzz/exampleDocuments.ts";
import { VERB_RUNS } from "../../fuzz/verbs.ts";
import { demoModel } from "../demoModel.ts";

const example = exampleDocuments.get("half-ton-limits")!;
const withStance = (travel: string): string => {
  const [first, ...rest] = example.stances as readonly SetupJson[];
  return JSON.stringify({ ...example, stances: [first!, { name: "low", travel }, ...rest] });
};

describe("a stance that a wheel cannot stand at", () => {
  const answers = VERB_RUNS.map(({ verb, options }) =>
    captured([verb, "-", ...options], withStance("-8 5/8")),
  );

  it("is told by every verb alike, with the nearest that goes", () => {
    const [first, ...rest] = answers;
    expect(first!.code).toBe(2);
    expect(first!.error).toMatch(
      /^standard input: stances\[1\]\.travel: -8 5\/8 in: out of reach: the left \w.* cannot follow there; the nearest that goes is -\S.* in\n$/,
    );
    for (const answer of rest) expect(answer).toEqual(first);
  });

  it("goes at what is told", () => {
    const [, nearest] = /nearest that goes is (.*) in\n$/.exec(answers[0]!.error) ?? [];
    expect(captured(["pose", "-"], withStance(nearest!)).code).toBe(0);
    const { mm } = parseLength(nearest!, "in") as { mm: number };
    const next = captured(["pose", "-"], withStance(`${mm - 25.4 / 16} mm`));
    expect(next.error).toMatch(/nearest that goes/);
  });

  it("is told the range for whoever suggests a value, and its place among stances by other measures", () => {
    const { setup } = demoModel();
    const stances = [{ name: "sky", travel: 900 }];
    const measuredStances = [
      { name: "level", index: 0, measure: "lowerArmAngle" as const, value: 0, typed: 0 },
    ];
    const made = modelOf({ ...setup, stances, measuredStances }, "truck.json");
    const issue = made.ok ? null : made.issues.find(({ key }) => key === "stances[1].travel");
    expect(issue?.range?.least).toBeLessThan(0);
    expect(issue?.range?.most).toBeGreaterThan(0);
  });
});
