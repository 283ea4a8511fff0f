import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { read } from "./harness/reading.ts";
import { sharedWorkbench } from "./harness/workbench.ts";

const FILE = join(import.meta.dirname, "..", "..", "shared", "half-ton-on-air.json");
const SOON = { timeout: 60_000 };

const desk = sharedWorkbench({ isBare: true, path: "#choose", viewport: { width: 1440, height: 900 } });

describe("odds on the page", () => {
  it("are told as likely with what they rest on, stopped and begun again, and stand at the counter", async () => {
    const { page, problems } = await desk();
    const plain = JSON.parse(await readFile(FILE, "utf8"));
    const { hardware: _, ...light } = plain;
    const truck = {
      ...light,
      name: "Told with plus and minus",
      knuckle: { ...plain.knuckle, hubFace: "5 3/8 ± 1/16" },
      variants: [],
    };
    await page
      .locator('input[type="file"]')
      .first()
      .setInputFiles({
        name: "t.json",
        mimeType: "application/json",
        buffer: Buffer.from(JSON.stringify(truck)),
      });
    await page.locator(".heading-setup").filter({ hasText: truck.name }).waitFor();
    const fold = page.locator('[data-fold="odds"]');
    await fold.locator("> summary").click();
    // What is quick may be through before anybody can cancel it.
    const cancel = fold.getByRole("button", { name: "Cancel" });
    const said = fold.locator(".odds-said");
    await cancel.or(said).first().waitFor(SOON);
    if (await cancel.isVisible()) {
      await cancel.click();
      await fold.getByRole("button", { name: "Work out the odds" }).click();
    }
    await expect
      .poll(() => read(said), SOON)
      .toMatch(
        /Odds: (?:clears in|almost surely [\w, ]+:) (?:about|more than|fewer than|all|none of the) \d+/,
      );
    await fold.getByText("How this was worked out").click();
    expect(await read(fold)).toMatch(/trucks drawn, each proven over all travel and both locks; seed 1/);
    expect(await faults(page, '[data-fold="odds"]')).toEqual([]);
    await page.evaluate(() => {
      location.hash = "#show";
    });
    await expect.poll(() => read(page.locator(".odds-line").first()), SOON).toMatch(/Odds: /);
    expect(problems()).toEqual([]);
  }, 180_000);
});
