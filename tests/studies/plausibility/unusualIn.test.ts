import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { UNUSUAL_CHECKS } from "../../../src/setup/types/unusualChecks.ts";
import { CHECKS } from "../../../src/studies/plausibility/checks.ts";
import { unusualIn } from "../../../src/studies/plausibility/unusualIn.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { unusualDoubts } from "../../../src/studies/wording/unusualReport.ts";
import { ROWS } from "./rows.ts";
import { changed, halfTon, modelFrom } from "./trucks.ts";

const found = (document: object) => unusualIn(modelFrom(document)).open.map(({ check }) => check);

describe("the checks for plausible slips", () => {
  it("are a table in which each has its reason and its source, and each is tried", () => {
    expect(CHECKS.map(({ name }) => name)).toEqual([...UNUSUAL_CHECKS]);
    for (const { reason, source } of CHECKS) {
      expect(reason.length).toBeGreaterThan(30);
      expect(source).toMatch(/^common practice, no source$|(definitions|jig-and-as-built)\.md|two solids/);
    }
    expect(new Set(ROWS.map(({ check }) => check))).toEqual(new Set(UNUSUAL_CHECKS));
  });

  it.each(ROWS.map((row) => [row.check, row.what, row] as const))("%s: %s", (check, _, row) => {
    expect(found(row.trips)).toContain(check);
    expect(found(row.inside)).not.toContain(check);
  });

  it("say what they find in these sentences", async () => {
    const table = ROWS.map(({ check, what, trips }) => {
      const model = modelFrom(trips);
      const texts = unusualDoubts(model, formatOf(model.setup)).map(({ text }) => `  ${text}\n`);
      return `${check}: ${what}\n${texts.join("")}`;
    }).join("\n");
    await expect(table).toMatchFileSnapshot(join(import.meta.dirname, "sentences.txt"));
  });

  it("are not asked about what a slip found before would make of the rest", () => {
    const both = changed(halfTon, [["knuckle", "hubFace"], 60], [["knuckle", "span"], 14]);
    expect(found(both)).toEqual(["hubFace"]);
  });
});
