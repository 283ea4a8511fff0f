import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readPdf } from "./harness/pdfText.ts";
import { goTo } from "./harness/stations.ts";
import { sharedWorkbench } from "./harness/workbench.ts";

const TRUCK = "Half-ton on a tubular knuckle";
const SETUP = readFileSync("shared/tubular-knuckle.json");

const shared = sharedWorkbench({ isBare: true });

/** Sheets are drawn anew by a worker that other answers wait for too. */
const SOON = { timeout: 40_000 };

async function withDrawings() {
  const bench = await shared();
  const { page } = bench;
  const isOpen = await page.locator(".heading-setup").filter({ hasText: TRUCK }).count();
  if (isOpen === 0)
    await page
      .locator("input[type=file]")
      .first()
      .setInputFiles({ name: "tubular-knuckle.json", mimeType: "application/json", buffer: SETUP });
  await page.getByText(TRUCK).first().waitFor();
  await goTo(page, "Build");
  const fold = page.locator("[data-fold='drawings']");
  if ((await fold.getAttribute("open")) === null) await fold.locator("summary").click();
  await fold.getByRole("img").waitFor();
  return { ...bench, fold };
}

describe("drawings at Build", () => {
  it("shows the sheets one by one, on the paper and in the projection chosen", async () => {
    const { fold, problems } = await withDrawings();
    const shape = () =>
      fold.getByRole("img").evaluate((img: HTMLImageElement) => img.naturalWidth / img.naturalHeight);
    expect(await shape()).toBeCloseTo(215.9 / 279.4, 2);
    // What is made is told to rub before anybody cuts.
    await fold
      .getByText(/This knuckle rubs on this truck \(see Clear\): the tire rubs the fender lip/)
      .waitFor();
    await fold.getByText(/^Sheet 1 of \d+: Knuckle$/).waitFor();
    await fold.getByRole("button", { name: "Next sheet" }).click();
    await fold.getByText(/^Sheet 2 of \d+: Cut list/).waitFor();
    expect(await shape()).toBeCloseTo(279.4 / 215.9, 2);
    await fold.getByRole("button", { name: "Sheet before" }).click();
    const source = () => fold.getByRole("img").getAttribute("src");
    const third = await source();
    await fold.getByLabel("Views").selectOption("First-angle projection");
    await expect.poll(source, SOON).not.toBe(third);
    expect(decodeURIComponent((await source())!)).toContain("First-angle projection");
    await fold.getByLabel("Paper").selectOption({ label: "A3, 297 × 420 mm" });
    await expect.poll(async () => decodeURIComponent((await source())!), SOON).toContain("on A3 paper");
    await fold.getByLabel("Paper").selectOption({ label: "Letter, 8 1/2 × 11 in" });
    await fold.getByLabel("Views").selectOption("Third-angle projection");
    await expect.poll(source, SOON).toBe(third);
    // A kerf that cannot be is told, and the last one holds.
    await fold.getByLabel("Kerf").fill("2");
    await fold.getByText(/must be from 0 to 10 mm/).waitFor();
    await fold.getByLabel("Kerf").fill("0.06");
    await expect.poll(() => fold.getByText(/must be from 0/).count()).toBe(0);
    expect(problems()).toEqual([]);
  });

  it("saves a plate as the DXF that the command line writes", async () => {
    const { page, fold } = await withDrawings();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      fold
        .getByRole("button", { name: "Save half-ton-on-a-tubular-knuckle-plate-caliper-bracket.dxf" })
        .click(),
    ]);
    expect(download.suggestedFilename()).toBe("half-ton-on-a-tubular-knuckle-plate-caliper-bracket.dxf");
    const pieces: Buffer[] = [];
    for await (const piece of await download.createReadStream()) pieces.push(piece as Buffer);
    const text = Buffer.concat(pieces).toString("latin1");
    expect(text).toMatch(/^ *999\r\nWellsweep drawing, 1:1/);
    expect(text).toContain("CIRCLE");
  });

  it("prints every sheet on a page of its own size, and nothing that is a control", async () => {
    const { page, fold } = await withDrawings();
    const [, count] = /of (\d+):/.exec((await fold.locator("figcaption").textContent())!)!;
    await page.evaluate(() => {
      window.print = () => {
        document.documentElement.dataset.asked = "yes";
      };
    });
    await fold.getByRole("button", { name: /^Print all/ }).click();
    await page.waitForFunction(() => document.documentElement.dataset.asked === "yes");
    // On its page each sheet takes exactly its own millimeters: a unit of the drawing is a millimeter of paper.
    await page.emulateMedia({ media: "print" });
    const widths = await page
      .locator(".printed-sheets img")
      .evaluateAll((images) => images.map((image) => (image.getBoundingClientRect().width * 25.4) / 96));
    expect(widths.length).toBe(Number(count));
    for (const width of widths)
      expect(Math.min(Math.abs(width - 215.9), Math.abs(width - 279.4))).toBeLessThan(0.05);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const { pages, text } = readPdf(pdf);
    expect(pages).toBe(Number(count));
    const boxes = [...pdf.toString("latin1").matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
    const sizes = new Set(
      boxes.map(([, width, height]) => `${Math.round(Number(width))} ${Math.round(Number(height))}`),
    );
    expect(sizes).toEqual(new Set(["612 792", "792 612"]));
    expect(text).toContain("4in:measurethisbar");
    expect(text).toContain("reviewedbyalicensedengineer");
    for (const control of ["Save", "Printall", "Measuregetthetruckin"]) expect(text).not.toContain(control);
    // What was printed is taken off the page again.
    await expect.poll(() => page.locator(".printed-sheets").count()).toBe(0);
  });

  it("start from a usual knuckle where nobody said what it is made of, told as the example's, in one step", async () => {
    const { page, problems } = await shared();
    const { build: _, variants: __, ...unbuilt } = JSON.parse(SETUP.toString());
    const buffer = Buffer.from(JSON.stringify({ ...unbuilt, name: "Unbuilt truck" }));
    await page.emulateMedia({ media: "screen" });
    await page
      .locator("input[type=file]")
      .first()
      .setInputFiles({ name: "unbuilt.json", mimeType: "application/json", buffer });
    await page.getByText("Unbuilt truck").first().waitFor();
    await goTo(page, "Build");
    const fold = page.locator("[data-fold='drawings']");
    if ((await fold.getAttribute("open")) === null) await fold.locator("summary").click();
    await fold.getByText("There is nothing to draw yet").waitFor();
    await fold.getByRole("button", { name: "Start from a usual knuckle" }).click();
    await fold.getByText(/^⋯ \d+ numbers of this knuckle.s build are from the example/).waitFor();
    await fold.getByText(/^Sheet 1 of \d+: Knuckle$/).waitFor(SOON);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await fold.getByText("There is nothing to draw yet").waitFor();
    expect(problems()).toEqual([]);
  });
});
