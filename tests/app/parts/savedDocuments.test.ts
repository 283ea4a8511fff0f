import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { SHIPPED } from "../../../src/app/parts/catalogs/shippedCatalogs.ts";
import { documentFile } from "../../../src/app/parts/reportFiles.ts";
import { type Truck, truckOf } from "../../../src/app/state/truck.ts";
import type { Job, JobName } from "../../../src/app/work/jobs.ts";
import { JOBS } from "../../../src/app/work/jobs.ts";
import { drawnBytes } from "../../../src/files/drawnBytes.ts";
import { effectiveDocument } from "../../../src/setup/editing/effectiveDocument.ts";
import { removeAt } from "../../../src/setup/reading/setAt.ts";
import { asBuiltJson, jigJson } from "../../../src/studies/documents/asBuiltJson.ts";
import { loadsJson } from "../../../src/studies/documents/loadsJson.ts";
import { orderJson } from "../../../src/studies/documents/orderJson.ts";
import { reportText } from "../../../src/studies/documents/reportText.ts";
import { sheetJson } from "../../../src/studies/documents/sheetJson.ts";
import { windowJson } from "../../../src/studies/documents/windowJson.ts";
import type { DrawingAsk } from "../../../src/studies/drawings/shopDrawings.ts";
import { jigSheetOf } from "../../../src/studies/jig/jigSheet.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { orderSheet } from "../../../src/studies/order/orderSheet.ts";
import { variantWeights } from "../../../src/studies/strength/variantWeights.ts";
import { captured } from "../../cli/captured.ts";
import { setupFolder } from "../../cli/setupFolder.ts";

const folder = setupFolder();
const ORDERED = "shared/ordered-knuckle.json";
const TUBULAR = "shared/tubular-knuckle.json";
const typed = (file: string) => JSON.parse(readFileSync(file, "utf8")) as Record<string, unknown>;

function pageTruck(file: string, variant: string | null = null): Truck {
  const read = truckOf(readFileSync(file, "utf8"), file, variant);
  if (!read.ok) throw new Error(read.issues[0]!.mend);
  return read.value;
}

/** What a worker answers the page. */
function answerOf<J extends JobName>(name: J, { model }: Truck, question: Job<J>["question"]) {
  const job = { model: () => model, question, given: null, budget: Budget.endless(), onProgress: () => {} };
  return JOBS[name](job as unknown as Job<J>).answer;
}

/** What the page saves of an answer it has. */
const saved = (truck: Truck, of: string, document: object) =>
  documentFile(truck, of, of, () => document).make(new AbortController().signal, () => undefined) as string;

const printed = (line: string[]) => captured([...line, "--json"]).out;

describe("what the page saves as JSON is what the command line prints, letter for letter", () => {
  const truck = pageTruck(ORDERED);
  const { setup } = truck;

  it("of an order", () => {
    const sheet = orderSheet(setup, SHIPPED, truck.file)!;
    expect(saved(truck, "order", orderJson(sheet))).toBe(printed(["order", ORDERED]));
  });

  it("of loads, at a pose and where they are worst", () => {
    const loads = (question: Job<"loads">["question"]) => {
      const answer = answerOf("loads", truck, question);
      if (!answer.ok) throw new Error(answer.issue.mend);
      return saved(
        truck,
        "loads",
        loadsJson(answer.report, setup.units, variantWeights(typed(ORDERED), ORDERED)),
      );
    };
    const pose = { travel: 25.4, steer: -0.5 };
    expect(loads({ pose })).toBe(printed(["loads", ORDERED, "--travel", "1", "--steer", "-0.5"]));
    expect(loads({ pose: null })).toBe(printed(["loads", ORDERED]));
  });

  it("of a jig sheet and of the knuckle as built", () => {
    expect(saved(truck, "jig", jigJson(jigSheetOf(setup), setup.units))).toBe(
      printed(["asbuilt", ORDERED, "--jig"]),
    );
    const report = answerOf("asBuilt", truck, { isAligned: false })!;
    expect(saved(truck, "as-built", asBuiltJson(report, setup))).toBe(printed(["asbuilt", ORDERED]));
  });

  it("of a window of a variant", () => {
    const variant = "steeper pin";
    const shown = pageTruck(TUBULAR, variant);
    // The worker has the body already: the page asks without it.
    const document = removeAt(effectiveDocument(typed(TUBULAR), variant), ["truck", "body"]);
    const window = answerOf("window", shown, { document, field: "knuckle.hubFace" });
    expect(saved(shown, "window", windowJson(window, shown.setup.units))).toBe(
      printed(["window", TUBULAR, "--field", "knuckle.hubFace", "--variant", variant]),
    );
  });

  it("of a check of a variant, as the customer's sheet saves it", () => {
    const { model } = pageTruck(TUBULAR, "steeper pin");
    expect(reportText(model, { of: "check" }, Budget.endless())).toBe(
      printed(["check", TUBULAR, "--variant", "steeper pin"]),
    );
  });

  it("of drawings, but for the folder", () => {
    const ask: DrawingAsk = { paper: "letter", angle: "third", kerf: 0 };
    const drawn = answerOf("drawings", truck, ask);
    if (!drawn.ok) throw new Error(drawn.issues[0]!.mend);
    const written = drawn.value.files.map((one) => ({ ...one, bytes: drawnBytes(one.contents) }));
    const document = JSON.parse(saved(truck, "sheet", sheetJson(drawn.value, written, ask, setup.units)));
    const out = join(folder.path, "drawings");
    const told = JSON.parse(printed(["sheet", ORDERED, "--out", out]));
    for (const one of told.files) one.file = basename(one.file);
    expect(document).toEqual(told);
  });
});
