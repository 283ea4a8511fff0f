import type { Browser, Page } from "playwright-core";
import { printRounds, withBuiltPage } from "./builtPage.ts";

/**
 * How long the built page takes from the press that unfolds the fit chart of the plain truck, 30 × 30, until its first cells are
 * drawn and until all are: with as many workers as the page starts here, a second after the truck's own answers have come.
 */
const ROUNDS = Number(process.argv[2] ?? 3);
/** Thirty values each. */
const AXES = [
  { key: "wheel.backspacing", text: "3:5.9:0.1", table: null },
  { key: "tire.sectionWidth", text: "7:12.8:0.2", table: null },
];
const CELLS = 900;
/** Corners, middles of the sides and the middle. */
const FIRST = 9;

const TIMED = {
  first: {
    name: `first ${FIRST} cells drawn`,
    aim: { what: "first picture of a fit chart on the page", ms: 1000 },
  },
  whole: { name: `all ${CELLS} drawn`, aim: { what: "a fit chart of 30 × 30 on the page", ms: 10_000 } },
} as const;

/** ms since the press. */
type Drawn = Readonly<Record<keyof typeof TIMED, number>>;

await withBuiltPage((browser, address) =>
  printRounds("fit chart of the page, from the press", ROUNDS, TIMED, () => pressed(browser, address)),
);

async function pressed(browser: Browser, address: string): Promise<Drawn> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  try {
    const page = await context.newPage();
    await page.addInitScript(
      (axes) => localStorage.setItem("wellsweep chart axes", JSON.stringify(axes)),
      AXES,
    );
    await page.goto(`${address}/#choose`, { waitUntil: "load" });
    await page.locator(".verdict .verdict-word:not([aria-hidden])").waitFor();
    await page.locator(".axes-sketch").waitFor();
    await page.waitForTimeout(1000);
    return await drawnAfterPress(page);
  } finally {
    await context.close();
  }
}

function drawnAfterPress(page: Page): Promise<Drawn> {
  return page.evaluate(
    ([few, cells]) =>
      new Promise<Drawn>((resolve) => {
        const press = performance.now();
        let first = 0;
        const timer = setInterval(() => {
          const told = document.querySelectorAll(
            '.chart-grid td[data-sort]:not([data-sort="unfinished"])',
          ).length;
          if (told < few) return;
          // Drawn with the next picture of the page.
          requestAnimationFrame(() => {
            first ||= performance.now() - press;
            if (told < cells) return;
            clearInterval(timer);
            resolve({ first, whole: performance.now() - press });
          });
        }, 4);
        document.querySelector<HTMLElement>('[data-fold="chart"] > summary')!.click();
      }),
    [FIRST, CELLS] as const,
  );
}
