import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { sharedWorkbench, shot, type Workbench } from "./harness/workbench.ts";

const desk = sharedWorkbench({ viewport: { width: 1440, height: 900 }, colorScheme: "light" });
const phone = sharedWorkbench({
  ...{ viewport: { width: 390, height: 844 }, colorScheme: "light", hasTouch: true, isMobile: true },
});

/** The workbench with the points of its setup shown in a view. Each test leaves them where they were. */
async function withPoints(view: string, open = desk): Promise<Workbench> {
  const bench = await open();
  const { page } = bench;
  await page.locator(".axes-sketch").waitFor({ state: "attached" });
  await page.getByRole("button", { name: "Show", exact: true }).click();
  await page.getByRole("checkbox", { name: "Points to move" }).check();
  await page.keyboard.press("Escape");
  const button = page.getByRole("button", { name: view, exact: true });
  await button.click();
  await expect.poll(() => button.getAttribute("aria-pressed")).toBe("true");
  await page.locator(".stage-handle").first().waitFor();
  return bench;
}

const point = (page: Page, name: string) => page.getByRole("button", { name: new RegExp(`^${name}: `) });
const undo = (page: Page) => page.getByRole("button", { name: "Undo", exact: true });
/** Takes back all that a test did. */
async function undoAll(page: Page): Promise<void> {
  while (await undo(page).isEnabled()) await undo(page).click();
}
const at = async (handle: Locator) => (await handle.getAttribute("aria-label"))?.replace(/^.*?: /, "");

/** Drags the middle of a point's mark by pixels. */
async function drag(page: Page, handle: Locator, x: number, y: number, hold = false): Promise<void> {
  const box = await handle.boundingBox();
  if (!box) throw new Error("the point is not on the picture");
  const from = { x: box.x + 0.5 * box.width, y: box.y + 0.5 * box.height };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + x, from.y + y, { steps: 5 });
  if (!hold) await page.mouse.up();
}

describe("points of the setup in the picture", () => {
  it("are dragged in the side view to whole steps, one step to undo, and what lies across stays as typed", async () => {
    const { page, problems } = await withPoints("Side");
    const lip = point(page, "fender lip, point 6 of 11");
    await expect.poll(() => at(lip)).toBe("x 0 in, z 30 3/8 in");
    await drag(page, lip, 0, -30);
    const moved = await at(lip);
    // Straight up: x is as it was, and z is a whole sixteenth higher.
    expect(moved).toMatch(/^x 0 in, z 3[1-9]( \d+\/(2|4|8|16))? in$/);
    await shot(page, "handles-side");
    await page.getByRole("button", { name: "Top", exact: true }).click();
    await expect.poll(() => at(lip)).toBe("x 0 in, y 36 1/8 in");
    await page.getByRole("button", { name: "Side", exact: true }).click();
    await expect.poll(() => at(lip)).toBe(moved);
    await undo(page).click();
    await expect.poll(() => at(lip)).toBe("x 0 in, z 30 3/8 in");
    expect(await undo(page).isDisabled()).toBe(true);
    expect(problems()).toEqual([]);
  });

  it("go back where they were when Escape is pressed during a drag", async () => {
    const { page } = await withPoints("Side");
    const lip = point(page, "fender lip, point 4 of 11");
    const before = await at(lip);
    await drag(page, lip, 25, -25, true);
    expect(await at(lip)).not.toBe(before);
    await page.keyboard.press("Escape");
    await page.mouse.up();
    await expect.poll(() => at(lip)).toBe(before);
    expect(await undo(page).isDisabled()).toBe(true);
  });

  it("are moved by keys, a held key as one step, and gone through with Page Down; the truck stays unturned", async () => {
    const { page, problems } = await withPoints("Front");
    await page.getByRole("combobox", { name: "Point" }).selectOption({ label: "upper arm, front pivot" });
    const pivot = point(page, "upper arm, front pivot");
    // A point is told by the axes across the view, once the camera is there.
    await expect.poll(() => at(pivot), { timeout: 30_000 }).toBe("y 16 3/8 in, z 17 3/4 in");
    await pivot.focus();
    await page.keyboard.press("ArrowUp");
    await expect.poll(() => at(pivot)).toBe("y 16 3/8 in, z 17 13/16 in");
    // From the front the truck's left is on the right.
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => at(pivot)).toBe("y 16 7/16 in, z 17 13/16 in");
    // As a keyboard repeats a held key: down, down, down, up.
    for (let i = 0; i < 3; i++) await page.keyboard.down("ArrowDown");
    await page.keyboard.up("ArrowDown");
    await expect.poll(() => at(pivot)).toBe("y 16 7/16 in, z 17 5/8 in");
    await undo(page).click();
    await expect.poll(() => at(pivot)).toBe("y 16 7/16 in, z 17 13/16 in");
    await pivot.focus();
    await page.keyboard.press("PageDown");
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? "");
    expect(await focused()).toMatch(/^upper arm, rear pivot: /);
    await page.keyboard.press("End");
    expect(await focused()).toMatch(/^frame rail, outer upper corner: /);
    await undoAll(page);
    expect(problems()).toEqual([]);
  });

  it("make a box longer by its corner, never inside out", async () => {
    const { page, problems } = await withPoints("Front");
    const corner = point(page, "frame rail, outer upper corner");
    await expect.poll(() => at(corner)).toBe("y 15 1/4 in, z 22 in");
    // Far past its other side: it stops one step short of it.
    await drag(page, corner, -300, 0);
    await expect.poll(() => at(corner)).toBe("y 12 5/16 in, z 22 in");
    expect(await page.locator(".issues").count()).toBe(0);
    await undoAll(page);
    expect(problems()).toEqual([]);
  });

  it("are asked for in a view along an axis when the truck is turned, and none is in the way when done", async () => {
    const { page } = await withPoints("Side");
    await page.getByRole("button", { name: "Three-quarter", exact: true }).click();
    await page.getByRole("button", { name: "Points in the front view" }).click();
    await page.locator(".stage-handle").first().waitFor();
    await page.getByRole("button", { name: "Done", exact: true }).click();
    expect(await page.locator(".stage-handle").count()).toBe(0);
  });

  it.each(["light", "dark"] as const)("can be named, seen and reached: %s", async (colorScheme) => {
    const { page } = await withPoints("Side");
    await page.emulateMedia({ colorScheme });
    expect(await faults(page, ".stage-panel")).toEqual([]);
    expect(await page.locator('.stage-handle[tabindex="0"]').count()).toBe(1);
    await shot(page, `handles-${colorScheme}`);
  });

  it("can be taken by a thumb on a phone", async () => {
    const { page, problems } = await withPoints("Side", phone);
    const lip = point(page, "fender lip, point 6 of 11");
    const box = await lip.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(40);
    await drag(page, lip, 0, -20);
    expect(await at(lip)).not.toBe("x 0 in, z 30 3/8 in");
    await shot(page, "handles-phone");
    expect(problems()).toEqual([]);
  });
});
