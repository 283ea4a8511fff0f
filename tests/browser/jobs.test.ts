import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { MAP_BOX, mapFrameOf } from "../../src/app/clear/map/mapFrame.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import { lowestTravels } from "../../src/studies/map/lowestTravels.ts";
import { steerLimits } from "../../src/studies/map/steerLimits.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { MM_PER_INCH } from "../../src/units/lengthUnits.ts";
import { atRest, comeToRest } from "./harness/atRest.ts";
import { readPdf } from "./harness/pdfText.ts";
import { mapDrawn, poseSentence, read, stageDrawn, verdict } from "./harness/reading.ts";
import { goTo } from "./harness/stations.ts";
import { openWorkbench, sharedWorkbench, shot } from "./harness/workbench.ts";

const ROOT = join(import.meta.dirname, "..", "..");
const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };
/** Aired out, of the example. mm */
const AIRED_OUT = 3.25 * MM_PER_INCH;
const DROOP = -3.75 * MM_PER_INCH;
const BUMP = 3.5 * MM_PER_INCH;

const setup = (page: Page) => page.getByRole("region", { name: "Setup", exact: true });
const field = (page: Page, name: string) => setup(page).getByRole("textbox", { name, exact: true });
const variant = (page: Page) => page.getByLabel("Variant", { exact: true });
/** What the map says at the pose shown, in this order: how far it steers left, right, and how low it goes. */
const limitsShown = (page: Page) => page.locator(".map-limits dd");
const sheet = (page: Page) => page.getByRole("dialog", { name: /Customer sheet/ });
const counterView = (page: Page) => page.getByRole("dialog", { name: /Side by side/ });

const desk = sharedWorkbench({ viewport: DESK, colorScheme: "light", path: "#measure" });
const phone = () =>
  openWorkbench({
    ...{ viewport: PHONE, colorScheme: "light", hasTouch: true, isMobile: true, path: "#measure" },
  });

async function openGroup(page: Page, title: string): Promise<void> {
  await setup(page)
    .locator(".group")
    .filter({ has: page.getByRole("heading", { name: title, exact: true }) })
    .locator("> summary")
    .click();
}

/** Where on the page a pose stands on the map. */
async function onMap(page: Page, travel: number, steer: number): Promise<{ x: number; y: number }> {
  const svg = page.locator(".map-board svg");
  await svg.scrollIntoViewIfNeeded();
  const box = (await svg.boundingBox())!;
  const frame = mapFrameOf(DROOP, BUMP);
  return {
    x: box.x + (frame.x(steer) / MAP_BOX.width) * box.width,
    y: box.y + (frame.y(travel) / MAP_BOX.height) * box.height,
  };
}

/** The example with what the builder types, as the library sees it. */
function builtModel(): Model {
  const document = JSON.parse(readFileSync(join(ROOT, "shared", "half-ton-limits.json"), "utf8"));
  document.wheel = { ...document.wheel, rimWidth: 9, backspacing: "4 3/4" };
  document.tire.size = "P255/70R15";
  document.truck.body[0].points[5][2] = "30 7/8";
  const reading = readSetup(JSON.stringify(document), "built.json");
  if (!reading.ok) throw new Error(reading.issues.map(({ mend }) => mend).join("; "));
  const made = modelOf(reading.value.setup, "built.json");
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

/** The sentences at the counter, once all is known. */
async function counterWords(page: Page): Promise<string> {
  await page.waitForFunction(() => {
    const text = document.querySelector(".counter-sentences")?.textContent ?? "…";
    return !text.includes("…");
  });
  return read(counterView(page).locator(".counter-sentences"));
}

/** Of parts of the page by name, which have changed, in the order in which they do from now on; at once = in the order given. */
function orderOfChanges(page: Page, parts: Readonly<Record<string, string>>) {
  return page.evaluateHandle((named) => {
    const changed: string[] = [];
    for (const [name, selector] of Object.entries(named)) {
      const observer = new MutationObserver(() => {
        changed.push(name);
        observer.disconnect();
      });
      const what = { subtree: true, attributes: true, childList: true, characterData: true };
      for (const part of document.querySelectorAll(selector)) observer.observe(part, what);
    }
    return changed;
  }, parts);
}

/** The curve of the camber plot in the page. */
async function camberCurve(page: Page): Promise<string> {
  const plot = page.getByRole("figure", { name: /^Camber over travel/ }).first();
  const curve = plot.locator("path.plot-curve").first();
  return (await curve.getAttribute("d")) ?? "";
}

describe.each([
  ["on a desk", false],
  ["on a phone under the truck", true],
] as const)("the builder %s", (_, isPhone) => {
  it("types his wheel, tire and arch, airs it out at full lock on the map, and reads what hits, how far, how low", async () => {
    const { page, problems } = await (isPhone ? phone() : desk());
    await verdict(page);
    await openGroup(page, "Wheel");
    await field(page, "Rim width").fill("9");
    await field(page, "Backspacing").fill("4 1/2 + 1/4");
    await openGroup(page, "Tire");
    await field(page, "Tire size").fill("P255/70R15");
    await openGroup(page, "Body parts");
    await setup(page).locator(".part summary").filter({ hasText: "fender lip" }).click();
    await field(page, "6, z").fill("30 7/8");
    await field(page, "6, z").press("Enter");

    const model = builtModel();
    const worst = checkClearance(model)!.worst!;
    // To the nearest sixteenth, as the page shows it.
    const sixteenths = Math.round((-worst.gap / MM_PER_INCH) * 16);
    expect(sixteenths).toBeGreaterThan(4);
    await expect.poll(() => verdict(page), { timeout: 30_000 }).toMatch(/^Rubs The tire rubs the fender lip/);
    const told = /by (?:(\d+) )?(?:(\d+)\/(\d+) )?in\b/.exec(await verdict(page))!;
    const amount = Number(told[1] ?? 0) + Number(told[2] ?? 0) / Number(told[3] ?? 1);
    expect(Math.round(16 * amount)).toBe(sixteenths);

    await goTo(page, "Clear");
    await mapDrawn(page);
    const from = await onMap(page, 0, 0);
    const to = await onMap(page, AIRED_OUT, 1);
    if (isPhone) await page.touchscreen.tap(to.x, to.y);
    else {
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      await page.mouse.move(to.x, to.y, { steps: 12 });
      await page.mouse.up();
    }
    await expect
      .poll(() => poseSentence(page))
      .toMatch(/^At the “aired out” stance, steered to .* left lock \(\w+ wheel \d+°\)/);
    expect(await poseSentence(page)).toMatch(/(tire|wheel) rubs the fender lip by /);
    await mapDrawn(page);
    const [turns] = steerLimits(model, [AIRED_OUT])!;
    const [lowest] = lowestTravels(model, [1])!;
    if (!turns?.ok || !lowest?.ok) throw new Error("the example stands at both");
    const left = turns.leftTurn.touch.either;
    const down = lowest.touch.either;
    expect([left.stop, down.stop]).toEqual(["touch", "touch"]);
    // What the travel is called stands over its numbers at the side, not under the steering's.
    const place = async (what: string) => (await page.locator(`.map-board ${what}`).first().boundingBox())!;
    const [title, tick, edge] = [
      await place(".map-travel-title"),
      await place(".map-tick"),
      await place(".map-edge"),
    ];
    expect(title.y + title.height).toBeLessThanOrEqual(edge.y);
    expect(title.x).toBeLessThanOrEqual(tick.x + 2);
    const shown = await read(limitsShown(page).nth(0));
    expect(shown).toMatch(new RegExp(`^to ${Math.floor(100 * left.at)}% of lock .*then fender lip`));
    // A limit of bump is told no deeper than it is.
    expect(down.at).toBeGreaterThan(0);
    const low = Math.floor((down.at / MM_PER_INCH) * 16) / 16;
    const heard = await read(limitsShown(page).nth(2));
    expect(heard).toMatch(/^touches past .* in bump: fender lip.* keeps 1\/4 in down to .* in bump/);
    const [, whole, top, bottom] = /touches past (?:(\d+) )?(?:(\d+)\/(\d+) )?in/.exec(heard)!;
    expect(Number(whole ?? 0) + Number(top ?? 0) / Number(bottom ?? 1)).toBe(low);
    await page.locator(".map").scrollIntoViewIfNeeded();
    await stageDrawn(page);
    await shot(page, `job-builder-${isPhone ? "phone" : "desk"}`);

    const pageWide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(pageWide).toBe(0);
    await goTo(page, "Show");
    await page.getByRole("button", { name: "Print sheet" }).click();
    const print = sheet(page).getByRole("button", { name: "Print", exact: true });
    await expect.poll(() => print.isEnabled(), { timeout: 30_000 }).toBe(true);
    const { pages, text } = readPdf(await page.pdf({ format: "Letter" }));
    expect(pages).toBe(1);
    for (const words of [
      "P255/70R15 on 15 × 9 in, backspacing 4 3/4 in",
      "rubs the fender lip",
      "Measure before you trust it.",
    ]) {
      expect(text).toContain(words.replace(/\s/g, ""));
    }
    expect(problems()).toEqual([]);
  });
});

describe("the salesperson", () => {
  it("sets two variants side by side for a customer, at a stance, and prints the sheet of the two", async () => {
    const { page, problems } = await openWorkbench({
      ...{ isBare: true, colorScheme: "light", path: "#show" },
      viewport: { width: 1024, height: 768 },
    });
    await page.getByRole("button", { name: "Counter view" }).click();
    await counterView(page).getByLabel(/^A/).selectOption({ label: "current truck" });
    await counterView(page).getByLabel(/^B/).selectOption({ label: "steeper pin" });
    await counterView(page).getByRole("button", { name: "aired out" }).click();
    const told = await counterWords(page);
    expect(told).toContain("At the “aired out” stance");
    expect(told).toMatch(/the current truck sit [\d/ ]+ in farther out per side than those of “steeper pin”/);
    expect(told).toMatch(/meets the fender lip at \d+° of steer/);
    await shot(page, "job-salesperson");
    await counterView(page).getByRole("button", { name: "Print sheet" }).click();
    const print = sheet(page).getByRole("button", { name: "Print", exact: true });
    await expect.poll(() => print.isEnabled(), { timeout: 30_000 }).toBe(true);
    await sheet(page).getByRole("textbox", { name: "Shop" }).fill("Marrow Lane Suspension");
    const { pages, text } = readPdf(await page.pdf({ format: "A4" }));
    expect(pages).toBe(1);
    for (const words of [
      "Marrow Lane Suspension",
      "A · current truck",
      "B · steeper pin",
      "Hub-face distance 6 5/16 in 5 3/4 in",
    ]) {
      expect(text).toContain(words.replace(/\s/g, ""));
    }
    expect(problems()).toEqual([]);
  });
});

describe("the designer", () => {
  it("turns the pin angle by keys and sees the curves follow, fans it, keeps one of the five, and undoes it all", async () => {
    const { page, problems } = await openWorkbench({ isBare: true, viewport: DESK, colorScheme: "light" });
    await verdict(page);
    await comeToRest(page);
    const before = await camberCurve(page);
    const scrub = () => read(page.getByRole("row", { name: /^Scrub radius \+/ }).first());
    const scrubBefore = await scrub();
    expect(before).not.toBe("");
    await goTo(page, "Measure");
    await field(page, "Pin angle").focus();
    for (let press = 0; press < 8; press++) await page.keyboard.press("ArrowUp");
    expect(await field(page, "Pin angle").inputValue()).not.toBe("8.5");
    await page.keyboard.press("Enter");
    await expect.poll(scrub).not.toBe(scrubBefore);
    await goTo(page, "Clear");
    await expect.poll(() => camberCurve(page)).not.toBe(before);
    expect(await scrub()).not.toBe(scrubBefore);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await expect.poll(() => camberCurve(page)).toBe(before);
    await goTo(page, "Measure");
    expect(await field(page, "Pin angle").inputValue()).toBe("8.5");
    await goTo(page, "Choose");

    // Beside the fields: the curves follow a key first, then the rest of the page.
    await page.locator("[data-fold='fields'] > summary").click();
    await field(page, "Pin angle").focus();
    await expect
      .poll(() => page.locator('.variants [aria-busy="true"]').count(), { timeout: 60_000 })
      .toBe(0);
    const which = page.locator(".curve-dock .menu").filter({ hasText: "Which curves" });
    await which.locator("summary").click();
    const kingpin = which.locator("label").filter({ hasText: "Kingpin inclination over travel" });
    // Its words, not its box.
    await kingpin.click();
    await page.locator(".curve-dock .plot-title").filter({ hasText: "Kingpin inclination" }).waitFor();
    expect(await kingpin.getByRole("checkbox").isChecked()).toBe(true);
    await kingpin.click();
    await page.keyboard.press("Escape");
    await field(page, "Pin angle").focus();
    const followed = await orderOfChanges(page, {
      table: ".variants table",
      curves: ".curve-dock-plots svg",
    });
    await page.keyboard.press("ArrowUp");
    await expect.poll(() => followed.evaluate((all) => all.length), { timeout: 60_000 }).toBe(2);
    expect(await followed.jsonValue()).toEqual(["curves", "table"]);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await page.locator("[data-fold='fields'] > summary").click();

    await page.locator(".fan > summary").click();
    const fan = page.locator(".fan");
    expect(await fan.getByLabel("Field").locator("option:checked").textContent()).toBe("Pin angle");
    await fan.getByLabel("from", { exact: true }).fill("6");
    await fan.getByLabel("to", { exact: true }).fill("10");
    const rows = fan.getByRole("row").filter({ has: page.getByRole("rowheader") });
    await expect.poll(() => rows.count()).toBe(5);
    await expect
      .poll(
        () =>
          rows.evaluateAll(
            (all) => all.filter((row) => /rubs|close|clears/.test(row.textContent ?? "")).length,
          ),
        {
          timeout: 60_000,
        },
      )
      .toBe(5);
    // Camber at the as-measured height is the pin's angle less the axis's lean: a degree a step.
    const cambers = await rows.evaluateAll((all) =>
      all.map((row) => Number((row.children[3]?.textContent ?? "").replace("−", "-").replace("°", ""))),
    );
    for (let i = 1; i < 5; i++) expect(cambers[i]! - cambers[i - 1]!).toBeCloseTo(1, 1);
    expect(await fan.locator("path.plot-curve").count()).toBe(5);
    await fan.scrollIntoViewIfNeeded();
    await shot(page, "job-designer-fan");

    await fan.getByRole("button", { name: "Keep Pin angle 9° as a variant" }).click();
    await expect.poll(() => variant(page).locator("option:checked").textContent()).toBe("pin angle 9°");
    await goTo(page, "Measure");
    expect(await field(page, "Pin angle").inputValue()).toBe("9");
    await expect.poll(() => verdict(page)).not.toBe("");
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await expect.poll(() => variant(page).locator("option:checked").textContent()).toBe("current truck");
    expect(await variant(page).locator("option", { hasText: "pin angle 9°" }).count()).toBe(0);
    expect(await field(page, "Pin angle").inputValue()).toBe("8.5");

    await goTo(page, "Choose");
    await page.locator('[data-fold="solve"] > summary').click();
    const solve = page.locator(".solve");
    // It opens on the gap that is to be kept; any other field is found by its name.
    expect(await solve.getByRole("combobox", { name: /^for/ }).inputValue()).toBe("gap");
    await solve.getByLabel("Find by name").fill("pin angle");
    await solve.getByLabel("Find by name").press("Enter");
    expect(await solve.getByLabel("Field").locator("option:checked").textContent()).toBe("Pin angle");
    await solve.getByRole("combobox", { name: /^for/ }).selectOption({ label: "Camber" });
    await solve.getByLabel("of", { exact: true }).fill("-0.5");
    await solve.getByRole("button", { name: "Solve" }).click();
    await solve.getByText("gives camber −0.50°").waitFor();
    // Put in, it is what the truck has, until it is taken back.
    await solve.getByRole("button", { name: /^Put Pin angle .*° in current truck$/ }).click();
    await solve.getByText("gives camber −0.50°, now −0.50°").waitFor();
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await solve.getByText("(now 8.50°) gives camber −0.50°").waitFor();
    // Camber moves one to one with the pin angle.
    const found = await solve.getByRole("button", { name: /^Keep Pin angle/ }).textContent();
    const solved = Number(/[\d.]+(?=°)/.exec(found ?? "")?.[0]);
    expect(solved - 8.5).toBeCloseTo(-0.5 - 0.18, 1);
    await solve.getByRole("button", { name: /^Keep Pin angle/ }).click();
    await expect
      .poll(() => variant(page).locator("option:checked").textContent())
      .toBe(`pin angle ${solved.toFixed(2)}°`);
    await goTo(page, "Measure");
    expect(Number(await field(page, "Pin angle").inputValue())).toBeCloseTo(solved, 2);
    expect(problems()).toEqual([]);
  });
});

describe("the built page", () => {
  it("follows a drag of the dot on the map, and tells what a pose of it costs the main thread", async () => {
    const { page } = await desk();
    await verdict(page);
    // What is open over the station, if anything, is closed.
    await page.keyboard.press("Escape");
    await goTo(page, "Clear");
    await atRest(page);
    await stageDrawn(page);
    await mapDrawn(page);
    const session = await page.context().newCDPSession(page);
    await session.send("Performance.enable", { timeDomain: "threadTicks" });
    const worked = async () => {
      const { metrics } = await session.send("Performance.getMetrics");
      const of = (name: string) => metrics.find((metric) => metric.name === name)!.value;
      return {
        all: of("TaskDuration"),
        scripts: of("ScriptDuration"),
        layout: of("LayoutDuration") + of("RecalcStyleDuration"),
      };
    };
    const from = await onMap(page, 0, 0);
    const to = await onMap(page, AIRED_OUT, 0.8);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    const start = await worked();
    const moves = 60;
    for (let i = 1; i <= moves; i++) {
      const share = 0.5 - 0.5 * Math.cos((4 * Math.PI * i) / moves);
      await page.mouse.move(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y));
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
    }
    const end = await worked();
    await page.mouse.move(to.x, to.y);
    await page.mouse.up();
    await expect
      .poll(() => poseSentence(page))
      .toMatch(/^At the “aired out” stance, steered to .* left lock \(\w+ wheel \d+°\)/);
    const each = (what: keyof typeof start) => ((1000 * (end[what] - start[what])) / moves).toFixed(1);
    console.log(
      `main thread, processor time an event of a drag on the map: ${each("all")} ms, of them scripts ${each("scripts")} ms, style and layout ${each("layout")} ms`,
    );
  });
});
