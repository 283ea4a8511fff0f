import { describe, expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { read } from "./harness/reading.ts";
import { openWorkbench, shot } from "./harness/workbench.ts";

const SOON = { timeout: 90_000 };

describe("at Choose", () => {
  it("a fit chart is read by keys and a cell of it kept, and one of the smallest changes too", async () => {
    const { page, problems } = await openWorkbench({
      isBare: true,
      viewport: { width: 1440, height: 900 },
      path: "#choose",
    });
    const chart = page.locator("[data-fold='chart']");
    await chart.locator("summary").first().click();
    const values = (name: string) => chart.getByLabel(`${name}: values`);
    await values("Across").fill("4 1/4, 5");
    await values("Down").fill("5 5/16, 6 5/16");
    const grid = chart.getByRole("grid", { name: "Hub-face distance against Backspacing" });
    await chart.locator("progress").waitFor({ state: "detached", ...SOON });
    const cells = grid.getByRole("gridcell");
    expect(await cells.count()).toBe(4);
    // As it stands, told by mark and text.
    const present = grid.locator("[data-present]");
    expect(await present.textContent()).toMatch(/^×/);
    expect(await read(chart)).toContain("The current truck (4 1/4, 6 5/16) rubs by 3/16 in or more.");
    await present.focus();
    await page.keyboard.press("ArrowRight");
    await expect
      .poll(() => chart.locator(".chart-cell").textContent())
      .toMatch(/^Backspacing 5, hub-face distance 6 5\/16: (clears|close)/);
    await values("Down").fill("6 5/16, four");
    await chart.getByRole("alert").waitFor(SOON);
    await values("Down").fill("5 5/16, 6 5/16");
    await present.focus();
    await page.keyboard.press("ArrowRight");
    await shot(page, "fit-chart");
    await chart.getByRole("button", { name: "Keep this one as a variant" }).click();
    await page.locator('.verdict:not([data-verdict="rubs"])').waitFor(SOON);

    await page.keyboard.press("Control+z");
    await page.locator('.verdict[data-verdict="rubs"]').waitFor(SOON);
    const change = page.locator("[data-fold='change']");
    await change.locator("summary").first().click();
    const listed = change.getByRole("heading", { level: 3 });
    await listed.first().waitFor(SOON);
    const titles = await listed.allTextContents();
    expect(
      titles.some((title) => /^Backspacing from 4 1\/4 in to \d/.test(title.replaceAll("\u00a0", " "))),
    ).toBe(true);
    expect(await faults(page, ".choices .folds")).toEqual([]);
    await shot(page, "what-to-change");
    await change.getByRole("button", { name: /^Keep as a variant: Backspacing/ }).click();
    await page.locator('.verdict:not([data-verdict="rubs"])').waitFor(SOON);
    expect(problems()).toEqual([]);
  }, 240_000);
});
