import { existsSync, readdirSync, readFileSync } from "node:fs";
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Locator, type Page } from "playwright-core";
import type { Rims } from "../../src/app/stage/drawing.ts";
import { buildWorkbench } from "../../src/serve/buildWorkbench.ts";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { findBrowser } from "../browser/harness/findBrowser.ts";
import { mapDrawn, stageDrawn, verdict } from "../browser/harness/reading.ts";
import { goTo, openTrucks } from "../browser/harness/stations.ts";

/** Takes the guides' pictures from the built page: `npm run pictures`, or those named after `--`. */

const FOLDER = new URL("../../public/docs/", import.meta.url);
const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };
/** Bytes. What a page of the guides may weigh a picture. */
const MOST = 300_000;

/** Worked trucks whose matter is seen best from the wheel well. */
const WELL_SHOWN: readonly string[] = ["bent-fender", "between-the-locks", "thin-margin"];

/** Readings of the short list, by their names in the list. */
const SHORT: readonly (readonly [RegExp, string])[] = [
  [/^Tire size/, "P235/70R15"],
  [/^Wheel center, up/, "13 1/4"],
  [/^Fender lip over the axle, up/, "31"],
  [/^Fender lip over the axle, out/, "36 1/4"],
  [/^Rim width/, "8"],
  [/^Backspacing/, "4 1/4"],
  [/^Hub-face/, "6 5/16"],
  [/^Lower ball joint to upper/, "10 5/8"],
  [/^Lower ball joint, up/, "8 1/2"],
  [/^Lower ball joint, out/, "26 3/8"],
  [/^Lower arm, front pivot, up/, "9 3/8"],
  [/^Lower arm, front pivot, out/, "10 5/8"],
];

const server = await serveFolder(await buildWorkbench());
const found = await findBrowser();
const browser = await chromium.launch({
  executablePath: found.executablePath,
  args: [...found.args],
  env: { ...found.env },
});
try {
  const asked = process.argv.slice(2);
  const all = [
    overview,
    builder,
    builderOnPhone,
    salesperson,
    designer,
    order,
    workedTrucks,
    worksheet,
    worksheetOnPhone,
  ];
  for (const take of all) if (asked.length === 0 || asked.includes(take.name)) await take(browser);
} finally {
  await browser.close();
  await server.close();
}

async function overview(by: Browser): Promise<void> {
  const page = await opened(by, DESK);
  await page.getByRole("button", { name: "Go there" }).click();
  await settled(page);
  await keep("workbench", page);
}

async function builder(by: Browser): Promise<void> {
  const page = await opened(by, DESK);
  await goTo(page, "Measure");
  const setup = page.getByRole("region", { name: "Setup", exact: true });
  for (const title of ["Wheel", "Tire"]) {
    await setup.getByRole("heading", { name: title, exact: true }).click();
  }
  await setup.getByRole("textbox", { name: "Tire size" }).fill("P255/70R15");
  await setup.getByRole("textbox", { name: "Backspacing" }).fill("4 3/4");
  await setup.getByRole("button", { name: "What is Backspacing?" }).click();
  await setup.getByRole("heading", { name: "Wheel", exact: true }).scrollIntoViewIfNeeded();
  await setup.evaluate((panel) => {
    const wheel = panel.querySelectorAll(".group")[1]!;
    panel.scrollTop += wheel.getBoundingClientRect().top - panel.getBoundingClientRect().top;
  });
  await verdict(page);
  await keep("guide-builder-setup", setup);
  await goTo(page, "Clear");
  await toFullLock(page);
  await keep("guide-builder-map", page.locator(".map"));
}

async function builderOnPhone(by: Browser): Promise<void> {
  const page = await opened(by, PHONE, true);
  await toFullLock(page);
  await page.locator(".stage-panel").evaluate((panel) => panel.scrollIntoView());
  await settled(page);
  await keep("guide-builder-phone", page);
}

async function salesperson(by: Browser): Promise<void> {
  const page = await opened(by, { width: 1180, height: 820 });
  await goTo(page, "Show");
  await page.getByRole("button", { name: "Counter view" }).click();
  await page.waitForFunction(() => {
    const told = [".counter-sentences", ".counter-why"].map(
      (one) => document.querySelector(one)?.textContent ?? "…",
    );
    return !/…|being worked out|still being looked for/.test(told.join(" "));
  });
  await keep("guide-salesperson-counter", page);
  await page.getByRole("dialog").getByRole("button", { name: "Print sheet" }).click();
  await page.getByRole("textbox", { name: "Shop" }).fill("Fern Street shop");
  await page.locator(".sheet-table svg").first().waitFor();
  // The whole page at once.
  await page.setViewportSize({ width: 1180, height: 1300 });
  await keep("guide-salesperson-sheet", page.locator(".sheet-page"));
}

async function designer(by: Browser): Promise<void> {
  const page = await opened(by, DESK);
  await page.locator(".plots").scrollIntoViewIfNeeded();
  await page.locator(".plots summary").filter({ hasText: "Lay over" }).click();
  await page.locator(".plots").getByLabel("steeper pin").check();
  await page.keyboard.press("Escape");
  // Four rows of them show what they are.
  await page.addStyleTag({ content: ".plots-grid > .plot-tile:nth-child(n + 17) { display: none; }" });
  await keep("guide-designer-plots", page.locator(".plots"));
  await goTo(page, "Choose");
  await page.locator(".fan > summary").click();
  await page.getByLabel("from", { exact: true }).fill("6");
  await page.getByLabel("to", { exact: true }).fill("10");
  await page.waitForFunction(
    () =>
      [...document.querySelectorAll(".fan tbody tr")].filter((row) => row.querySelector("svg") !== null)
        .length === 5,
  );
  // The whole fan at once, without what lies along the foot.
  await page.locator(".curve-dock").locator("button").filter({ hasText: "Curves" }).first().click();
  await page.setViewportSize({ width: DESK.width, height: 1400 });
  await keep("guide-designer-fan", page.locator(".fan"));
}

/** The ordered knuckle at Build: what was asked for, what it bears, what came off the jig. */
async function order(by: Browser): Promise<void> {
  const page = await opened(by, DESK);
  const file = fileURLToPath(new URL("../../shared/ordered-knuckle.json", import.meta.url));
  await page.locator('input[type="file"]').first().setInputFiles(file);
  await page.locator(".heading-setup").filter({ hasText: "on order" }).waitFor();
  await goTo(page, "Build");
  for (const [way, told, name] of [
    ["Order", ".fold[data-fold='order'] input", "build-order"],
    ["Loads", ".share-strip", "build-loads"],
    ["As built", ".fold[data-fold='asBuilt'] input", "build-as-built"],
  ] as const) {
    await page.getByRole("navigation", { name: "On this page" }).getByRole("button", { name: way }).click();
    await page.locator(told).first().waitFor();
    await stageDrawn(page);
    // What a way leads to stays on top while it fills.
    await page.waitForTimeout(2000);
    await keep(name, page);
  }
}

/** Each worked truck where it comes to it, in the picture alone. */
async function workedTrucks(by: Browser): Promise<void> {
  const folder = fileURLToPath(new URL("../../shared/worked/", import.meta.url));
  const page = await opened(by, { width: 1180, height: 860 });
  for (const name of readdirSync(folder).flatMap((file) => /^(.*)\.json$/.exec(file)?.slice(1) ?? [])) {
    const { name: title } = JSON.parse(readFileSync(join(folder, `${name}.json`), "utf8"));
    const scan = join(folder, `${name}.stl`);
    const files = [join(folder, `${name}.json`), ...(existsSync(scan) ? [scan] : [])];
    await page.locator('input[type="file"]').first().setInputFiles(files);
    await page.locator(".heading-setup").filter({ hasText: title }).waitFor();
    await verdict(page);
    const go = page.getByRole("button", { name: "Go there" });
    if (await go.isVisible()) await go.click();
    const view = WELL_SHOWN.includes(name) ? "Wheel well" : "Front";
    await page.getByRole("button", { name: view, exact: true }).click();
    await settled(page);
    await keep(`worked-${name}`, page.locator(".stage-panel"));
  }
}

/** What the worksheet's readings say, and a lip along a level stick on a truck that is a guess in parts. */
async function worksheet(by: Browser): Promise<void> {
  const page = await opened(by, { width: 1180, height: 760 });
  const measured = fileURLToPath(new URL("../../shared/tape-measured.json", import.meta.url));
  await page.locator('input[type="file"]').first().setInputFiles(measured);
  await goTo(page, "Measure");
  await page.locator(".suspect").scrollIntoViewIfNeeded();
  await keep("worksheet-doubt", page);
  await startOwn(page);
  for (const [name, is] of SHORT) {
    await page.getByRole("button", { name }).click();
    await page.locator(".reading-input").fill(is);
    await page.keyboard.press("Enter");
  }
  await page.locator(".gauge-ways > summary").click();
  await page.getByRole("button", { name: /^Fender lip along a level stick/ }).click();
  await verdict(page);
  await stageDrawn(page);
  await page.locator(".reading-card").evaluate((card) => card.scrollIntoView({ block: "start" }));
  await keep("worksheet-stick", page);
}

async function worksheetOnPhone(by: Browser): Promise<void> {
  const page = await opened(by, PHONE, true);
  await startOwn(page);
  await page.getByRole("button", { name: /^Lower ball joint, up/ }).click();
  await page.locator(".reading-input").fill("8 1/2");
  await page.locator(".reading-card").evaluate((card) => card.scrollIntoView({ block: "start" }));
  await keep("worksheet-phone", page);
}

async function startOwn(page: Page): Promise<void> {
  await openTrucks(page);
  await page.getByRole("button", { name: /^Start your own truck by worksheet/ }).click();
  await page.getByRole("button", { name: /^12 readings/ }).click();
  await page.locator(".reading-input").waitFor();
}

/** The workbench in a new context, light, with its answers, map and stage. */
async function opened(by: Browser, viewport: typeof DESK, isPhone = false): Promise<Page> {
  const context = await by.newContext({
    viewport,
    colorScheme: "light",
    reducedMotion: "reduce",
    isMobile: isPhone,
    hasTouch: isPhone,
    // A page of the guides is no wider than this leaves it.
    deviceScaleFactor: isPhone ? 1 : 0.75,
  });
  const page = await context.newPage();
  // However busy the machine: no picture of a search that was cut short.
  await page.addInitScript(() => {
    globalThis.wellsweepSeconds = 100;
    globalThis.wellsweepRims = "always" satisfies Rims;
  });
  await page.goto(server.address, { waitUntil: "load" });
  await settled(page);
  return page;
}

async function settled(page: Page): Promise<void> {
  await verdict(page);
  await mapDrawn(page);
  await stageDrawn(page);
}

/** Aired out, wheels hard to the left. */
async function toFullLock(page: Page): Promise<void> {
  await page.getByRole("button", { name: "aired out", exact: true }).click();
  const steering = page.getByRole("slider", { name: "Steering", exact: true });
  await steering.focus();
  await page.keyboard.press("End");
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await settled(page);
}

/** @throws Error when the picture is too heavy for a page. */
async function keep(name: string, what: Page | Locator): Promise<void> {
  const picture = await what.screenshot({ animations: "disabled" });
  if (picture.length > MOST) throw new Error(`${name}: ${picture.length} bytes, at most ${MOST}`);
  const path = fileURLToPath(new URL(`${name}.png`, FOLDER));
  await writeFile(path, picture);
  console.log(`wrote ${path}: ${picture.length} bytes`);
}
