import { describe, expect, it } from "vitest";
import { readSetup } from "../../../src/setup/readSetup.ts";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { documentInMm } from "../documentInMm.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const plain = demoDocument(lipAlone()) as { knuckle: object };
/** The plain truck's fender lip alone, its hub face told with ±. */
const file = folder.write("lip.json", { ...plain, knuckle: { ...plain.knuckle, hubFace: "5 7/16 ± 1/8" } });
const few = ["--draws", "60"];

describe("odds", () => {
  const { code, document } = capturedJson(["odds", file, ...few]);

  it("answers with a share between its ends, draws, seed and what matters", () => {
    expect(code).toBe(0);
    expect(document).toMatchObject({
      units: "in",
      draws: 60,
      seed: 1,
      confidence: 0.95,
      gap: 0,
      leftOut: [],
    });
    expect(document.low).toBeLessThanOrEqual(document.clears);
    expect(document.clears).toBeLessThanOrEqual(document.high);
    const hubFace = document.inputs.find(({ field }: { field: string }) => field === "knuckle.hubFace");
    expect(hubFace).toEqual({ field: "knuckle.hubFace", within: 0.125, from: "typed" });
    const from = new Set(document.inputs.map((input: { from: string }) => input.from));
    expect(from).toEqual(new Set(["typed", "tire", "build"]));
    for (const matter of document.matters)
      expect(Object.keys(matter)).toEqual(["field", "share", "ifMeasuredAgain"]);
    const shares = document.matters.reduce((sum: number, { share }: { share: number }) => sum + share, 0);
    expect(Math.abs(shares - 1) < 1e-9 || shares === 0).toBe(true);
  });

  it("gives the same figure in millimeters, by the same seed", () => {
    const inches = folder.write("inches.json", plain);
    const setup = readSetup(JSON.stringify(plain), "inches.json");
    if (!setup.ok) throw new Error(setup.issues[0]!.mend);
    const mm = folder.write("mm.json", documentInMm(setup.value.setup));
    const [a, b] = [inches, mm].map((one) => capturedJson(["odds", one, ...few]).document);
    expect(b.clears).toBe(a.clears);
    expect(b.units).toBe("mm");
  });

  it("says it in one sentence first, marks it likely, and ends in 1 only where more is asked for", () => {
    const { out } = captured(["odds", file, ...few]);
    expect(out.split("\n")[1]).toMatch(/^Odds: (?:clears|touches) in (?:about|more than|all) \d+/);
    expect(out).toMatch(/Hub-face distance +± 1\/8 in +typed/);
    expect(out).toMatch(/60 trucks drawn.*seed 1/);
    expect(captured(["odds", file, ...few, "--at-least", "0.999"]).code).toBe(1);
    expect(captured(["odds", file, ...few, "--at-least", "0.000001"]).code).toBe(0);
    const kept = capturedJson(["odds", file, ...few, "--allowance"]).document;
    expect(kept.gap).toBeGreaterThan(0);
    expect(kept.clears).toBeLessThanOrEqual(document.clears);
  });

  it("stops at its budget and says so", () => {
    let now = 0;
    const { out, code: ended } = captured(
      ["odds", file, "--draws", "5000", "--budget", "0.2"],
      "",
      () => now++,
    );
    expect([ended, /fewer trucks were drawn/.test(out)]).toEqual([0, true]);
  });

  it("refuses what is no share and no whole number", () => {
    for (const [option, value, mend] of [
      ["--draws", "0", /whole number from 1/],
      ["--draws", "many", /whole number/],
      ["--seed", "-1", /whole number from 0/],
      ["--within", "2", /share between 0 and 1/],
      ["--at-least", "90 %", /share between 0 and 1/],
    ] as const) {
      const { code: ended, error } = captured(["odds", file, option, value]);
      expect([option, ended]).toEqual([option, 2]);
      expect(error).toMatch(mend);
    }
  });
});
