import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { read } from "./harness/reading.ts";
import { openWorkbench, shot } from "./harness/workbench.ts";

const SOON = { timeout: 60_000 };

/**
 * Seconds in which no search of the example gets through, nor in the five and five times as many to which it goes on by itself;
 * five times as often asked for longer, each does.
 */
const TOO_FEW = 0.002 / 25;

const verdict = (page: Page) => page.locator(".verdict");
/** Of every answer but a window's, which is a search of its own. */
const note = (place: Locator) => place.locator(".cut-short:not(.window-view .cut-short)");
const longer = (place: Locator) => place.getByRole("button", { name: "Search longer" });

/** The page at an address with a truck whose every answer is cut short, once the verdict is there. */
async function opened(path: string, width: number, height: number, colorScheme: "light" | "dark") {
  const bench = await openWorkbench({
    isBare: true,
    colorScheme,
    path,
    seconds: TOO_FEW,
    viewport: { width, height },
  });
  await longer(bench.page.locator("main")).first().waitFor(SOON);
  return bench;
}

/** Asks to search longer until nothing is left to ask for. */
async function finish(place: Locator): Promise<void> {
  await expect
    .poll(async () => {
      const button = longer(place).first();
      if (await button.isVisible()) await button.click();
      return note(place).count();
    }, SOON)
    .toBe(0);
}

describe("a page whose searches are cut short", () => {
  it.each([
    [1440, 900, "light"],
    [390, 844, "dark"],
  ] as const)(
    "says so in each answer at %i by %i, %s, and searches longer",
    async (width, height, scheme) => {
      const { page, problems } = await opened("#clear", width, height, scheme);
      for (const place of [".verdict", ".gaps", ".map", ".limits"])
        await longer(page.locator(place)).first().waitFor(SOON);
      expect(await verdict(page).getAttribute("data-verdict")).toMatch(/^(unfinished|rubs)$/);
      expect(await read(note(verdict(page)))).toMatch(/^Not finished in the time allowed: .* Search longer$/);
      expect(await faults(page, "main")).toEqual([]);
      await shot(page, `cut-short-${width}-${scheme}`);
      // Beside the heading or the word: the banner gets no line more by it.
      const [said, row] = [note(verdict(page)), verdict(page).locator(".verdict-row")];
      const [saidBox, rowBox] = [(await said.boundingBox())!, (await row.boundingBox())!];
      expect(saidBox.y + saidBox.height).toBeLessThanOrEqual(rowBox.y + 48);
      await finish(verdict(page));
      await page.locator('.verdict[data-verdict="rubs"]').waitFor(SOON);
      await finish(page.locator(".limits"));
      expect(await read(page.locator(".limits"))).not.toMatch(/Not finished/);
      await finish(page.locator(".map"));
      expect(await page.locator(".map-key").getByText("not looked at").count()).toBe(0);
      // Of one cache: what the verdict's search found is what the nearest parts are told by.
      expect(await note(page.locator(".gaps")).count()).toBe(0);
      expect(problems()).toEqual([]);
    },
  );

  it("says so of variants, which are all searched longer at once", async () => {
    const { page, problems } = await opened("#choose", 1440, 900, "light");
    const table = page.locator(".variants");
    await note(table).waitFor(SOON);
    await expect.poll(() => table.locator(".mark-unfinished").count(), SOON).toBeGreaterThan(0);
    expect(await read(table)).toMatch(/not finished, so far/);
    await shot(page, "cut-short-variants");
    await finish(table);
    expect(await table.locator(".mark-unfinished").count()).toBe(0);
    expect(problems()).toEqual([]);
  });

  it("says so at the counter and on the sheet, where one search does for both", async () => {
    const { page, problems } = await opened("#counter", 1180, 820, "light");
    const counter = page.getByRole("dialog", { name: /Side by side/ });
    await expect.poll(() => note(counter).count(), SOON).toBe(2);
    expect(await read(counter.locator(".counter-tags"))).toMatch(/not finished|rubs/);
    await shot(page, "cut-short-counter");
    await counter.getByRole("button", { name: /sheet/i }).click();
    const sheet = page.getByRole("dialog", { name: /Customer sheet/ });
    await expect.poll(() => note(sheet).count(), SOON).toBe(2);
    await shot(page, "cut-short-sheet");
    await finish(sheet);
    await page.goBack();
    await counter.locator(".counter-tag").first().waitFor(SOON);
    expect(await note(counter).count()).toBe(0);
    expect(problems()).toEqual([]);
  });

  it("stops a longer search, and keeps the answer there was", async () => {
    const { page } = await opened("#clear", 1440, 900, "light");
    await longer(verdict(page)).waitFor(SOON);
    const before = await read(verdict(page).locator(".verdict-row"));
    // Workers that do not yield: what they are asked from now on never ends.
    await page.evaluate(() => {
      Worker.prototype.postMessage = () => {};
    });
    await longer(verdict(page)).click();
    await verdict(page).getByRole("progressbar").waitFor(SOON);
    expect(await read(note(verdict(page)))).toMatch(
      /^Still searching, for up to 0\.01 s: another pose may be worse\. Stop$/,
    );
    expect(await read(verdict(page).locator(".verdict-row"))).toBe(before);
    await verdict(page).getByRole("button", { name: "Stop" }).click();
    await longer(verdict(page)).waitFor(SOON);
    expect(await verdict(page).getByRole("progressbar").count()).toBe(0);
    expect(await read(verdict(page).locator(".verdict-row"))).toBe(before);
  });
});
