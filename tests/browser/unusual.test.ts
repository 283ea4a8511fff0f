import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { goTo } from "./harness/stations.ts";
import { sharedWorkbench, shot } from "./harness/workbench.ts";

const SOON = { timeout: 60_000 };
const verdict = (page: Page) => page.locator(".verdict");
const setup = (page: Page) => page.getByRole("region", { name: "Setup", exact: true });
const undo = (page: Page) => page.getByRole("button", { name: /^Undo/ });

/** What a person reads there, with every space an ordinary one. */
async function read(place: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: what is not shown is not read
  return (await place.innerText()).replace(/\s+/g, " ").trim();
}

/** A truck of few parts, whose answer is soon there. */
const { fromExample: _, ...EXAMPLE } = JSON.parse(
  readFileSync(join(import.meta.dirname, "..", "..", "shared", "half-ton-on-air.json"), "utf8"),
) as Record<string, unknown> & { truck: { body: readonly object[] } };
const FEW = {
  ...EXAMPLE,
  truck: { ...EXAMPLE.truck, body: EXAMPLE.truck.body.slice(-1) },
  hardware: undefined,
};

const shared = sharedWorkbench({ isBare: true, path: "#measure" });
let openings = 0;

/** At the setup's fields: opens it, types a hub face of 60 in and waits for the answer. */
async function typeNonsense(page: Page): Promise<void> {
  await goTo(page, "Measure");
  // By its name it is told from the one before.
  const name = `A few parts, opening ${++openings}`;
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({
      name: "few.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify({ ...FEW, name })),
    });
  await page.locator(".heading-setup").filter({ hasText: name }).waitFor();
  await page.locator(".verdict .verdict-word:not([aria-hidden])").waitFor(SOON);
  const hubFace = setup(page).getByRole("textbox", { name: "Hub-face distance", exact: true });
  await hubFace.fill("60");
  await hubFace.press("Enter");
  await page.locator('.verdict[data-verdict="unusual"]').waitFor(SOON);
}

/** Colors in the page that are the green of what clears: none while something is in doubt. */
async function greens(page: Page): Promise<number> {
  return page.evaluate(() => {
    const probe = document.createElement("i");
    document.body.append(probe);
    const inks = ["#24603f", "#86d3a8", "#e3eee0", "#1d3832"].map((ink) => {
      probe.style.color = ink;
      return getComputedStyle(probe).color;
    });
    probe.remove();
    return [...document.querySelectorAll<HTMLElement>("body *")].filter((element) => {
      const { color, backgroundColor, borderTopColor, fill, stroke, visibility } = getComputedStyle(element);
      if (visibility === "hidden" || element.getClientRects().length === 0) return false;
      return [color, backgroundColor, borderTopColor, fill, stroke].some((ink) => inks.includes(ink));
    }).length;
  });
}

describe("a hub face of 60 in", () => {
  it.each([
    [1440, 900, "light"],
    [390, 844, "dark"],
  ] as const)(
    "is amber with mark and words at %i by %i, %s, until it is so; undo takes that back",
    async (width, height, colorScheme) => {
      const { page, problems } = await shared();
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ colorScheme });
      await typeNonsense(page);
      expect(await read(setup(page).locator('[data-field="knuckle.hubFace"] .doubts'))).toContain(
        "It is right",
      );
      expect(await greens(page)).toBe(0);
      await goTo(page, "Clear");
      expect(await read(verdict(page).locator(".verdict-word:not([aria-hidden])"))).toBe("Unusual");
      expect(await verdict(page).locator(".mark-unusual").count()).toBeGreaterThan(0);
      expect(await read(verdict(page))).toMatch(
        /If what is unusual is right.*, everything clears.*Hub-face distance of 60 in is unusual: .* Was 6 in meant\?/s,
      );
      expect(await greens(page)).toBe(0);
      await shot(page, `unusual-${width}-${colorScheme}`);
      expect(await faults(page, ".verdict")).toEqual([]);

      // By keys the focus goes on to the answer, not back to the page's first line.
      await verdict(page).getByRole("button", { name: "It is right" }).press("Enter");
      await page.locator('.verdict[data-verdict="clear"]').waitFor(SOON);
      expect(await verdict(page).evaluate((one) => one === document.activeElement)).toBe(true);
      expect(await read(verdict(page))).toMatch(/Clears Everything clears.*unusual, and confirmed/);
      expect(await verdict(page).locator(".doubts").count()).toBe(0);
      await undo(page).click();
      await page.locator('.verdict[data-verdict="unusual"]').waitFor(SOON);
      expect(await read(verdict(page))).toMatch(/Was 6 in meant/);
      expect(problems()).toEqual([]);
    },
  );

  it("is told at the counter and on the customer's sheet, and neither is green", async () => {
    const { page, problems } = await shared();
    await page.setViewportSize({ width: 1180, height: 820 });
    await page.emulateMedia({ colorScheme: "light" });
    await typeNonsense(page);
    await goTo(page, "Show");
    await page.getByRole("button", { name: "Counter view" }).click();
    const counter = page.getByRole("dialog", { name: /Side by side/ });
    await counter.locator('.counter-tag[data-verdict="unusual"]').first().waitFor(SOON);
    expect(await read(counter)).toMatch(/unusual, not confirmed[\s\S]*Was 6 in meant\?/);
    expect(await read(counter)).toMatch(/only if what is unusual is right/);
    expect(await greens(page)).toBe(0);
    await shot(page, "unusual-counter");
    await counter.getByRole("button", { name: /sheet/i }).click();
    const sheet = page.getByRole("dialog", { name: /Customer sheet/ });
    const answers = sheet.getByRole("region", { name: "Answers" });
    await expect
      .poll(() => read(answers), SOON)
      .toMatch(/Was 6 in meant\?[\s\S]*only if what is unusual is right/);
    await expect.poll(() => read(sheet.locator(".sheet-table")), SOON).toMatch(/unusual, not confirmed/);
    expect(await greens(page)).toBe(0);
    await shot(page, "unusual-sheet");
    expect(problems()).toEqual([]);
  });
});
