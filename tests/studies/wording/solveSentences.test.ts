import { join } from "node:path";
import { expect, it } from "vitest";
import { type SolveOptions, solveOf } from "../../../src/studies/solve/solveOf.ts";
import type { SolveTarget } from "../../../src/studies/solve/solveTypes.ts";
import { cutShortSentence } from "../../../src/studies/wording/answerWords.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { solveSentences } from "../../../src/studies/wording/solveWords.ts";
import { demoDocument, lipAlone } from "../demoModel.ts";
import { subjectOf } from "../window/windowSubject.ts";

const DEG = Math.PI / 180;

/** One value, least, two of a gap, one out of reach, a gap that cannot be, a field that does nothing. */
const ASKED: readonly (readonly [string, SolveTarget, SolveOptions?])[] = [
  ["knuckle.pinAngle", { of: "camber", value: -0.5 * DEG }],
  ["knuckle.pinAngle", { of: "camber", value: -0.5 * DEG, at: 50.8 }],
  ["knuckle.hubFace", { of: "scrubRadius", value: 25.4 }],
  ["truck.steering.innerEnd[2]", { of: "bumpSteer" }],
  ["knuckle.hubFace", { of: "gap", value: 8 }, { from: 120, to: 150 }],
  ["knuckle.hubFace", { of: "gap", value: 300 }, { from: 120, to: 150 }],
  ["knuckle.pinAngle", { of: "camber", value: 40 * DEG }],
  ["wheel.rimWidth", { of: "camber", value: 0 }],
];

it("what was solved for reads as it did", async () => {
  const { subject, model } = subjectOf(demoDocument(lipAlone()));
  const speech = { model, format: formatOf(model.setup), document: subject.document };
  const lines = ASKED.flatMap(([key, target, options]) => {
    const found = solveOf(subject, key, target, options);
    if (!found.ok) throw new TypeError(found.issues[0]!.mend);
    const value = "value" in target ? ` ${target.value.toFixed(4)}` : "";
    const said = solveSentences(found.value, speech).map((line) => `  ${line}`);
    const at = "at" in target ? ` at ${target.at?.toFixed(4)}` : "";
    return [`${key} for ${target.of}${value}${at}:`, ...said, ""];
  });
  const page = [...lines, cutShortSentence("solve"), ""].join("\n");
  expect(page).not.toMatch(/NaN|undefined|Infinity/);
  await expect(page).toMatchFileSnapshot(join(import.meta.dirname, "solveSentences.txt"));
});
