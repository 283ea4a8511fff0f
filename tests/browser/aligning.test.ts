import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { readSetup } from "../../src/setup/readSetup.ts";
import { alignTruck, type TruckAlignment } from "../../src/studies/alignment/alignSide.ts";
import { modelAsked } from "../../src/studies/alignment/modelAsked.ts";
import { modelOf } from "../../src/studies/model/model.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { verdictSentence } from "../../src/studies/wording/verdictSentence.ts";
import { degFromRad } from "../../src/units/angle.ts";
import { formatLength } from "../../src/units/formatLength.ts";
import { faults } from "./harness/faults.ts";
import { readPdf } from "./harness/pdfText.ts";
import { plain, read, verdict } from "./harness/reading.ts";
import { goTo } from "./harness/stations.ts";
import { sharedWorkbench, shot, type Workbench } from "./harness/workbench.ts";

const NAME = "half-ton-limits.json";
const EXAMPLE = readFileSync(join(import.meta.dirname, "..", "..", "shared", NAME), "utf8");
const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

const card = (page: Page) => page.getByRole("region", { name: /^Alignment card/ });
const choice = (page: Page, name: string) => card(page).getByRole("button", { name, exact: true });
const now = (page: Page) => page.getByRole("region", { name: "Alignment now" });

const bare = { isBare: true, path: "#choose", colorScheme: "light" } as const;
const desk = sharedWorkbench({ ...bare, viewport: DESK });
const phone = sharedWorkbench({ ...bare, viewport: PHONE, isMobile: true, hasTouch: true });

/** What is on the board of each page, as it was opened. */
const opened = new WeakMap<Page, string>();
let openings = 0;

/**
 * The example on the board, as bolted on, at the station where variants and the card are.
 * @param change what is different in the file
 */
async function withExample(
  change: (document: Record<string, unknown>) => void = () => {},
  open = desk,
): Promise<Workbench> {
  const bench = await open();
  const { page } = bench;
  const document = JSON.parse(EXAMPLE) as Record<string, unknown>;
  change(document);
  const text = JSON.stringify(document);
  if (opened.get(page) !== text) {
    // By its name it is told from the one before.
    const name = `Fern Street shop half-ton, opening ${++openings}`;
    const buffer = Buffer.from(JSON.stringify({ ...document, name }));
    await page
      .locator('input[type="file"]')
      .first()
      .setInputFiles({ name: NAME, mimeType: "application/json", buffer });
    await page.locator(".heading-setup").filter({ hasText: name }).waitFor();
    opened.set(page, text);
  }
  await goTo(page, "Choose");
  await choice(page, "as bolted on").click();
  return bench;
}

function setupOf(text: string) {
  const reading = readSetup(text, NAME);
  if (!reading.ok) throw new Error(reading.issues.map(({ mend }) => mend).join("; "));
  return reading.value.setup;
}

/** What the library says of the example. */
function solved(): TruckAlignment {
  const made = modelOf(setupOf(EXAMPLE), NAME);
  if (!made.ok) throw new Error("the example goes together");
  const result = alignTruck(made.value);
  if (!result.ok) throw new Error("the example can be aligned");
  return result.alignment;
}

/** The verdict as the library says it. */
function sentence(isAligned: boolean): string {
  const setup = setupOf(EXAMPLE);
  const made = modelAsked({ setup, file: NAME, isAligned });
  if (!made.ok) throw new Error("the example goes together");
  return plain(verdictSentence(checkClearance(made.value)!, made.value, { units: "in" }));
}

const degrees = (rad: number) =>
  `${degFromRad(rad).toFixed(2)}°`.replace("-", "−").replace(/^−0\.00/, "0.00");

describe("as bolted on and aligned", () => {
  it("changes the whole answer: verdict, angles, variants, counter, sheet; each says which it shows", async () => {
    const { page, problems } = await withExample();
    const { left } = solved();
    expect(sentence(true)).not.toBe(sentence(false));
    await goTo(page, "Clear");
    await expect.poll(() => verdict(page), { timeout: 30_000 }).toContain(sentence(false));
    const camber = () =>
      read(
        now(page)
          .getByRole("row", { name: /^Camber/ })
          .getByRole("cell")
          .first(),
      );
    expect(await camber()).toBe(degrees(left.asBolted.camber));
    await goTo(page, "Choose");
    await choice(page, "aligned").click();
    expect(await choice(page, "aligned").getAttribute("aria-pressed")).toBe("true");
    await goTo(page, "Clear");
    await expect.poll(camber).toBe(degrees(left.aligned.camber));
    await expect.poll(() => verdict(page), { timeout: 30_000 }).toContain(sentence(true));
    await goTo(page, "Choose");
    const shown = page
      .getByRole("region", { name: /^Variants side by side/ })
      .getByRole("row", { name: /^Shown/ });
    for (const cell of await shown.getByRole("cell").all()) expect(await read(cell)).toBe("aligned");
    await goTo(page, "Show");
    await page.getByRole("button", { name: "Counter view" }).click();
    const title = page
      .getByRole("dialog", { name: /Side by side/ })
      .getByRole("heading")
      .first();
    expect(await read(title)).toMatch(/, aligned$/);
    await page.keyboard.press("Escape");
    await title.waitFor({ state: "hidden" });
    await page.locator(".station-show").getByRole("button", { name: "Print sheet" }).click();
    expect(await read(page.locator(".sheet-head"))).toContain(", aligned");
    await page.keyboard.press("Escape");
    await page.locator(".sheet-head").waitFor({ state: "hidden" });
    await page.locator(".verdict").getByRole("button", { name: "as bolted on" }).click();
    await goTo(page, "Clear");
    await expect.poll(camber).toBe(degrees(left.asBolted.camber));
    await goTo(page, "Choose");
    for (const cell of await shown.getByRole("cell").all()) expect(await read(cell)).toBe("as bolted on");
    expect(problems()).toEqual([]);
  });

  it("is kept with the setup: a page opened again shows it as it was left", async () => {
    const { page } = await withExample();
    await choice(page, "aligned").click();
    await page.reload();
    await choice(page, "aligned").waitFor();
    expect(await choice(page, "aligned").getAttribute("aria-pressed")).toBe("true");
  });

  it("says so where it is but the nearest there is", async () => {
    const { page } = await withExample((document) => {
      document.alignment = { targets: { camber: -6, caster: 4 } };
    });
    await choice(page, "aligned").click();
    await page
      .locator(".verdict .standing-tag")
      .filter({ hasText: "aligned as near as its adjusters go" })
      .waitFor();
    expect(await read(card(page))).toMatch(/Out of range: neither wheel meets its targets/);
    expect(
      await read(
        card(page)
          .getByRole("row", { name: /^Camber/ })
          .first(),
      ),
    ).toContain("out of range");
  });
});

describe("the alignment card", () => {
  it("tells targets, readings, shims to scale, tie rods, and what a shim does, as the library solves them", async () => {
    const { page, problems } = await withExample();
    const { left, right } = solved();
    await card(page).scrollIntoViewIfNeeded();
    for (const key of ["camber", "caster", "toe"] as const) {
      const cells = card(page)
        .getByRole("row", { name: new RegExp(`^${key}`, "i") })
        .first()
        .getByRole("cell");
      const texts = await Promise.all((await cells.all()).map(read));
      expect(texts.slice(0, 3), key).toEqual(
        [left.targets[key]!, left.asBolted[key], left.aligned[key]].map(degrees),
      );
      expect(texts[3]).toMatch(/in range|met/);
    }
    const sweep = card(page).getByRole("row", { name: /sweep/ });
    expect(await read(sweep)).toContain(degrees(left.aligned.casterSweep!.reading));
    const figures = card(page).getByRole("figure");
    expect(await figures.count()).toBe(4);
    for (const side of [left, right]) {
      for (const { name, setting } of side.settings) {
        const words = await read(figures.filter({ hasText: `${side.side} ${name}` }));
        expect(words).toContain(formatLength(setting, { units: "in", fraction: 64 }));
      }
    }
    // The arm's shaft stands as far from the frame as its stack is thick, to one scale.
    const reach = async (name: string) => {
      const svg = figures.filter({ hasText: name }).locator("svg");
      const at = async (part: string, end: "x" | "right") => {
        const box = (await svg.locator(part).boundingBox())!;
        return end === "x" ? box.x : box.x + box.width;
      };
      return (await at(".shim-shaft", "x")) - (await at(".shim-frame", "right"));
    };
    const [front, rear] = left.settings.map(({ setting }) => setting);
    expect((await reach("left front")) / (await reach("left rear"))).toBeCloseTo(front! / rear!, 1);
    const change = (rad: number) => `${rad > 0 ? "+" : ""}${degrees(rad)}`;
    const table = card(page).getByRole("table", { name: /^What 1\/32 in more shim does/ });
    expect(await read(table.getByRole("row", { name: /^at the front/ }))).toContain(
      `${change(left.sensitivities[0]!.camber)} ${change(left.sensitivities[0]!.caster)}`,
    );
    await page.getByText("Units, look").click();
    await page.getByLabel("Lengths").selectOption({ label: "inches, 1/64" });
    const half = card(page).getByRole("table", { name: /^What 1\/64 in more shim does/ });
    expect(await read(half.getByRole("row", { name: /^at the front/ }))).toContain(
      change(left.sensitivities[0]!.caster / 2),
    );
    await page.getByLabel("Lengths").selectOption({ label: "inches, 1/16" });
    await page.getByText("Units, look").click();
    expect(problems()).toEqual([]);
  });

  it("prints alone, on one page", async () => {
    const { page } = await withExample();
    await page.emulateMedia({ colorScheme: "dark" });
    await page.evaluate(() => {
      window.print = () => {};
    });
    await card(page).getByRole("button", { name: "Print" }).click();
    const { pages, text } = readPdf(await page.pdf({ format: "Letter" }));
    expect(pages).toBe(1);
    for (const words of [
      "Fern Street shop half-ton",
      "Alignment card: driving",
      "Either wheel",
      "left tie rod",
    ])
      expect(text).toContain(words.replace(/\s/g, ""));
    for (const words of ["Over the whole range", "Undo", "Camber over travel"])
      expect(text).not.toContain(words.replace(/\s/g, ""));
    await page.emulateMedia({ colorScheme: "light" });
  });

  it("without targets says why there is no choice, and adds what is missing in one step", async () => {
    const { page, problems } = await withExample((document) => {
      delete document.alignment;
      delete document.adjusters;
    });
    expect(await choice(page, "aligned").isDisabled()).toBe(true);
    expect(await read(card(page))).toContain("no targets in this setup");
    expect(await page.locator(".verdict .standing-switch").count()).toBe(0);
    await card(page).getByRole("button", { name: "Add targets and shim stacks" }).click();
    await choice(page, "aligned").click();
    await card(page).locator(".aligning-outcome").filter({ hasText: "In range" }).waitFor();
    expect(await card(page).getByRole("figure").count()).toBe(4);
    await page.getByRole("button", { name: "Undo" }).click();
    await card(page).getByRole("button", { name: "Add targets and shim stacks" }).waitFor();
    expect(problems()).toEqual([]);
  });

  it("has its fields in the setup, each with its meaning and a sketch", async () => {
    const { page } = await withExample();
    await goTo(page, "Measure");
    const setup = page.getByRole("region", { name: "Setup", exact: true });
    const group = (title: string) =>
      setup.locator(".group").filter({ has: page.getByRole("heading", { name: title, exact: true }) });
    await group("Alignment, travel and stances").locator("> summary").click();
    await group("Adjusters").locator("> summary").click();
    for (const [title, name] of [
      ["Alignment, travel and stances", "Camber wanted"],
      ["Alignment, travel and stances", "Caster wanted"],
      ["Adjusters", "Thickest stack"],
      ["Adjusters", "Front, as bolted on"],
    ] as const) {
      const row = group(title)
        .locator(".field")
        .filter({ has: page.getByRole("textbox", { name, exact: true }) });
      await row
        .getByRole("button", { name: /What is/ })
        .first()
        .click();
      await group(title)
        .getByRole("img", { name: `Sketch: ${name}` })
        .waitFor();
    }
    await setup.getByRole("textbox", { name: "Camber wanted", exact: true }).fill("-1");
    await goTo(page, "Choose");
    await expect
      .poll(() =>
        read(
          card(page)
            .getByRole("row", { name: /^Camber/ })
            .first(),
        ),
      )
      .toContain("−1.00°");
    await page.getByRole("button", { name: "Undo" }).click();
  });
});

describe.each([
  ["a desk", DESK, "light"],
  ["a desk", DESK, "dark"],
  ["a phone", PHONE, "light"],
  ["a phone", PHONE, "dark"],
] as const)("on %s %o in %s", (_, viewport, colorScheme) => {
  it("everyone can read and reach it", async () => {
    const isPhone = viewport === PHONE;
    const { page, problems } = await withExample(undefined, isPhone ? phone : desk);
    await page.emulateMedia({ colorScheme });
    await choice(page, "aligned").click();
    await verdict(page);
    await card(page).scrollIntoViewIfNeeded();
    await card(page).evaluate((element) => element.scrollIntoView());
    await shot(page, `aligning-${isPhone ? "phone" : "desk"}-${colorScheme}`);
    if (isPhone) {
      for (const button of await card(page).getByRole("button").all())
        expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(44);
      const scrollWidth = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(scrollWidth).toBeLessThanOrEqual(viewport.width);
    }
    expect(await faults(page)).toEqual([]);
    expect(problems()).toEqual([]);
  });
});
