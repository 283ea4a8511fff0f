import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { goTo, openTrucks } from "./harness/stations.ts";
import { sharedWorkbench, shot } from "./harness/workbench.ts";

/** The page works in bursts on a busy machine. */
const SOON = { timeout: 30_000 };

const shared = sharedWorkbench({ isBare: true });

const focused = (page: Page) =>
  page.evaluate(() => document.activeElement?.closest("[data-field]")?.getAttribute("data-field"));
const left = async (page: Page) =>
  Number(/\d+/.exec((await page.locator(".example-fields summary").textContent()) ?? ""));

describe("an example's numbers on the page", () => {
  it("are marked at their fields, counted at the verdict, listed with a way to each, and become mine", async () => {
    const { page, problems } = await shared();
    await page.getByText(/Invented example, “.*”/).waitFor(SOON);
    const all = await left(page);
    await goTo(page, "Measure");
    const hubFace = page.locator('[data-field="knuckle.hubFace"]');
    expect(await hubFace.getByText("from the example").count()).toBe(1);
    // The window of the field being changed leaves it and the next one free, moves nothing, and ends with it.
    const window = hubFace.locator(".field-window").locator(".window-view, .window-wait");
    const next = page.locator('[data-field="knuckle.pinHeight"]');
    const place = async () => {
      const [own, below] = [(await hubFace.boundingBox())!, (await next.boundingBox())!];
      return [own.height, below.y - own.y];
    };
    const before = await place();
    await hubFace.locator("input").fill("6 1/2");
    await expect.poll(() => left(page), SOON).toBe(all - 1);
    expect(await hubFace.getByText("from the example").count()).toBe(0);
    // Or whatever is pressed next would move away under the pointer.
    await window.waitFor(SOON);
    expect(await hubFace.getByText("your own").count()).toBe(1);
    expect(await place()).toEqual(before);
    // Beside the boxes of this form, past the next one's, or over its own.
    const own = (await hubFace.locator("input").boundingBox())!;
    const below = (await next.locator("input").boundingBox())!;
    const bar = (await hubFace.locator(".field-window").boundingBox())!;
    const isPast = bar.y > below.y + below.height - 1;
    expect(isPast || bar.x > below.x + below.width - 1 || bar.y + bar.height < own.y + 1).toBe(true);
    await page.getByRole("button", { name: "Close the range" }).click();
    expect(await window.count()).toBe(0);
    await hubFace.locator("input").press("ArrowUp");
    await window.waitFor(SOON);
    await next.locator("input").focus();
    expect(await window.count()).toBe(0);
    await page.getByText(`${all - 1} numbers are still the example's`, { exact: false }).waitFor();
    // From wherever it is read, the way leads to the field.
    await goTo(page, "Clear");
    await page.locator(".example-fields summary").click();
    await page.getByRole("button", { name: "Lower ball joint", exact: true }).click();
    await expect.poll(() => focused(page), SOON).toBe("truck.lowerArm.ballJoint.0");
    await page.getByRole("button", { name: "Ball joint span is right, I measured it" }).click();
    await page.getByRole("button", { name: "Tire: all of it is right, I measured it" }).click();
    await expect.poll(() => left(page), SOON).toBeLessThan(all - 2);
    const kept = await left(page);
    await page.reload();
    await expect.poll(() => left(page), SOON).toBe(kept);
    expect(problems()).toEqual([]);
  });
});

describe("a new truck on the page", () => {
  it.each([
    { viewport: { width: 1440, height: 900 }, colorScheme: "light" },
    { viewport: { width: 390, height: 844 }, colorScheme: "dark" },
  ] as const)(
    "is empty and calm, says what it needs, and keeps what is typed ($colorScheme)",
    async (look) => {
      const { page, problems } = await shared();
      await page.setViewportSize(look.viewport);
      await page.emulateMedia({ colorScheme: look.colorScheme });
      await openTrucks(page);
      await page.getByRole("button", { name: /New truck.*inches/ }).click();
      const needs = page.getByRole("region", { name: "No answer yet, and none is guessed" });
      await needs.getByText("It needs 19 things", { exact: false }).waitFor(SOON);
      expect(await page.locator(".verdict, .fault, .issues, .issue-bar, .stage-panel").count()).toBe(0);
      await needs.getByRole("button", { name: "Hub-face distance" }).click();
      await expect.poll(() => focused(page), SOON).toBe("knuckle.hubFace");
      await page.keyboard.type("6,25");
      await needs.getByText("It needs 18 things", { exact: false }).waitFor(SOON);
      await shot(page, `new-truck-${look.colorScheme}`);
      await page.reload();
      await needs.getByText("It needs 18 things", { exact: false }).waitFor(SOON);
      expect(await page.locator('[data-field="knuckle.hubFace"] input').inputValue()).toMatch(
        /^6(?: 1\/4|\.25)$/,
      );
      expect(problems()).toEqual([]);
    },
  );
});
