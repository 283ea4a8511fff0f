import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { goTo } from "./harness/stations.ts";
import { openWorkbench, shot } from "./harness/workbench.ts";

const SETUP = readFileSync(new URL("../../shared/ordered-knuckle.json", import.meta.url));

/** Loads are worked out by a worker that other answers wait for too. */
const SOON = { timeout: 40_000 };

/** The order at Build, of the example truck with a knuckle on order. */
async function openOrder(viewport: { width: number; height: number }) {
  const bench = await openWorkbench({ isBare: true, viewport, path: "#build" });
  const { page } = bench;
  await page
    .locator('input[aria-label="Setup file"]')
    .setInputFiles({ name: "ordered-knuckle.json", mimeType: "application/json", buffer: SETUP });
  await page.locator("[data-fold=order] > summary", { hasText: "TS-014" }).click();
  await page.locator(".order-sheet").waitFor();
  return bench;
}

async function put(page: Page, field: string, text: string): Promise<void> {
  const input = page.locator(`.order [data-field="${field}"] input`).first();
  await input.fill(text);
  await input.press("Enter");
}

/** What the sheet says of a number; its lengths keep on one line. */
const onSheet = async (page: Page, label: string) => {
  const cell = page.locator(".order-sheet tr", { hasText: label }).locator("td").first();
  return (await cell.textContent())!.replaceAll("\u00a0", " ");
};

const numberOf = (page: Page, label: string) =>
  page.locator(".knuckle-numbers tr", { hasText: label }).locator("td").first();

describe("the order at Build", () => {
  it("is put into the truck once its changes are read, old and new, and taken back in one step", async () => {
    const { page, problems } = await openOrder({ width: 1440, height: 900 });
    await put(page, "order.hubFace", "5 3/4");
    await put(page, "order.drop", "3");
    await expect.poll(() => onSheet(page, "Pin height")).toBe("5 7/8 in");
    // The truck is what it was.
    expect(await numberOf(page, "Hub-face distance").textContent()).toBe("5 1/2 in");
    await page.getByRole("button", { name: "Put the order into the truck…" }).click();
    const rows = await page.locator(".order-changes tbody tr").allInnerTexts();
    expect(rows.map((row) => row.replace(/\s+/g, " "))).toEqual([
      "Pin height 5 3/8 in → 5 7/8 in",
      "Hub-face distance 5 1/2 in → 5 3/4 in",
    ]);
    await page.getByRole("button", { name: "Put it in" }).click();
    await expect.poll(() => numberOf(page, "Hub-face distance").textContent()).toBe("5 3/4 in");
    expect(await page.getByRole("button", { name: "Put the order into the truck…" }).count()).toBe(0);
    expect(await page.locator(".order-remark").first().textContent()).toContain("say what the order says");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => numberOf(page, "Hub-face distance").textContent()).toBe("5 1/2 in");
    expect(await numberOf(page, "Pin height").textContent()).toBe("5 3/8 in");
    // The order itself is as typed.
    expect(await page.locator('.order [data-field="order.hubFace"] input').inputValue()).toBe("5 3/4");
    await page.emulateMedia({ media: "print" });
    await page.evaluate(() => {
      document.documentElement.dataset.print = "order";
    });
    expect(await page.locator(".order-sheet").isVisible()).toBe(true);
    expect(await page.locator(".knuckle-numbers").isVisible()).toBe(false);
    expect(await page.locator(".verdict").isVisible()).toBe(false);
    expect(problems()).toEqual([]);
  });

  it("says beside its field what does not go together, on a phone too, and takes a part from the catalog", async () => {
    const { page, problems } = await openOrder({ width: 390, height: 844 });
    await page.locator(".order .group > summary", { hasText: "Ball joints" }).click();
    await put(page, "order.upperBallJoint.seat", "2 in/ft");
    await page.locator(".order-misfits").waitFor();
    expect(await page.locator(".order-misfits li").allInnerTexts()).toEqual([
      expect.stringMatching(/^Upper ball joint, .*2 in\/ft \(9.527° included\): differs from the stud/),
    ]);
    expect(await page.locator(".order .group .fault").count()).toBe(1);
    await page.locator('.order [data-field="order.upperBallJoint.item"] select').selectOption("Plover 44");
    await page.locator(".order-misfits").waitFor({ state: "detached" });
    await expect.poll(() => onSheet(page, "Stud taper")).toContain("2 in/ft");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await shot(page, "order-phone");
    // A part that cannot be fetched says so in its place, and is asked for again by a press.
    let kept = 0;
    await page.route(/LoadsBody/, (route) => {
      kept++;
      return route.abort();
    });
    const loads = page.locator("[data-fold=loads]");
    await loads.locator("summary").first().click();
    await loads.getByRole("alert").filter({ hasText: "could not be loaded" }).waitFor();
    await page.unroute(/LoadsBody/);
    await loads.getByRole("button", { name: "Try again" }).click();
    await loads.getByLabel("Load case").or(loads.getByText("No loads yet")).first().waitFor(SOON);
    await loads.locator("summary").first().click();
    await goTo(page, "Measure");
    await goTo(page, "Build");
    // Folds and the order are kept.
    await page.locator(".order-sheet").waitFor();
    // Of what was kept from it alone: the console tells each once, without its name.
    const others = problems().filter((one) => !one.includes("LoadsBody"));
    expect(kept).toBeGreaterThan(0);
    expect(others).toEqual(Array(kept).fill("console: Failed to load resource: net::ERR_FAILED"));
  });
});
