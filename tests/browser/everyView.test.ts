/**
 * Every view at every width: nothing is cut off, and an accessibility checker has nothing to say. On every
 * change the stations are looked at on one desk, in `npm run test:long` all else.
 */
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { ofThisRun } from "../runs.ts";
import { faults } from "./harness/faults.ts";
import { FOLDS, fold, unfold } from "./harness/folds.ts";
import { picture } from "./harness/picture.ts";
import { stageDrawn, verdict } from "./harness/reading.ts";
import { goTo, isAt, STATIONS } from "./harness/stations.ts";
import { openWorkbench, shot } from "./harness/workbench.ts";

type Scheme = "light" | "dark";

const HEIGHTS = { 390: 844, 768: 1024, 1024: 768, 1440: 900, 1920: 1080 } as const;
type Width = keyof typeof HEIGHTS;

/** The one looked at on every change first; each width at least once, each scheme at three. */
const VIEWS: readonly (readonly [Width, Scheme])[] = [
  [1440, "dark"],
  [390, "light"],
  [390, "dark"],
  [1440, "light"],
  [768, "light"],
  [1024, "dark"],
  [1920, "light"],
];
const SLOW = 240_000;

const sized = (width: Width) => {
  const isTouch = width < 900;
  return { viewport: { width, height: HEIGHTS[width] }, hasTouch: isTouch, isMobile: isTouch };
};

/** How far the page goes over its window's side, px. */
const over = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

describe("every view", () => {
  // With the picture in one scheme: it is drawn by a software renderer, and looks the same to everything asked here.
  it.each(ofThisRun(VIEWS, 1))(
    "fits at each station, and a checker has nothing to say: %i wide, %s",
    async (width, colorScheme) => {
      const { page, problems } = await openWorkbench({
        ...sized(width),
        ...{ colorScheme, isBare: colorScheme === "dark" },
      });
      await verdict(page);
      for (const station of STATIONS) {
        await goTo(page, station);
        await isAt(page, station);
        if (station === "Show") await counterKnown(page);
        const frame = page.locator(".stage-frame");
        if (colorScheme === "light" && (await frame.isVisible())) {
          await stageDrawn(page);
          // The same picture for all: it takes the size that it has here.
          const off = async () => {
            const [inner, outer] = [await page.locator("canvas").boundingBox(), await frame.boundingBox()];
            return Math.abs(inner!.width - outer!.width) + Math.abs(inner!.height - outer!.height);
          };
          await expect.poll(off, { timeout: 30_000 }).toBeLessThan(4);
        }
        await shot(page, `station-${station.toLowerCase()}-${width}-${colorScheme}`);
        expect(await over(page), station).toBeLessThanOrEqual(0);
        expect(await faults(page), station).toEqual([]);
      }
      expect(problems()).toEqual([]);
    },
    SLOW,
  );

  it.each(ofThisRun(["light", "dark"] as const, 0))(
    "has no fault with the worst pose shown, all fields and the fan open: %s",
    async (colorScheme) => {
      const { page, problems } = await openWorkbench({ ...sized(1440), colorScheme });
      await verdict(page);
      await picture(page);
      await page.getByRole("button", { name: "Go there" }).click();
      await picture(page);
      await shot(page, `workbench-desk-worst-${colorScheme}`);
      expect(await faults(page)).toEqual([]);
      await goTo(page, "Measure");
      for (const group of await page.locator(".group").all()) {
        if ((await group.getAttribute("open")) === null) await group.locator("> summary").click();
      }
      expect(await faults(page)).toEqual([]);
      await goTo(page, "Choose");
      await page.locator(".fan > summary").click();
      await page.getByRole("region", { name: "Table of the fan" }).waitFor();
      expect(await faults(page)).toEqual([]);
      expect(problems()).toEqual([]);
    },
    SLOW,
  );

  it.each(ofThisRun(VIEWS.slice(0, 4), 0))(
    "has no fault in what is folded, all open, nothing scrolls sideways: %i wide, %s",
    async (width, colorScheme) => {
      const { page, problems } = await openWorkbench({ ...sized(width), colorScheme, isBare: true });
      await page
        .locator('input[type="file"]')
        .first()
        .setInputFiles(join(import.meta.dirname, "..", "..", "shared", "half-ton-limits.json"));
      await page.locator(".heading-setup").filter({ hasText: "aligned and on bags" }).waitFor();
      for (const title of FOLDS) await unfold(page, title);
      await fold(page, FOLDS[3]).getByText("Wall to wall").waitFor();
      await fold(page, FOLDS[0]).locator(".limit-row:enabled").first().waitFor();
      expect(await faults(page, ".folds")).toEqual([]);
      // What a word means is no part of a heading, nor inside a paragraph: neither may hold what opens.
      expect(await page.locator(".meaning").count()).toBeGreaterThan(0);
      expect(await page.locator(":is(p, h2, h3) .meaning").count()).toBe(0);
      expect(await over(page)).toBeLessThanOrEqual(0);
      await fold(page, FOLDS[2]).scrollIntoViewIfNeeded();
      await shot(page, `front-end-folds-${width}-${colorScheme}`);
      expect(problems()).toEqual([]);
    },
    SLOW,
  );

  it.each(ofThisRun(VIEWS.slice(0, 2), 0))(
    "has no fault at Build, every step of an order open, nothing scrolls sideways: %i wide, %s",
    async (width, colorScheme) => {
      const { page, problems } = await openWorkbench({ ...sized(width), colorScheme, isBare: true });
      await page
        .locator('input[type="file"]')
        .first()
        .setInputFiles(join(import.meta.dirname, "..", "..", "shared", "ordered-knuckle.json"));
      await page.locator(".heading-setup").filter({ hasText: "on order" }).waitFor();
      await goTo(page, "Build");
      for (const step of ["order", "window", "loads", "drawings", "jig", "asBuilt"])
        await page.locator(`[data-fold="${step}"] > summary`).click();
      for (const told of [".window-bar", ".share-strip", "[data-fold='asBuilt'] table"])
        await page.locator(told).first().waitFor({ timeout: 60_000 });
      await shot(page, `build-open-${width}-${colorScheme}`);
      expect(await faults(page, ".build-rooms")).toEqual([]);
      expect(await over(page)).toBeLessThanOrEqual(0);
      expect(problems()).toEqual([]);
    },
    SLOW,
  );
});

/** All that the counter tells is known. */
async function counterKnown(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const text = document.querySelector(".counter-sentences")?.textContent ?? "…";
    return !text.includes("…");
  });
}
