import type { Page } from "playwright-core";
import { PLOT_KINDS } from "../../src/app/clear/plots/curveKinds.ts";
import { ROLL_KINDS } from "../../src/app/clear/plots/rollPlots.ts";
import { withBuiltPage } from "./builtPage.ts";
import { printColumns } from "./printColumns.ts";

/**
 * How long the curves beside the fields take to follow, painted: from a press of an arrow key in a field to the end of the frame that
 * shows the curves it leads to, in a window of 1440 × 900 at Choose, drawn in software. Four plots are docked, then
 * all there are, with the stage in view. WELLSWEEP_DIST names another build.
 */
const PRESSES = 30;
const FOUR = ["camber", "toe", "gap-steer", "scrub"];
const ALL = ["gap-steer", "gap-travel", ...PLOT_KINDS.map(({ id }) => id), ...ROLL_KINDS.map(({ id }) => id)];

await withBuiltPage(async (browser, address) => {
  const rows: string[][] = [];
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
    await page.locator(".curve-dock-plots path.plot-curve").first().waitFor({ state: "attached" });
    await page.locator('.verdict [aria-busy="false"]').waitFor();
    await page.getByRole("textbox", { name: "Pin angle" }).first().focus();
    const count = await page.locator(".curve-dock path.plot-curve").count();
    await follow(page, 4);
    const times = await follow(page, PRESSES);
    const at = (share: number) => `${times[Math.floor(share * (times.length - 1))]!.toFixed(1)} ms`;
    rows.push([`${docked.length} plots asked for, ${count} curves`, at(0.5), at(0.9), at(1)]);
    await context.close();
  }
  printColumns([["a key in a field, to the curves painted", "median", "nine of ten", "worst"], ...rows]);
  console.log("times: wall clock, from the key's own time to the first task after the frame that shows them");
});

/** Presses an arrow key so many times, each when the curves before are painted. @returns ms, in rising order */
async function follow(page: Page, presses: number): Promise<number[]> {
  // What compiles this file calls it by name around functions that have one.
  await page.evaluate("globalThis.__name = (named) => named");
  await page.evaluate(() => {
    const lines = () =>
      Array.from(document.querySelectorAll(".curve-dock path.plot-curve"), (path) =>
        path.getAttribute("d"),
      ).join();
    const told = { times: [] as number[], pressed: 0, shown: lines() };
    Object.assign(window, { followed: told });
    document.addEventListener("keydown", (event) => {
      told.pressed = event.timeStamp;
    });
    new MutationObserver(() => {
      const now = lines();
      if (now === told.shown || told.pressed === 0) return;
      told.shown = now;
      const from = told.pressed;
      told.pressed = 0;
      // The next frame paints them; the first task after it runs when that is done.
      requestAnimationFrame(() => {
        const after = new MessageChannel();
        after.port1.onmessage = () => told.times.push(performance.now() - from);
        after.port2.postMessage(null);
      });
    }).observe(document.querySelector(".curve-dock")!, { subtree: true, attributes: true, childList: true });
  });
  for (let i = 0; i < presses; i++) {
    await page.keyboard.press(i % 20 < 10 ? "ArrowUp" : "ArrowDown");
    await page.waitForFunction(
      (count) => (window as unknown as { followed: { times: number[] } }).followed.times.length > count,
      i,
    );
  }
  return page.evaluate(() =>
    (window as unknown as { followed: { times: number[] } }).followed.times.sort((a, b) => a - b),
  );
}
