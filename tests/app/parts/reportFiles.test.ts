import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { documentFile } from "../../../src/app/parts/reportFiles.ts";
import { truckOf } from "../../../src/app/state/truck.ts";
import { chartOfPieces } from "../../../src/app/work/chartAnswer.ts";
import { JOBS, type JobName, type Question } from "../../../src/app/work/jobs.ts";
import { withoutVariants } from "../../../src/setup/editing/effectiveDocument.ts";
import { removeAt } from "../../../src/setup/reading/setAt.ts";
import { EFFORT, TRIM } from "../../../src/studies/change/changeField.ts";
import { readAxis } from "../../../src/studies/chart/readAxis.ts";
import { changeJson } from "../../../src/studies/documents/changeJson.ts";
import { oddsJson } from "../../../src/studies/documents/oddsJson.ts";
import { solveJson } from "../../../src/studies/documents/solveJson.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { oddsOf } from "../../../src/studies/odds/oddsOf.ts";
import { oddsDocument } from "../../../src/studies/odds/oddsTruck.ts";
import { captured } from "../../cli/captured.ts";
import { setupFolder } from "../../cli/setupFolder.ts";
import { runs } from "../../runs.ts";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";

const folder = setupFolder();
const LIP = folder.write("lip.json", demoDocument(lipAlone()));
const JIG = { halfLength: 8, tolerances: { tape: "1/8" } };
const JIGGED = folder.write("jigged.json", demoDocument({ ...lipAlone(), jig: JIG }));

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
    const question = {
      document: bodiless,
      field: "knuckle.hubFace",
      target,
      from: 130,
      to: 150,
      looksOn: false,
    };
    const line = ["--field", "knuckle.hubFace", "--for", "gap=8 mm", "--from", "130 mm", "--to", "150 mm"];
    expect(await saved(truck, solveJson(ask("solve", question), units))).toBe(
      captured(["solve", LIP, ...line, "--json"]).out,
    );
  });

  it("a fit chart, in pieces that come in any order, between two stances and to part of the lock", async () => {
    const { truck, bodiless, ask } = page(LIP);
    const subject = { document: bodiless, setup: truck.setup, file: truck.file };
    const [x, y] = [
      readAxis("wheel.backspacing", "4, 4 1/4, 5", subject),
      readAxis("tire.size", "P215/70R15, P235/70R15, 35x", subject),
    ];
    if (!x.ok || !y.ok) throw new TypeError("no such axes");
    const [low, high] = ["driving", "aired out"].map(
      (name) => truck.setup.stances.find((stance) => stance.name === name)!.travel,
    );
    const asked = {
      document: bodiless,
      ask: { x: x.value, y: y.value, travel: { low: low!, high: high! }, lock: 0.5 },
    };
    const pieces = [
      [8, 0, 4],
      [1, 2, 3, 5],
      [6, 7],
    ].map((cells) => ask("chart", { ...asked, cells }));
    expect(pieces[0]!.present).not.toBeNull();
    expect(await saved(truck, chartOfPieces(truck.setup, asked, pieces.reverse()))).toBe(
      captured([
        ...["chart", LIP, "--x", "wheel.backspacing=4, 4 1/4, 5", "--y"],
        ...["tire.size=P215/70R15, P235/70R15, 35x", "--heights", "driving:aired out", "--lock", "0.5"],
        ...["--json", "--budget", "900"],
      ]).out,
    );
  });

  // Of fewer draws than the page makes: they are what takes the time.
  it("the odds, of the document that a worker is asked about", async () => {
    const { truck, document } = page(JIGGED);
    const asked = { document: oddsDocument(withoutVariants(document)), setup: truck.setup, file: "" };
    const report = oddsOf({ ...asked, isAligned: false }, { draws: 60 });
    expect(report.matters.length).toBeGreaterThan(2);
    expect(await saved(truck, oddsJson(report, truck.setup.units))).toBe(
      captured(["odds", JIGGED, "--draws", "60", "--json", "--budget", "900"]).out,
    );
  });

  it("what to change", async () => {
    const { truck, bodiless, ask } = page(LIP);
    // On every change of a few fields: all of them are what takes the time.
    const order = runs(0, 1) === 1 ? EFFORT : ["wheel.backspacing", "tire.sectionWidth", TRIM];
    const report = ask("change", { document: bodiless, order });
    expect(await saved(truck, changeJson(report, truck.setup.units))).toBe(
      captured([
        "change",
        LIP,
        ...(runs(1, 0) ? ["--fields", order.join(",")] : []),
        "--json",
        "--budget",
        "900",
      ]).out,
    );
  });
});
