import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { read, stageDrawn, verdict } from "./harness/reading.ts";
import { goTo, isAt, openTrucks, room, STATIONS, stationLink } from "./harness/stations.ts";
import { openWorkbench, sharedWorkbench, shot } from "./harness/workbench.ts";

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };
const SOON = { timeout: 30_000 };

const desk = sharedWorkbench({ isBare: true, viewport: DESK, path: "#clear" });
const phone = sharedWorkbench({ isBare: true, viewport: PHONE, hasTouch: true, isMobile: true });

/** The truck and its answer, as they stand over every station. */
async function truckAndAnswer(page: Page): Promise<readonly string[]> {
  return [await read(page.locator(".heading-setup span").first()), await verdict(page)];
}

const focusedField = (page: Page) =>
  page.evaluate(() => document.activeElement?.closest("[data-field]")?.getAttribute("data-field"));

describe("the five stations", () => {
  it("are reached by mouse and by keys, each with the same truck and the same answer", async () => {
    const { page, problems } = await desk();
    await isAt(page, "Clear");
    const there = await truckAndAnswer(page);
    expect(there[1]).toMatch(/^Rubs /);
    for (const station of STATIONS) {
      await goTo(page, station);
      await isAt(page, station);
      expect(await truckAndAnswer(page), station).toEqual(there);
    }
    for (const [i, station] of STATIONS.entries()) {
      await stationLink(page, "Measure").focus();
      for (let press = 0; press < i; press++) await page.keyboard.press("Tab");
      await page.keyboard.press("Enter");
      await isAt(page, station);
      // The keyboard goes on in the station, and a step back is on the links again.
      await page.keyboard.press("Tab");
      expect(await page.evaluate(() => document.activeElement?.closest("main") !== null)).toBe(true);
    }
    expect(problems()).toEqual([]);
  });

  it("are at the thumb on a phone", async () => {
    const { page, problems } = await phone();
    const there = await truckAndAnswer(page);
    for (const station of STATIONS) {
      await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
      const link = stationLink(page, station);
      const box = (await link.boundingBox())!;
      expect(box.height).toBeGreaterThanOrEqual(44);
      expect(box.y).toBeGreaterThan(PHONE.height - 80);
      await link.tap();
      await isAt(page, station);
      expect(await page.evaluate(() => scrollY)).toBe(0);
      expect(await truckAndAnswer(page), station).toEqual(there);
    }
    // The heading is low; what it does with a truck comes over the page, one menu inside the other.
    const heading = page.locator(".heading");
    expect((await heading.boundingBox())!.height).toBeLessThan(130);
    const menu = heading.getByRole("button", { name: /^Menu/ });
    const save = heading.getByRole("button", { name: "Save", exact: true });
    expect(await save.isVisible()).toBe(false);
    await openTrucks(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
    await page.keyboard.press("Escape");
    await expect.poll(() => heading.locator(".menu[open]").count()).toBe(0);
    expect(await save.isVisible()).toBe(true);
    await page.keyboard.press("Escape");
    expect(await save.isVisible()).toBe(false);
    expect(await menu.evaluate((one) => one === document.activeElement)).toBe(true);
    await goTo(page, "Measure");
    await page.getByRole("navigation", { name: "On this page" }).getByText("Nearest").tap();
    const nearest = page.getByRole("heading", { name: /^What comes nearest/ });
    await expect.poll(async () => (await nearest.boundingBox())!.y, SOON).toBeLessThan(PHONE.height / 2);
    expect(problems()).toEqual([]);
  });

  it("are kept by back, forward, a reload and a shared link", async () => {
    const { page, problems } = await desk();
    for (const station of ["Measure", "Choose", "Build"] as const) await goTo(page, station);
    await page.goBack();
    await isAt(page, "Choose");
    await page.goBack();
    await isAt(page, "Measure");
    await page.goForward();
    await isAt(page, "Choose");
    await page.reload();
    await isAt(page, "Choose");
    await page.getByRole("button", { name: "Share", exact: true }).click();
    const link = await page.locator(".notice input").inputValue();
    const other = await openWorkbench({ isBare: true, viewport: DESK, path: link });
    await isAt(other.page, "Choose");
    expect(await truckAndAnswer(other.page)).toEqual(await truckAndAnswer(page));
    expect([...problems(), ...other.problems()]).toEqual([]);
  });

  it("show a pose that is gone to where it can be seen", async () => {
    const { page, problems } = await phone();
    await verdict(page);
    for (const station of ["Measure", "Build", "Show"] as const) {
      await goTo(page, station);
      await page.getByRole("button", { name: "Go there" }).click();
      await isAt(page, "Clear");
    }
    const travel = page.getByRole("slider", { name: "Travel", exact: true });
    expect(Number(await travel.inputValue())).toBeCloseTo(88.9, 1);
    expect(problems()).toEqual([]);
  });
});

describe("clear, at 1440 by 900", () => {
  it("gives the picture the most room, and all of the window on a button or a key", async () => {
    const { page, problems } = await openWorkbench({ viewport: DESK, colorScheme: "light" });
    await verdict(page);
    await stageDrawn(page);
    const stage = page.locator(".stage-panel");
    const size = async () => (await stage.boundingBox())!;
    const before = await size();
    expect(before.width / DESK.width).toBeGreaterThanOrEqual(0.55);
    expect(before.height / DESK.height).toBeGreaterThanOrEqual(0.6);
    expect(before.y + before.height).toBeLessThanOrEqual(DESK.height);

    const picture = page.getByRole("application", { name: /^Picture of the truck/ });
    const travel = page.getByRole("slider", { name: "Travel", exact: true });
    const fill = {
      button: () => page.getByRole("button", { name: "Fill window" }).click(),
      key: async () => {
        await picture.focus();
        await page.keyboard.press("f");
      },
    };
    for (const way of ["button", "key"] as const) {
      await fill[way]();
      await expect.poll(async () => (await size()).width).toBeGreaterThan(0.95 * DESK.width);
      expect((await size()).height).toBeGreaterThan(0.75 * DESK.height);
      const slider = (await travel.boundingBox())!;
      expect(slider.y + slider.height).toBeLessThanOrEqual(DESK.height);
      const at = await travel.inputValue();
      await travel.focus();
      await page.keyboard.press("PageUp");
      expect(await travel.inputValue()).not.toBe(at);
      // Nothing that lies beneath has the focus, or is met by a pointer.
      for (let press = 0; press < 30; press++) {
        await page.keyboard.press("Tab");
        const isBeneath = await page.evaluate(() => {
          const at = document.activeElement;
          return at !== document.body && at?.closest(".stage-panel, .controls") === null;
        });
        expect(isBeneath, `after ${press + 1} tabs`).toBe(false);
      }
      const met = await page.evaluate(() => {
        const places = [0.02, 0.25, 0.5, 0.75, 0.98];
        return places.every((x) =>
          places.every((y) =>
            document.elementFromPoint(x * innerWidth, y * innerHeight)?.closest(".station"),
          ),
        );
      });
      expect(met).toBe(true);
      await stageDrawn(page);
      await shot(page, `stations-filled-${way}`);
      await page.keyboard.press("Escape");
      await expect.poll(size).toEqual(before);
    }
    await goTo(page, "Choose");
    await isAt(page, "Choose");
    expect(problems()).toEqual([]);
  });

  it("has a way on the first screen to all that lies below it", async () => {
    const { page, problems } = await desk();
    await goTo(page, "Clear");
    await verdict(page);
    const ways = page.getByRole("navigation", { name: "On this page" }).getByRole("button");
    for (const way of await ways.all()) {
      const box = (await way.boundingBox())!;
      expect(box.y + box.height).toBeLessThanOrEqual(DESK.height);
    }
    /** Headings whose top is in the window, and in the box that scrolls them. */
    const seen = () =>
      page.locator("main h2").evaluateAll((all) =>
        all
          .filter((one) => {
            const { top, bottom } = one.getBoundingClientRect();
            const box = one.closest(".answers")?.getBoundingClientRect();
            // What undoes stays over all of it.
            const over = document.querySelector(".heading")!.getBoundingClientRect();
            const isUnder = over.top === 0 && top >= Math.max(over.bottom, box?.top ?? 0) - 1;
            return isUnder && bottom <= Math.min(innerHeight, box?.bottom ?? innerHeight);
          })
          .map((one) => one.textContent),
      );
    const met = new Set(await seen());
    for (const way of await ways.all()) {
      await page.evaluate(() => scrollTo(0, 0));
      await way.focus();
      await page.keyboard.press("Enter");
      const place = await page.evaluate(() => {
        const at = document.activeElement!;
        const heading = at.matches("h2") ? at : at.querySelector("h2");
        return heading?.textContent ?? "";
      });
      const now = await seen();
      expect(now, await read(way)).toContain(place);
      met.add(place);
    }
    const all = await page.locator("main h2").allTextContents();
    expect(all.length).toBeGreaterThan(8);
    expect(all.filter((heading) => !met.has(heading))).toEqual([]);
    expect(problems()).toEqual([]);
  });
});

describe("what is wrong", () => {
  it("leads to its field, from wherever that is read", async () => {
    const { page, problems } = await desk();
    await goTo(page, "Measure");
    await verdict(page);
    const setup = room(page, "Measure");
    const span = setup.getByRole("textbox", { name: "Ball joint span", exact: true });
    const bar = page.getByRole("alert", { name: "Problems" });
    // Text that does not read, and a number with which the truck does not go together.
    for (const [text, station] of [
      ["10 5/8 im", "Choose"],
      ["40", "Build"],
    ] as const) {
      await span.fill(text);
      await expect.poll(() => span.getAttribute("aria-invalid"), SOON).toBe("true");
      await goTo(page, station);
      await bar.getByRole("button", { name: "Ball joint span" }).click(SOON);
      await expect.poll(() => focusedField(page), SOON).toBe("knuckle.span");
      await isAt(page, "Measure");
      expect(await span.inputValue()).toBe(text);
    }
    await span.fill("10 5/8");
    await bar.waitFor({ state: "detached", ...SOON });

    const hubFace = setup.getByRole("textbox", { name: "Hub-face distance", exact: true });
    await hubFace.fill("60");
    await hubFace.press("Enter");
    const doubt = page
      .locator(".verdict .doubts li")
      .filter({ hasText: "Hub-face distance of 60 in is unusual" });
    await doubt.waitFor(SOON);
    await goTo(page, "Show");
    await doubt.getByRole("button", { name: "Show its field" }).click();
    await expect.poll(() => focusedField(page), SOON).toBe("knuckle.hubFace");
    await isAt(page, "Measure");

    await page.getByText("Trucks", { exact: true }).click();
    await page.getByRole("button", { name: /New truck.*inches/ }).click();
    for (const station of STATIONS) {
      await goTo(page, station);
      const needs = page.getByRole("region", { name: "No answer yet, and none is guessed" });
      await needs.getByRole("button", { name: "Hub-face distance" }).click();
      await expect.poll(() => focusedField(page), SOON).toBe("knuckle.hubFace");
      await isAt(page, "Measure");
    }
    expect(problems()).toEqual([]);
  });
});
