import type { Page } from "playwright-core";
import { PLOT_KINDS } from "../../src/app/clear/plots/curveKinds.ts";
import { ROLL_KINDS } from "../../src/app/clear/plots/rollPlots.ts";
import { withBuiltPage } from "./builtPage.ts";
import { printColumns } from "./printColumns.ts";
import { printTargets, type Target } from "./targets.ts";

/**
 * How long the curves beside the fields take to follow, painted: from the event of an arrow key in a field to the first task after
 * the frame that shows a curve it leads to, of those that are in sight, in a window of 1440 × 900 at Choose, drawn in software, with
 * the stage in view. Four plots are docked, then all there are. Keys come as soon as the curves before are painted, then four a
 * second, so that the rest of the page has followed each. Beside it, in the same page, a letter into a plain field of React's that
 * nothing follows from, measured alike. WELLSWEEP_DIST names another build.
 */
const PRESSES = 30;
/** ms. */
const AIM = 50;
/** ms from the curves painted to the next key. */
const PACES = { "as soon as painted": 0, "four a second": 250 } as const;
const CURVES = ".curve-dock-plots";
const FOUR = ["camber", "toe", "scrub", "gap-steer"];
const ALL = ["gap-steer", "gap-travel", ...PLOT_KINDS.map(({ id }) => id), ...ROLL_KINDS.map(({ id }) => id)];

await withBuiltPage(async (browser, address) => {
  const rows: string[][] = [];
  const targets: Target[] = [];
  for (const docked of [FOUR, ALL]) {
    const context = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      reducedMotion: "reduce",
    });
    const page = await context.newPage();
    await page.goto(address);
    await page.evaluate((ids) => {
      localStorage.setItem("wellsweep plots", JSON.stringify({ docked: ids, isDockOpen: true }));
      localStorage.setItem("wellsweep fold fields", "open");
    }, docked);
    await page.goto(`${address}/?again#choose`);
    await page.locator(`${CURVES} path.plot-curve`).first().waitFor({ state: "attached" });
    await page.locator('.verdict [aria-busy="false"]').waitFor();
    await page.locator(".axes-sketch").waitFor({ state: "attached" });
    const plain = await plainLetters(page);
    await page.getByRole("textbox", { name: "Pin angle" }).first().focus();
    await follow(page, 4, 250);
    for (const [pace, pause] of Object.entries(PACES)) {
      const { times, inSight, all } = await follow(page, PRESSES, pause);
      const what = `${docked.length} plots, ${inSight} of ${all} curves in sight, keys ${pace}`;
      const by = `${(at(times, 0.5) / at(plain, 0.5)).toFixed(1)} ×`;
      rows.push([what, ...[0.5, 0.9, 1].map((share) => `${at(times, share).toFixed(1)} ms`), by]);
      targets.push({ what, found: at(times, 0.5), limit: { atMost: AIM }, unit: "ms" });
    }
    rows.push([
      "  a letter into a plain field there",
      ...[0.5, 0.9, 1].map((share) => `${at(plain, share).toFixed(1)} ms`),
      "1 ×",
    ]);
    await context.close();
  }
  printColumns([
    ["a key in a field, to its curves painted", "median", "nine of ten", "worst", "by a plain key"],
    ...rows,
  ]);
  console.log("times: wall clock, from the key's own time to the first task after the frame that shows them");
  printTargets(targets);
});

/** The one at a share of the way through times in rising order. */
function at(times: readonly number[], share: number): number {
  return times[Math.floor(share * (times.length - 1))]!;
}

interface Followed {
  readonly times: readonly number[];
  /** Curves, and those of them that can be seen. */
  readonly inSight: number;
  readonly all: number;
}

/** Presses an arrow key so many times, each `pause` ms after the curves before are painted. Times in rising order, ms. */
async function follow(page: Page, presses: number, pause: number): Promise<Followed> {
  const press = (i: number) => page.keyboard.press(i % 20 < 10 ? "ArrowUp" : "ArrowDown");
  await timed(page, CURVES, "path.plot-curve", "d");
  const times = await pressed(page, presses, pause, press);
  const [inSight, all] = await page.evaluate((of) => {
    const told = (window as unknown as { followed: { inSight: () => Element[] } }).followed;
    return [told.inSight().length, document.querySelectorAll(`${of} path.plot-curve`).length] as const;
  }, CURVES);
  return { times, inSight, all };
}

/** The same of letters into a field that nothing but React's own state of it follows from. */
async function plainLetters(page: Page): Promise<readonly number[]> {
  await page.locator(".variants-new input").focus();
  await timed(page, ".variants-new", "input", "value");
  return pressed(page, PRESSES, 0, () => page.keyboard.press("x"));
}

/** Presses keys, and waits until what follows from each is painted. */
async function pressed(page: Page, presses: number, pause: number, press: (i: number) => Promise<void>) {
  for (let i = 0; i < presses; i++) {
    await press(i);
    await page.waitForFunction(
      (count) => (window as unknown as { followed: { times: number[] } }).followed.times.length > count,
      i,
    );
    if (pause > 0) await page.waitForTimeout(pause);
  }
  return page.evaluate(() => {
    const { times, stop } = (window as unknown as { followed: { times: number[]; stop: () => void } })
      .followed;
    stop();
    return times.sort((a, b) => a - b);
  });
}

/** From now on has the page note, of each key, the time until an attribute of elements in sight that it changed is painted. */
async function timed(page: Page, within: string, selector: string, attribute: string): Promise<void> {
  // What compiles this file calls it by name around functions that have one.
  await page.evaluate("globalThis.__name = (named) => named");
  await page.evaluate(
    ([root, of, name]) => {
      const around = document.querySelector(root!)!;
      const { left, right } = around.getBoundingClientRect();
      const holder = (element: Element) => element.closest("svg") ?? element;
      const elements = () => Array.from(document.querySelectorAll(`${root} ${of}`));
      // Looked at once: what asks for a place has the page laid out.
      const seen = new Set(
        elements()
          .map(holder)
          .filter((element) => {
            const box = element.getBoundingClientRect();
            // Less than this at the edge is its margin.
            return box.right > left + 40 && box.left < right - 40;
          }),
      );
      const inSight = () => elements().filter((element) => seen.has(holder(element)));
      const lines = () =>
        inSight()
          .map((element) => element.getAttribute(name!))
          .join();
      const note = (event: KeyboardEvent) => {
        told.pressed = event.timeStamp;
      };
      const told = {
        times: [] as number[],
        pressed: 0,
        shown: lines(),
        inSight,
        stop() {
          document.removeEventListener("keydown", note, true);
          observer.disconnect();
        },
      };
      Object.assign(window, { followed: told });
      document.addEventListener("keydown", note, true);
      const observer = new MutationObserver(() => {
        const now = lines();
        if (now === told.shown) return;
        told.shown = now;
        const from = told.pressed;
        told.pressed = 0;
        // Of no key: the rest of the page, that followed.
        if (from === 0) return;
        // The next frame paints them; the first task after it runs when that is done.
        requestAnimationFrame(() => {
          const after = new MessageChannel();
          after.port1.onmessage = () => told.times.push(performance.now() - from);
          after.port2.postMessage(null);
        });
      });
      observer.observe(around, { subtree: true, attributes: true, childList: true });
    },
    [within, selector, attribute],
  );
}
