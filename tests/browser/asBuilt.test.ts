import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { readPdf } from "./harness/pdfText.ts";
import { read } from "./harness/reading.ts";
import { openWorkbench, sharedWorkbench, shot, type Workbench } from "./harness/workbench.ts";

const FILE = join(import.meta.dirname, "..", "..", "shared", "ordered-knuckle.json");
let openings = 0;
const SOON = { timeout: 60_000 };

const desk = sharedWorkbench({ isBare: true, path: "#build", viewport: { width: 1440, height: 900 } });

const phone = () => openWorkbench({ isBare: true, path: "#build", viewport: { width: 390, height: 844 } });

/** The example of an ordered knuckle opened at Build, jig sheet and as-built check unfolded. */
async function atBuild(bench: Workbench): Promise<Workbench> {
  const { page } = bench;
  // By its name it is told from the one before.
  const name = `Tamarack Street half-ton, opening ${++openings}`;
  const buffer = Buffer.from(JSON.stringify({ ...JSON.parse(await readFile(FILE, "utf8")), name }));
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({ name: "ordered-knuckle.json", mimeType: "application/json", buffer });
  await page.locator(".heading-setup").filter({ hasText: name }).waitFor();
  for (const name of ["jig", "asBuilt"]) {
    const fold = page.locator(`[data-fold="${name}"]`);
    if ((await fold.getAttribute("open")) === null) await fold.locator("> summary").click();
  }
  // What stands under the heading follows it.
  await expect.poll(() => read(page.locator(".knuckle-numbers")), SOON).not.toContain("variant");
  return bench;
}

const panel = (page: Page) => page.getByRole("region", { name: "As built", exact: true });
const field = (page: Page, name: string) => panel(page).getByRole("textbox", { name, exact: true });
const told = (page: Page) => read(panel(page).locator(".as-built-told"));
const onTruck = (page: Page) => panel(page).getByRole("region", { name: "On the truck" });

describe("knuckles as built", () => {
  it("are told from readings typed on the page, undone, kept over a reload, and made a variant", async () => {
    const { page, problems } = await atBuild(await desk());
    await expect.poll(() => told(page), SOON).toContain("The left knuckle FAILS 2 of 13 checks");
    await onTruck(page).locator(".truck-table").first().waitFor(SOON);
    expect(await read(onTruck(page))).toMatch(
      /As built: The fender lip comes within 1\/8 in of the left tire/,
    );
    // Without targets there is but one way it can stand, and it says why.
    expect(await onTruck(page).getByRole("button", { name: "aligned", exact: true }).isDisabled()).toBe(true);

    const behind = field(page, "Tape behind, left knuckle");
    const angle = field(page, "Angle finder on the face, left knuckle");
    await behind.fill("5 9/16");
    await behind.press("Enter");
    expect(await angle.evaluate((input) => input === document.activeElement)).toBe(true);
    await angle.fill("8.6");
    await expect.poll(() => told(page), SOON).toContain("The left knuckle passes: all 13 checks");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => told(page), SOON).toContain("FAILS 1 of 13 checks: angle finder");
    await page.getByRole("button", { name: "Redo" }).click();
    await expect.poll(() => told(page), SOON).toContain("The left knuckle passes");

    // What no field can hold is kept as typed, with what is wrong.
    const span = field(page, "Ball joint span, right knuckle");
    await span.fill("10 5/8 im");
    await expect.poll(() => read(panel(page).locator(".reading-fault")), SOON).toContain("in");
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
    const { page } = await atBuild(await desk());
    await page.evaluate(() => {
      window.print = () => {};
    });
    for (const format of ["Letter", "A4"]) {
      await page.getByRole("button", { name: "Print the jig sheet" }).click();
      const { pages, text } = readPdf(await page.pdf({ format }));
      expect(pages, format).toBe(2);
      for (const words of [
        "Jig sheet: drop knuckle as ordered",
        "Order TS-014, Tamarack Street short bed, 1 pair",
        "Right knuckle, seen from the front",
        "Dashed: clamped 1/4 in too high",
      ])
        expect(text, format).toContain(words.replace(/\s/g, ""));
      expect(text, format).toContain("55/8in");
      for (const control of ["Print the jig", "Drawn", "Asbuilt", "Undo"])
        expect(text, format).not.toContain(control.replace(/\s/g, ""));
    }
  }, 60_000);

  it.each([
    ["desk", desk, "light"],
    ["phone", phone, "dark"],
  ] as const)(
    "read well and can be told apart on a %s",
    async (name, open, colorScheme) => {
      const { page, problems } = await atBuild(await open());
      await page.emulateMedia({ colorScheme });
      await onTruck(page).waitFor(SOON);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      expect(await faults(page, "[data-fold='jig']", "[data-fold='asBuilt']")).toEqual([]);
      await panel(page).scrollIntoViewIfNeeded();
      await shot(page, `as-built-${name}`);
      expect(problems()).toEqual([]);
    },
    120_000,
  );
});
