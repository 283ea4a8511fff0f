import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { measureText } from "../../../src/studies/documents/measureJson.ts";
import { type ReportAsk, reportText } from "../../../src/studies/documents/reportText.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { captured } from "../../cli/captured.ts";
import { demoModel } from "../demoModel.ts";

const FILE = "shared/half-ton-limits.json";

function limitsTruck(): Model {
  const text = readFileSync(new URL(`../../../${FILE}`, import.meta.url), "utf8");
  const read = resolveSetup(JSON.parse(text), FILE, null);
  if (!read.ok) throw new Error(read.issues[0]!.mend);
  const built = modelOf(read.value, FILE);
  if (!built.ok) throw new Error(built.issues[0]!.mend);
  return built.value;
}

const endless = Budget.endless();

describe("what the page saves", () => {
  const model = limitsTruck();

  it.each<[string, ReportAsk, string[]]>([
    ["the check", { of: "check" }, ["check", FILE, "--json", "--budget", "900"]],
    ["the limits", { of: "limits" }, ["limits", FILE, "--json", "--budget", "900"]],
    ["the alignment", { of: "align" }, ["align", FILE, "--json"]],
    ["a map", { of: "map" }, ["map", FILE, "--json"]],
    ["a map's table", { of: "map csv" }, ["map", FILE, "--csv"]],
    ["a sweep", { of: "sweep" }, ["sweep", FILE, "--json"]],
    ["a sweep's table", { of: "sweep csv" }, ["sweep", FILE, "--csv"]],
    ["the geometry", { of: "geometry" }, ["geometry", FILE, "--json"]],
    ["the floor", { of: "floor" }, ["floor", FILE, "--json"]],
    ["the air", { of: "air" }, ["air", FILE, "--json"]],
    [
      "a pose",
      { of: "pose", travel: 25.4, steer: -0.5 },
      ["pose", FILE, "--travel", "1", "--steer", "-0.5", "--json"],
    ],
  ])("of %s is what the command line prints, letter for letter", (_, ask, line) => {
    expect(reportText(model, ask, endless)).toBe(captured(line).out);
  });

  it("of readings is what the command line prints, letter for letter", () => {
    const file = "shared/tape-measured.json";
    const text = readFileSync(new URL(`../../../${file}`, import.meta.url), "utf8");
    const { out } = captured(["measure", file, "--json"]);
    expect(measureText(JSON.parse(text), null)).toBe(out);
    expect(JSON.parse(out)).toMatchObject({ units: "in", residuals: expect.any(Array) });
  });

  it("is nothing where there is no answer", () => {
    expect(measureText({ format: "wellsweep-setup", version: 1, units: "in" }, null)).toBeNull();
    expect(measureText({ units: "in", readings: [{ height: "nowhere.at", is: 3 }] }, null)).toBeNull();
    expect(reportText(demoModel(), { of: "air" }, endless)).toBeNull();
    expect(reportText(model, { of: "pose", travel: -900, steer: 0 }, endless)).toBeNull();
  });
});
