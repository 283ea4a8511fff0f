/** Nothing on the page moves while something of it is dragged: boxes of all that is there, read in every frame of a drag. */
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { ofThisRun } from "../runs.ts";
import { atRest, comeToRest } from "./harness/atRest.ts";
import { FOLDS, unfold } from "./harness/folds.ts";
import { mapDrawn, stageDrawn, verdict } from "./harness/reading.ts";
import { goTo } from "./harness/stations.ts";
import { sharedWorkbench } from "./harness/workbench.ts";

const desk = sharedWorkbench({ viewport: { width: 1440, height: 900 }, colorScheme: "light" });

declare global {
  /** In the page: ends the watch and tells what moved. */
  var movedSince: (() => readonly string[]) | undefined;
}

/** Pixels that a box may be off: a browser rounds. */
const SAME = 0.6;

/**
 * Follows every box but those of running text, from now on, frame by frame. A drawing counts as one box; of the labels on the
 * picture the middles count: what they say may get longer. What the last change did is to stay, too.
 */
async function watch(page: Page): Promise<void> {
  await page.evaluate((same) => {
    const all = [...document.querySelectorAll("body *")].filter((one) => {
      // What a plot reads runs on from line to line; its box is looked at.
      if (one.matches(".plot-values *")) return false;
      // It goes when its time is over, whatever is done meanwhile, and lies over all else.
      if (one.matches(".undone-note")) return false;
      if (one instanceof SVGElement) return one.tagName === "svg" || one.matches(".gap-mark .plate");
      return getComputedStyle(one).display !== "inline" && !one.matches(".stage-to-worst, .scale-note");
    });
    const seen = (one: Element) => one.checkVisibility({ visibilityProperty: true });
    const isWords = (one: Element) => one.matches("span") && one.childElementCount === 0;
    const places = (one: Element, asWords: boolean) => {
      const { x, y, width, height } = one.getBoundingClientRect();
      if (one.matches(".plate")) return [x + width / 2, y + height / 2];
      // Words alone are as wide as what they say.
      return asWords ? [y, height] : [x, y, width, height];
    };
    const first = new Map(all.filter(seen).map((one) => [one, places(one, isWords(one))]));
    const moved = new Map<Element, string>();
    // What else goes is written over in its place.
    const staying = new Set(document.querySelectorAll(".last-change > *"));
    // What stays as it is is not even written anew: it would be laid out and painted anew, in every frame.
    const written = new MutationObserver((records) => {
      for (const { target, attributeName } of records)
        moved.set(target as Element, `.axes-sketch: ${attributeName} written anew`);
    });
    for (const axes of document.querySelectorAll(".axes-sketch"))
      written.observe(axes, { subtree: true, attributes: true });
    let frame = requestAnimationFrame(function look() {
      for (const [one, before] of first) {
        if (moved.has(one)) continue;
        if (!one.isConnected || !seen(one)) {
          if (staying.has(one)) moved.set(one, `gone: "${one.textContent}"`);
          continue;
        }
        const now = places(one, before.length === 2 && !one.matches(".plate"));
        if (now.every((at, i) => Math.abs(at - before[i]!) <= same)) continue;
        const name = `${one.tagName.toLowerCase()}.${one.getAttribute("class") ?? ""}`;
        moved.set(
          one,
          `${name} "${one.textContent?.slice(0, 40)}": ${before.map(Math.round)} → ${now.map(Math.round)}`,
        );
      }
      frame = requestAnimationFrame(look);
    });
    globalThis.movedSince = () => {
      cancelAnimationFrame(frame);
      written.disconnect();
      return [...moved.values()];
    };
  }, SAME);
}

/** Drags from one place to others of the window, so many moves to each. @returns what else moved meanwhile */
async function dragged(
  page: Page,
  from: readonly [number, number],
  over: readonly (readonly [number, number])[],
): Promise<readonly string[]> {
  await page.mouse.move(...from);
  await watch(page);
  await page.mouse.down();
  for (const to of over) await page.mouse.move(...to, { steps: 4 });
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  const moved = await page.evaluate(() => globalThis.movedSince!());
  await page.mouse.up();
  return moved;
}

/** Grips the middle of something by the pointer and drags it about inside its own box. */
async function about(
  page: Page,
  what: Locator,
  shares: readonly (readonly [number, number])[],
): Promise<readonly string[]> {
  await what.scrollIntoViewIfNeeded();
  const box = (await what.boundingBox())!;
  const [from, ...over] = shares.map(([x, y]): [number, number] => [
    box.x + x * box.width,
    box.y + y * box.height,
  ]);
  return dragged(page, from!, over);
}

/** Of a slide: to both its very ends and back. */
const ALONG = [
  [0.5, 0.4],
  [0.9, 0.4],
  [1.02, 0.4],
  [0.9, 0.4],
  [-0.02, 0.4],
  [0.6, 0.4],
] as const;

const SIZES = [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const;

describe("nothing else moves while something is dragged", () => {
  it.each(ofThisRun(["height, steering, the map's dot, a section"], 1))("%s", async () => {
    const { page, problems } = await desk();
    await verdict(page);
    await stageDrawn(page);
    await mapDrawn(page);
    await atRest(page);
    await comeToRest(page);
    const slide = (name: string) => page.getByRole("slider", { name, exact: true });
    expect(await about(page, slide("Travel"), ALONG), "height").toEqual([]);
    expect(await about(page, slide("Steering"), ALONG), "steering").toEqual([]);
    const map = page.locator(".map-board > svg");
    const over = [
      [0.5, 0.5],
      [0.99, 0.2],
      [0.05, 0.8],
      [0.5, 0.5],
    ] as const;
    expect(await about(page, map, over), "map").toEqual([]);
    await atRest(page);
    const show = page.getByRole("button", { name: "Show", exact: true });
    await show.click();
    await page.locator(".show-list").getByLabel("Section").selectOption("x");
    await page.keyboard.press("Escape");
    await page.locator(".section-line").first().waitFor({ state: "attached" });
    expect(await about(page, slide("Section"), ALONG), "section").toEqual([]);
    await show.click();
    await page.locator(".show-list").getByLabel("Section").selectOption("");
    await page.keyboard.press("Escape");
    expect(problems()).toEqual([]);
  });

  it.each(ofThisRun(["the wipe, a point"], 0))("%s", async () => {
    const { page, problems } = await desk();
    await verdict(page);
    await stageDrawn(page);
    await mapDrawn(page);
    const slide = (name: string) => page.getByRole("slider", { name, exact: true });
    const show = page.getByRole("button", { name: "Show", exact: true });
    const list = page.locator(".show-list");
    await show.click();
    await list.getByLabel("Ghost").selectOption({ label: "narrow hub face" });
    await list.getByLabel("Wipe between the two").check();
    await page.keyboard.press("Escape");
    await slide("Wipe").waitFor();
    await atRest(page);
    expect(await about(page, slide("Wipe"), ALONG), "wipe").toEqual([]);
    await show.click();
    await list.getByLabel("Ghost").selectOption({ label: "none" });
    await list.getByRole("checkbox", { name: "Points to move" }).check();
    await page.keyboard.press("Escape");
    await atRest(page);
    for (const [view, axis, name] of [
      ["Side", "x", "fender lip, point 6 of 11"],
      ["Front", "y", "lower arm, front pivot"],
    ] as const) {
      await page.getByRole("button", { name: view, exact: true }).click();
      const point = page.getByRole("button", { name: new RegExp(`^${name}: ${axis} `) });
      await point.waitFor();
      // It takes the frame's new size when no key has come for a moment.
      await page.waitForFunction(
        (heights) => new Set(heights.map((one) => document.querySelector(one)?.clientHeight)).size === 1,
        [".stage-frame", ".stage canvas"],
      );
      await comeToRest(page);
      const { x, y, width, height } = (await point.boundingBox())!;
      const from: [number, number] = [x + 0.5 * width, y + 0.5 * height];
      const over = (
        [
          [0, -40],
          [30, 20],
          [-25, 10],
          [0, 0],
        ] as const
      ).map(([right, down]): [number, number] => [from[0] + right, from[1] + down]);
      expect(await dragged(page, from, over), name).toEqual([]);
    }
    await page.getByRole("button", { name: "Done", exact: true }).click();
    const undo = page.getByRole("button", { name: "Undo", exact: true });
    while (await undo.isEnabled()) await undo.click();
    await expect.poll(() => page.locator(".undone-note").textContent()).toBe("");
    const told = page.locator(".last-change p");
    await expect.poll(() => told.textContent()).toMatch(/^Undone: /);
    await comeToRest(page);
    expect(await about(page, slide("Travel"), ALONG), "what was undone is told").toEqual([]);
    await expect.poll(() => told.count(), { message: "another pose, let go" }).toBe(0);
    expect(problems()).toEqual([]);
  });

  it.each(ofThisRun(SIZES, 0))(
    "height and steering with all folds open, at %i by %i",
    async (width, height) => {
      const { page, problems } = await desk();
      await page.setViewportSize({ width, height });
      await goTo(page, "Clear");
      await verdict(page);
      await stageDrawn(page);
      await mapDrawn(page);
      for (const title of FOLDS) await unfold(page, title);
      await page.getByText(/^Bump steer over travel/).waitFor();
      for (const name of ["Travel", "Steering"]) {
        const slide = page.getByRole("slider", { name, exact: true });
        await slide.scrollIntoViewIfNeeded();
        await comeToRest(page);
        expect(await about(page, slide, ALONG), name).toEqual([]);
      }
      expect(problems()).toEqual([]);
    },
  );

  it.each(ofThisRun(SIZES.slice(0, 2), 0))(
    "a field dragged by its name, at %i by %i",
    async (width, height) => {
      const { page, problems } = await desk();
      await page.setViewportSize({ width, height });
      await goTo(page, "Measure");
      await verdict(page);
      await stageDrawn(page);
      const curves = page.locator(".curve-dock").getByRole("button", { name: "Curves" }).first();
      if ((await curves.getAttribute("aria-expanded")) === "false") await curves.click();
      await page.locator(".curve-dock .plot-curve").first().waitFor({ state: "attached" });
      await expect
        .poll(() => page.locator(".undone-note").allTextContents())
        .not.toContainEqual(expect.stringMatching(/./));
      await comeToRest(page);
      const name = page.locator(".setup").getByText("Pin angle", { exact: true });
      const along = [
        [0.5, 0.5],
        [1.5, 0.5],
        [0.9, 0.5],
      ] as const;
      expect(await about(page, name, along)).toEqual([]);
      await page.getByRole("region", { name: "Range of this field" }).waitFor();
      await page.getByRole("button", { name: "Undo", exact: true }).click();
      await curves.click();
      expect(problems()).toEqual([]);
    },
  );

  it.each(ofThisRun(SIZES, 0))("the hub face tried at the counter, at %i by %i", async (width, height) => {
    const { page, problems } = await desk();
    await page.setViewportSize({ width, height });
    await goTo(page, "Show");
    const words = page.locator(".counter-sentences");
    await words.waitFor();
    await expect.poll(() => words.textContent(), { timeout: 30_000 }).not.toContain("…");
    await comeToRest(page);
    const slide = page.getByRole("slider", { name: /^What if B had another hub face/ });
    expect(await about(page, slide, ALONG)).toEqual([]);
    await page.getByRole("button", { name: /^Back to / }).click();
    expect(problems()).toEqual([]);
  });
});
