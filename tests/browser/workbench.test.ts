import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { atRest } from "./harness/atRest.ts";
import { readPdf } from "./harness/pdfText.ts";
import { picture, png, shareApart } from "./harness/picture.ts";
import { plain, poseSentence, read, verdict } from "./harness/reading.ts";
import { openWorkbench, sharedWorkbench, shot } from "./harness/workbench.ts";

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

/** The example that the workbench opens with, as a document. */
async function exampleDocument(): Promise<Record<string, unknown>> {
  const path = join(import.meta.dirname, "..", "..", "shared", "half-ton-limits.json");
  return JSON.parse(await readFile(path, "utf8"));
}

const steering = (page: Page) => page.getByRole("slider", { name: "Steering", exact: true });
const travel = (page: Page) => page.getByRole("slider", { name: "Travel", exact: true });
const gapList = (page: Page) => page.getByRole("region", { name: "What comes nearest, worst first" });
const variant = (page: Page) => page.getByLabel("Variant", { exact: true });

/** On a phone it stands at the thumb. */
const stationBar = (page: Page) =>
  page.getByRole("navigation", { name: "Steps of the job" }).getByRole("list");

/** Drags a control by the mouse from where its slide is to a share of its width. */
async function drag(page: Page, label: "Steering" | "Travel", from: number, to: number): Promise<void> {
  const box = await page.getByRole("slider", { name: label, exact: true }).boundingBox();
  if (!box) throw new Error(`the ${label} control is not on the page`);
  const y = box.y + 0.4 * box.height;
  await page.mouse.move(box.x + from * box.width, y);
  await page.mouse.down();
  await page.mouse.move(box.x + to * box.width, y, { steps: 8 });
  await page.mouse.up();
}

const desk = sharedWorkbench({ viewport: DESK, colorScheme: "light" });
const bare = sharedWorkbench({ isBare: true, viewport: DESK });
const phone = sharedWorkbench({ isBare: true, viewport: PHONE, hasTouch: true, isMobile: true });

/** The page with its picture, the example at rest. */
async function onDesk() {
  const bench = await desk();
  await verdict(bench.page);
  await atRest(bench.page);
  return bench;
}

describe("the workbench without WebGL", () => {
  it("says why there is no picture, and answers everything else", async () => {
    const { page, problems } = await bare();
    await page.getByText(/cannot draw in three dimensions/).waitFor();
    expect(await verdict(page)).toMatch(/^Rubs /);
    await page.getByRole("button", { name: "Go there" }).click();
    expect(await poseSentence(page)).toContain(" rubs the ");
    await shot(page, "workbench-desk-no-webgl");
    expect(problems()).toEqual([]);
  });
});

describe("the workbench on a desk", () => {
  it("says that the example rubs, and that its narrow variant clears if its numbers are taken", async () => {
    const { page, problems } = await onDesk();
    expect(await verdict(page)).toMatch(/^Rubs .*fender/);
    await picture(page);
    await shot(page, "workbench-desk-light");
    await variant(page).selectOption({ label: "narrow hub face" });
    expect(await verdict(page)).toMatch(/^The example clears If the example.s numbers are this truck.s, /);
    await variant(page).selectOption({ label: "current truck" });
    expect(await verdict(page)).toMatch(/^Rubs /);
    expect(problems()).toEqual([]);
  });

  it("goes to the worst pose, says what rubs there and marks it on the picture", async () => {
    const { page, problems } = await onDesk();
    const before = await picture(page);
    await page.getByRole("button", { name: "Go there" }).click();
    expect(await poseSentence(page)).toMatch(/ (left|right) (tire|wheel) rubs the /);
    expect(await picture(page)).not.toBe(before);
    const mark = page.locator(".gap-mark-rubs:visible").first();
    expect(plain((await mark.locator("text").textContent()) ?? "")).toMatch(
      /^fender lip: rubs .* in(, the worst| at worst)$/,
    );
    // The first row is the worst part, and here its worst gap is its gap now.
    const first = await read(gapList(page).getByRole("button").first());
    expect(first).toMatch(/^fender lip .* rubs by ([\d/ ]+ in) now rubs \1$/);
    await shot(page, "workbench-desk-worst");
    for (const view of ["Front", "Side", "Top"]) {
      await page.getByRole("button", { name: view, exact: true }).click();
      await picture(page);
      await shot(page, `workbench-desk-${view.toLowerCase()}`);
    }
    expect(problems()).toEqual([]);
  });

  it("follows a drag of the steering: sentence, numbers and picture change, and back is back", async () => {
    const { page, problems } = await onDesk();
    const atRest = { picture: await picture(page), sentence: await poseSentence(page) };
    await drag(page, "Steering", 0.5, 0.2);
    expect(Number(await steering(page).inputValue())).toBeGreaterThan(0.4);
    expect(await steering(page).getAttribute("aria-valuetext")).toMatch(/% left lock, left wheel \d/);
    expect(await poseSentence(page)).toMatch(/steered to .* left lock \(\w+ wheel [\d.]+°\)/);
    expect(await poseSentence(page)).not.toBe(atRest.sentence);
    expect(await picture(page)).not.toBe(atRest.picture);
    // A lock, and how far it steers from there, are pressed.
    await page.locator(".scale-ends").getByRole("button", { name: "full right lock" }).click();
    expect(await steering(page).getAttribute("aria-valuetext")).toMatch(/^full right lock/);
    await page.locator(".map-limits dd").first().getByRole("button").click();
    await expect.poll(async () => Number(await steering(page).inputValue())).toBeGreaterThan(0.1);
    // So is how low it goes at a lock.
    const height = await travel(page).inputValue();
    await page.locator(".map-locks dd").last().getByRole("button").first().click();
    expect(await steering(page).getAttribute("aria-valuetext")).toMatch(/^full right lock/);
    expect(Number(await travel(page).inputValue())).toBeGreaterThan(Number(height));
    await page.locator(".stances").getByRole("button", { name: "driving", exact: true }).click();
    await page.getByRole("button", { name: "Straight", exact: true }).click();
    expect(await poseSentence(page)).toBe(atRest.sentence);
    await expect.poll(() => picture(page)).toBe(atRest.picture);
    expect(problems()).toEqual([]);
  });

  it("steps the height by sixteenths with the keys, and takes a stance's name", async () => {
    const { page } = await onDesk();
    await travel(page).focus();
    await page.keyboard.press("ArrowRight");
    expect(await travel(page).getAttribute("aria-valuetext")).toBe("1/16 in bump");
    await page.keyboard.press("PageUp");
    expect(await travel(page).getAttribute("aria-valuetext")).toBe("9/16 in bump");
    await page.keyboard.press("ArrowLeft");
    expect(await travel(page).getAttribute("aria-valuetext")).toBe("1/2 in bump");
    await page.keyboard.press("Home");
    const lowest = Number(await travel(page).inputValue());
    expect(lowest).toBe(Number(await travel(page).getAttribute("min")));
    const stance = page.getByRole("button", { name: "aired out", exact: true });
    await stance.click();
    expect(await stance.getAttribute("aria-pressed")).toBe("true");
    expect(await poseSentence(page)).toMatch(/^At the “aired out” stance/);
  });

  it("goes to a height and a steering angle that are typed, and says of what cannot be taken how to mend it", async () => {
    const { page, problems } = await onDesk();
    const readout = (name: string) =>
      page.getByRole("button", { name: new RegExp(`^${name}: .* Type a value$`) });
    await readout("Travel").click();
    const typed = page.getByRole("textbox", { name: /^Travel, such as / });
    await typed.fill("9 bump");
    await typed.press("Enter");
    expect(await read(page.getByRole("alert").filter({ hasText: "travel" }))).toMatch(
      /^✕ the setup’s travel is from .* in droop to .* in bump\.$/,
    );
    await typed.fill("2 bump");
    await typed.press("Enter");
    expect(await travel(page).getAttribute("aria-valuetext")).toBe("2 in bump");
    expect(await typed.count()).toBe(0);
    await readout("Steering").click();
    await page.keyboard.type("50 left");
    await page.keyboard.press("Enter");
    expect(await steering(page).getAttribute("aria-valuetext")).toMatch(/^50% left lock, /);
    // Escape leaves all as it was; its keys go on from the readout.
    await page.keyboard.press("Enter");
    await page.keyboard.type("20 right");
    await page.keyboard.press("Escape");
    expect(await steering(page).getAttribute("aria-valuetext")).toMatch(/^50% left lock, /);
    expect(problems()).toEqual([]);
  });

  it("turns and zooms the picture by keys, and a view button sets it straight again", async () => {
    const { page } = await onDesk();
    const straight = await picture(page);
    await page.getByRole("application", { name: /^Picture of the truck/ }).focus();
    await page.keyboard.press("ArrowLeft");
    const turned = await picture(page);
    expect(turned).not.toBe(straight);
    await page.keyboard.press("+");
    expect(await picture(page)).not.toBe(turned);
    await page.getByRole("button", { name: "Three-quarter" }).click();
    await page.mouse.move(0, 0);
    await expect.poll(() => picture(page)).toBe(straight);
  });

  it("goes to the worst pose of a part that is chosen in the list and points it out, also one that is clear", async () => {
    const { page, problems } = await onDesk();
    await picture(page);
    const row = gapList(page).getByRole("button", { name: /^lower arm / });
    const [, told] = /(\d+% (?:left|right) lock)/.exec(await read(row)) ?? [];
    expect(told).toBeDefined();
    expect(await page.locator(".gap-mark-clear:visible").count()).toBe(0);
    await row.click();
    expect(await row.getAttribute("aria-pressed")).toBe("true");
    expect(await steering(page).getAttribute("aria-valuetext")).toContain(told!);
    expect(Number(await travel(page).inputValue())).toBeLessThan(0);
    await expect.poll(() => page.locator(".gap-mark-clear:visible").count()).toBe(1);
    await gapList(page)
      .getByRole("button", { name: /^All \d+ parts$/ })
      .click();
    const parts = await gapList(page).getByRole("listitem").count();
    expect(parts).toBeGreaterThan(10);
    expect(problems()).toEqual([]);
  });

  it("lists what is wrong with a file and keeps the last good truck", async () => {
    const { page, problems } = await onDesk();
    const good = await verdict(page);
    const open = (name: string, text: string) =>
      page
        .getByLabel("Setup file")
        .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
    await open("bent.json", '{ "format": "wellsweep-setup", "version": 1, "units": "in", "knukle": {} }');
    const note = page.getByRole("alert");
    await note.waitFor();
    expect(await read(note)).toContain("bent.json");
    expect(await read(note)).toContain("knukle");
    expect(await verdict(page)).toBe(good);
    await shot(page, "workbench-desk-issues");
    await open("cut-off.json", '{ "format": ');
    await expect.poll(() => read(note)).toContain("cut-off.json");
    await page.getByRole("button", { name: "Dismiss" }).click();
    expect(await note.count()).toBe(0);
    expect(problems()).toEqual([]);
  });

  it("opens each truck that comes with it, and the one worked on before again", async () => {
    const { page, problems } = await bare();
    await verdict(page);
    const menu = page.locator(".menu").filter({ hasText: "Trucks" });
    const openTruck = async (name: string) => {
      await menu.locator("summary").click();
      await menu.getByRole("button", { name }).first().click();
    };
    for (const [name, worst] of [
      ["Long bed with a steering box", "brake hose"],
      ["Compact, rack ahead of the axle", "fender lip"],
      ["Flatbed, long arms, steering box ahead", "tie rod end"],
      ["Half-ton, aligned and on bags", "fender lip"],
    ] as const) {
      await openTruck(name);
      await expect.poll(() => verdict(page)).toContain(worst);
      expect(await page.getByRole("alert").count()).toBe(0);
    }
    await openTruck("Mill Lane long bed");
    await expect.poll(() => verdict(page)).toContain("brake hose");
    expect(await read(page.locator(".verdict-limits"))).toMatch(
      /^Poses past the .*steering stop.* are not counted\.$/,
    );
    expect(problems()).toEqual([]);
  });

  it("opens a setup that is dropped on the page", async () => {
    const { page, problems } = await bare();
    await verdict(page);
    const demo = await exampleDocument();
    await page.evaluate(
      (text) => {
        const data = new DataTransfer();
        data.items.add(new File([text], "dropped.json", { type: "application/json" }));
        document
          .querySelector("main")
          ?.dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true }));
      },
      JSON.stringify({ ...demo, name: "Truck from a drop" }),
    );
    await page.getByText("Truck from a drop", { exact: true }).waitFor();
    expect(await verdict(page)).toMatch(/^Rubs /);
    expect(problems()).toEqual([]);
  });
});

describe("a setup that asks for more travel than the linkage has", () => {
  it("is checked as far as it reaches, and says which joint stops where", async () => {
    const { page, problems } = await bare();
    await verdict(page);
    const text = JSON.stringify({
      ...(await exampleDocument()),
      travel: { droop: -9, bump: 3.5 },
      variants: [],
    });
    await page
      .getByLabel("Setup file")
      .setInputFiles({ name: "low.json", mimeType: "application/json", buffer: Buffer.from(text) });
    await page
      .getByText(/cannot follow past .* droop/)
      .first()
      .waitFor();
    await travel(page).focus();
    await page.keyboard.press("Home");
    expect(await poseSentence(page)).toMatch(/cannot reach this pose; it goes as far as .* droop/);
    await shot(page, "workbench-desk-reach");
    expect(problems()).toEqual([]);
  });
});

describe("a graphics card that is taken away", () => {
  it("leaves the answers as they are, and the picture comes back as it was when it is given back", async () => {
    const { page } = await onDesk();
    const answer = await verdict(page);
    const before = await png(page);
    await page.evaluate(() => {
      const gl = document.querySelector("canvas")?.getContext("webgl2");
      const switched = gl?.getExtension("WEBGL_lose_context");
      if (!switched) throw new Error("the stage is not drawn by WebGL 2");
      Object.assign(globalThis, { switched });
      switched.loseContext();
    });
    // A tenth of the picture is ink.
    await expect.poll(async () => shareApart(page, before, await png(page), 40)).toBeGreaterThan(0.1);
    await page.getByRole("button", { name: "Go there" }).click();
    expect(await poseSentence(page)).toContain(" rubs the ");
    expect(await verdict(page)).toBe(answer);
    await page.locator(".stances").getByRole("button", { name: "driving", exact: true }).click();
    await page.getByRole("button", { name: "Straight", exact: true }).click();
    await page.evaluate(() => {
      const { switched } = globalThis as unknown as { switched: WEBGL_lose_context };
      switched.restoreContext();
    });
    await page.mouse.move(0, 0);
    // But for the rims of lines, which a context made anew smooths otherwise: a fiftieth of the pixels.
    const apart = async () => shareApart(page, before, await png(page), 40);
    await expect.poll(apart, { timeout: 20_000 }).toBeLessThan(0.03);
  });
});

describe("the workbench on a phone", () => {
  it("has the answer and the picture on its first screen, picture and both controls on one, and cuts nothing off", async () => {
    const { page, problems } = await openWorkbench({
      viewport: PHONE,
      deviceScaleFactor: 2,
      isMobile: true,
      hasTouch: true,
      colorScheme: "light",
    });
    await verdict(page);
    await picture(page);
    await page.getByRole("button", { name: "Go there" }).click();
    await picture(page);
    await shot(page, "workbench-phone-light");
    const answer = await page.locator(".verdict").boundingBox();
    const stage = await page.locator("canvas").first().boundingBox();
    for (const box of [answer, stage]) expect(box!.y + box!.height).toBeLessThanOrEqual(PHONE.height);
    const bar = await stationBar(page).boundingBox();
    for (const control of [travel(page), steering(page)]) {
      const box = await control.boundingBox();
      // Scrolled until the picture is on top, both controls are under it.
      expect(box!.y + box!.height - stage!.y).toBeLessThanOrEqual(bar!.y);
      expect(box!.x).toBeGreaterThanOrEqual(0);
      expect(box!.x + box!.width).toBeLessThanOrEqual(PHONE.width);
    }
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow).toBe(0);
    expect(problems()).toEqual([]);
  });
});

describe("the page around the truck", () => {
  it.each([1280, 1440])(
    "has its heading and the picture's buttons on one line each, %i pixels wide",
    async (width) => {
      const { page } = await onDesk();
      await page.setViewportSize({ width, height: 800 });
      for (const selector of [".heading", ".stage-bar"]) {
        const lines = await page
          .locator(`${selector} :is(button, summary, select)`)
          .evaluateAll((all) =>
            all.filter((one) => one.checkVisibility()).map((one) => one.getBoundingClientRect()),
          );
        const middles = lines.map(({ top, height }) => top + 0.5 * height);
        expect(middles.length).toBeGreaterThan(4);
        expect(Math.max(...middles) - Math.min(...middles), selector).toBeLessThan(4);
      }
      await shot(page, `workbench-${width}`);
      await page.setViewportSize(DESK);
    },
  );

  it("prints the plots at the pose shown, though they were never scrolled to", async () => {
    const { page } = await phone();
    await verdict(page);
    await page.getByRole("button", { name: "aired out", exact: true }).click();
    expect(
      await page.locator(".plots").evaluate((plots) => plots.getBoundingClientRect().top > 2 * innerHeight),
    ).toBe(true);
    await page.evaluate(() => {
      window.print = () => {};
    });
    // Pressed without being brought in sight: by the browser's own menu the packet prints.
    const print = page.locator(".plots").getByRole("button", { name: "Print", exact: true });
    await print.evaluate((button: HTMLElement) => button.click());
    const { text } = readPdf(await page.pdf({ format: "Letter" }));
    // The plots over travel read at 3 1/4 in; before, they would have stood at 0.
    expect(text).toContain("now31/4in:");
    expect(text).not.toMatch(/now0in\b/);
    expect(text).toContain("blueline:airedout(31/4inbump),straightahead·");
  });

  it("leads a thumb to the setup, and the keyboard goes on from there", async () => {
    const { page, problems } = await phone();
    await verdict(page);
    const bar = stationBar(page);
    await bar.getByRole("link", { name: "Measure" }).tap();
    const title = page.locator("#setup-title");
    await title.waitFor();
    await expect.poll(async () => (await title.boundingBox())?.y ?? -1).toBeLessThan(PHONE.height / 2);
    const place = () => page.evaluate(() => document.activeElement?.closest("main") !== null);
    expect(await place()).toBe(true);
    await page.keyboard.press("Tab");
    expect(await place()).toBe(true);
    const find = page.getByRole("searchbox", { name: "Find a field" });
    await find.fill("backsp");
    await find.press("Enter");
    const focused = () =>
      page.evaluate(() => document.activeElement?.closest("[data-field]")?.getAttribute("data-field"));
    await expect.poll(focused).toBe("wheel.backspacing");
    // What is given another way is found where that stands.
    await find.fill("section width");
    await find.press("Enter");
    await expect.poll(focused).toBe("tire.size");
    const box = await bar.boundingBox();
    expect(box!.y + box!.height).toBeCloseTo(PHONE.height, 0);
    const targets = await bar.getByRole("link").evaluateAll((all) => all.map((one) => one.clientHeight));
    expect(Math.min(...targets)).toBeGreaterThanOrEqual(44);
    expect(problems()).toEqual([]);
  });
});
