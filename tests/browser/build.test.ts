import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { openWorkbench, shot } from "./harness/workbench.ts";

const SETUP = readFileSync(new URL("../../shared/tubular-knuckle.json", import.meta.url));

/** Unfolds a step of the job at Build. */
async function unfold(page: Page, name: string) {
  const fold = page.locator(`[data-fold='${name}']`);
  if ((await fold.getAttribute("open")) === null) await fold.locator("summary").first().click();
  return fold;
}

// One page for the picture, loads, weights and window of the knuckle: a page comes up slowly.
it("the knuckle at Build is dragged, cut open, loaded, weighed and told its window", async () => {
  const { page, problems } = await openWorkbench({ viewport: { width: 1440, height: 900 }, path: "#build" });
  await page
    .locator("input[type=file]")
    .first()
    .setInputFiles({ name: "tubular-knuckle.json", mimeType: "application/json", buffer: SETUP });
  await page.getByText("Half-ton on a tubular knuckle").first().waitFor();
  await page.locator(".axes-sketch").waitFor({ state: "attached" });

  // A dimension is dragged by keys and by hand, each one step to undo, and the part follows.
  const hubFace = page.locator(".knuckle-numbers tr", { hasText: "Hub-face distance" }).locator("td").first();
  await page.getByRole("button", { name: "Front", exact: true }).click();
  await page.getByRole("button", { name: "Drag", exact: true }).click();
  const mark = page.getByRole("button", { name: /^hub face: / });
  await mark.focus();
  await page.keyboard.press("ArrowRight");
  await expect.poll(() => hubFace.textContent()).toBe("6 3/8 in");
  const box = (await mark.boundingBox())!;
  await page.mouse.move(box.x + 0.5 * box.width, box.y + 0.5 * box.height);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.5 * box.width - 60, box.y + 0.5 * box.height, { steps: 4 });
  await page.mouse.up();
  const dragged = await hubFace.textContent();
  expect(Number.parseInt(dragged!, 10)).toBeLessThan(6);
  const undo = page.getByRole("button", { name: "Undo", exact: true });
  await undo.click();
  await expect.poll(() => hubFace.textContent()).toBe("6 3/8 in");
  await undo.click();
  await expect.poll(() => hubFace.textContent()).toBe("6 5/16 in");
  await page.getByRole("button", { name: "Done", exact: true }).click();
  await page.getByRole("button", { name: "Cut open", exact: true }).click();
  expect(await page.getByRole("button", { name: "Cut open" }).getAttribute("aria-pressed")).toBe("true");

  const loads = await unfold(page, "loads");
  await loads.getByText(/^What governs: the weld of “lower brace”/).waitFor({ timeout: 30_000 });
  await page.locator(".load-scale text", { hasText: "arrow this long = " }).waitFor();
  await loads.getByLabel("where it is worst").check();
  await loads.getByText(/which is not a bound/).waitFor({ timeout: 30_000 });
  expect(await loads.locator(".loads-cautions").textContent()).toMatch(/licensed\s+engineer/);
  expect(await loads.getByText(/\bsafe\b|strong enough|✓/).count()).toBe(0);

  const weights = await unfold(page, "weights");
  await weights.getByText("1.4 lb less than the current truck’s").waitFor();
  await expect.poll(() => weights.locator(".knuckle-picture path").count(), { timeout: 30_000 }).toBe(5);

  const window = await unfold(page, "window");
  await window
    .getByText(/^Hub-face distance/)
    .first()
    .waitFor({ timeout: 30_000 });
  expect(await window.locator(".window-tick").count()).toBe(4);

  expect(await faults(page, ".build-rooms", ".stage-panel")).toEqual([]);
  await shot(page, "build-knuckle");
  expect(problems()).toEqual([]);
}, 180_000);
