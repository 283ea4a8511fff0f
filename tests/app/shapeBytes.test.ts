import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { truckOf } from "../../src/app/state/truck.ts";
import { shapeBytes } from "../../src/app/work/shapeBytes.ts";
import { Budget } from "../../src/studies/numeric/budget.ts";
import { captured } from "../cli/captured.ts";
import { setupFolder } from "../cli/setupFolder.ts";
import { demoDocument, lipAlone } from "../studies/demoModel.ts";

const folder = setupFolder();

const FORMATS = ["svg", "stl"] as const;

describe("the swept space saved from the page", () => {
  it("is the very surface and section that the command line writes, swept once for both", () => {
    // Little travel: little is swept.
    const travel = { droop: -0.25, bump: 0.25 };
    const file = folder.write("lip.json", demoDocument({ ...lipAlone(), travel, stances: [] }));
    const out = (format: string) => join(file, "..", `swept.${format}`);
    const line = [
      "envelope",
      file,
      "--straight",
      "--section",
      "x=0",
      ...FORMATS.flatMap((format) => ["--out", out(format)]),
    ];
    expect(captured(line).code).toBe(0);
    const made = truckOf(readFileSync(file, "utf8"), file, null);
    if (!made.ok) throw new Error("does not go together");
    const sweeps = new Set<string>();
    for (const format of FORMATS) {
      const plane = format === "stl" ? null : ({ axis: "x", at: 0 } as const);
      const ask = { of: "shape", format, choice: "straight", travel: 0, plane } as const;
      const bytes = shapeBytes(made.value.model, ask, Budget.endless(), () => sweeps.add(format));
      expect(Buffer.from(bytes).equals(readFileSync(out(format))), format).toBe(true);
    }
    expect([...sweeps]).toEqual(["svg"]);
  });
});
