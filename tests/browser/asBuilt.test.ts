import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { readPdf } from "./harness/pdfText.ts";
import { read } from "./harness/reading.ts";
import { openWorkbench, shot } from "./harness/workbench.ts";

const FILE = join(import.meta.dirname, "..", "..", "shared", "ordered-knuckle.json");
const SOON = { timeout: 60_000 };

/** The example of an ordered knuckle at Build, jig sheet and as-built check unfolded. */
async function atBuild(options: Parameters<typeof openWorkbench>[0]) {
  const bench = await openWorkbench({ isBare: true, path: "#build", ...options });
  const { page } = bench;
  await page.locator('input[type="file"]').first().setInputFiles(FILE);
  await page.locator(".heading-setup").filter({ hasText: "Tamarack Street" }).waitFor();
  for (const fold of ["jig", "asBuilt"]) await page.locator(`[data-fold="${fold}"] > summary`).click();
  return bench;
}

const panel = (page: Page) => page.getByRole("region", { name: "As built", exact: true });
const field = (page: Page, name: string) => panel(page).getByRole("textbox", { name, exact: true });
const told = (page: Page) => read(panel(page).locator(".as-built-told"));
const onTruck = (page: Page) => panel(page).getByRole("region", { name: "On the truck" });

describe("knuckles as built", () => {
  it("are told from readings typed on the page, undone, kept over a reload, and made a variant", async () => {
    const { page, problems } = await atBuild({ viewport: { width: 1440, height: 900 } });
    await expect.poll(() => told(page), SOON).toContain("The left knuckle FAILS 2 of 13 readings");
    await onTruck(page).waitFor(SOON);
    expect(await read(onTruck(page))).toMatch(
      /As built: The fender lip comes within 1\/8 in of the left tire/,
    );

    const behind = field(page, "Tape behind, left knuckle");
    const angle = field(page, "Angle finder on the face, left knuckle");
    await behind.fill("5 9/16");
    await angle.fill("8.6");
    await expect.poll(() => told(page), SOON).toContain("The left knuckle passes: all 13 readings");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => told(page), SOON).toContain("FAILS 1 of 13 readings: angle finder");
    await page.getByRole("button", { name: "Redo" }).click();
    await expect.poll(() => told(page), SOON).toContain("The left knuckle passes");

    // What no field can hold is kept as typed, with what is wrong.
    const span = field(page, "Ball joint span, right knuckle");
    await span.fill("10 5/8 im");
    await expect.poll(() => read(panel(page).locator(".reading-fault")), SOON).toContain("in");
    await page.waitForTimeout(1500);
    await page.reload();
    await angle.waitFor();
    expect(await angle.inputValue()).toBe("8.6");
    expect(await span.inputValue()).toBe("10 5/8 im");
    await span.fill("10 5/8");

    await panel(page).getByRole("button", { name: "Make the left knuckle as built a variant" }).click();
    await expect
      .poll(() => read(page.locator("[data-fold='asBuilt'] > summary")), SOON)
      .toContain("nothing read yet");
    await expect.poll(() => read(page.locator(".knuckle-numbers")), SOON).toMatch(/variant “as built, left”/);
    expect(problems()).toEqual([]);
  }, 120_000);

  it("print with the jig sheet on two whole pages, Letter and A4, and no control with them", async () => {
    const { page } = await atBuild({ viewport: { width: 1440, height: 900 } });
    await page.evaluate(() => {
      window.print = () => {};
    });
    for (const format of ["Letter", "A4"]) {
      await page.getByRole("button", { name: "Print the jig sheet" }).click();
      const { pages, text } = readPdf(await page.pdf({ format }));
      expect(pages, format).toBe(2);
      for (const words of [
        "Jig sheet: Tamarack",
        "Right knuckle, seen from the front",
        "clamped 1/4 in too high",
      ])
        expect(text, format).toContain(words.replace(/\s/g, ""));
      expect(text, format).toContain("55/8in");
      for (const control of ["Print the jig", "Drawn", "Asbuilt", "Undo"])
        expect(text, format).not.toContain(control.replace(/\s/g, ""));
    }
  }, 60_000);

  it.each([
    ["desk", { width: 1440, height: 900 }, "light"],
    ["phone", { width: 390, height: 844 }, "dark"],
  ] as const)(
    "read well and can be told apart on a %s",
    async (name, viewport, colorScheme) => {
      const { page, problems } = await atBuild({ viewport, colorScheme });
      await onTruck(page).waitFor(SOON);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      const { violations } = await new AxeBuilder({ page })
        .include("[data-fold='jig']")
        .include("[data-fold='asBuilt']")
        .analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`)).toEqual(
        [],
      );
      await panel(page).scrollIntoViewIfNeeded();
      await shot(page, `as-built-${name}`);
      expect(problems()).toEqual([]);
    },
    120_000,
  );
});
