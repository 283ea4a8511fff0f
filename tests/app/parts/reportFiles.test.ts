import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { documentFile } from "../../../src/app/parts/reportFiles.ts";
import { truckOf } from "../../../src/app/state/truck.ts";
import { JOBS, type JobName, type Question } from "../../../src/app/work/jobs.ts";
import { withoutVariants } from "../../../src/setup/editing/effectiveDocument.ts";
import { removeAt } from "../../../src/setup/reading/setAt.ts";
import { EFFORT } from "../../../src/studies/change/changeField.ts";
import { asBuiltJson } from "../../../src/studies/documents/asBuiltJson.ts";
import { changeJson } from "../../../src/studies/documents/changeJson.ts";
import { loadsJson } from "../../../src/studies/documents/loadsJson.ts";
import { solveJson } from "../../../src/studies/documents/solveJson.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { variantWeights } from "../../../src/studies/strength/variantWeights.ts";
import { captured } from "../../cli/captured.ts";
import { setupFolder } from "../../cli/setupFolder.ts";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";

const folder = setupFolder();
const LIP = folder.write("lip.json", demoDocument(lipAlone()));
const ORDERED = "shared/ordered-knuckle.json";

/** A truck as the page has it, and what its worker answers, with all the time it takes. */
function page(file: string) {
  const text = readFileSync(file, "utf8");
  const made = truckOf(text, file, null);
  if (!made.ok) throw new TypeError(made.issues[0]!.mend);
  const truck = made.value;
  const document: unknown = JSON.parse(text);
  const ask = <J extends JobName>(job: J, question: Question<J>) =>
    JOBS[job]({
      model: () => truck.model,
      question,
      given: null as never,
      budget: Budget.endless(),
      onProgress: () => {},
    }).answer;
  return { truck, document, bodiless: removeAt(withoutVariants(document), ["truck", "body"]), ask };
}

async function saved(truck: ReturnType<typeof page>["truck"], document: object) {
  return documentFile(truck, "it", "It", () => document).make(new AbortController().signal, () => undefined);
}

describe("a document saved of an answer on the page is what the command line prints, letter for letter:", () => {
  it("what was solved for", async () => {
    const { truck, bodiless, ask } = page(LIP);
    const { units } = truck.setup;
    const target = { of: "gap", value: 8 } as const;
    const question = { document: bodiless, field: "knuckle.hubFace", target, from: 130, to: 150 };
    const line = ["--field", "knuckle.hubFace", "--for", "gap=8 mm", "--from", "130 mm", "--to", "150 mm"];
    expect(await saved(truck, solveJson(ask("solve", question), units))).toBe(
      captured(["solve", LIP, ...line, "--json"]).out,
    );
  });

  it("what to change", async () => {
    const { truck, bodiless, ask } = page(LIP);
    const report = ask("change", { document: bodiless, order: EFFORT });
    expect(await saved(truck, changeJson(report, truck.setup.units))).toBe(
      captured(["change", LIP, "--json", "--budget", "900"]).out,
    );
  });

  it("the loads at a pose", async () => {
    const { truck, document, ask } = page(ORDERED);
    const answer = ask("loads", { pose: { travel: 0, steer: 0.5 } });
    if (!answer.ok) throw new TypeError(answer.issue.mend);
    const told = loadsJson(answer.report, truck.setup.units, variantWeights(document, ORDERED));
    expect(await saved(truck, told)).toBe(
      captured(["loads", ORDERED, "--travel", "0", "--steer", "0.5", "--json"]).out,
    );
  });

  it("the knuckles as built", async () => {
    const { truck, ask } = page(ORDERED);
    const report = ask("asBuilt", { isAligned: false });
    expect(report).not.toBeNull();
    expect(await saved(truck, asBuiltJson(report!, truck.model.setup))).toBe(
      captured(["asbuilt", ORDERED, "--json", "--budget", "900"]).out,
    );
  });
});
