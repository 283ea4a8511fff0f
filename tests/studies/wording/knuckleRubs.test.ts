import { expect, it } from "vitest";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { checkOnPaperSentence } from "../../../src/studies/wording/drawingWords.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { verdictSentence } from "../../../src/studies/wording/verdictSentence.ts";
import { demoModel, lipAlone } from "../demoModel.ts";

it("a knuckle that rubs is told of beside its drawings, in the words of the check", () => {
  const model = demoModel(lipAlone());
  const report = checkClearance(model);
  expect(report.verdict).toBe("rubs");
  const format = formatOf(model.setup);
  const said = checkOnPaperSentence(report, model, format);
  expect(said).toMatch(/^This knuckle rubs on this truck \(see Clear\): the tire rubs the fender lip/);
  expect(said.toLowerCase()).toContain(verdictSentence(report, model, format).toLowerCase());
});
