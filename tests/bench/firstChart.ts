import { chromium, type Page } from "playwright-core";
import { buildWorkbench } from "../../src/serve/buildWorkbench.ts";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { findBrowser } from "../browser/harness/findBrowser.ts";
import { printColumns } from "./printColumns.ts";
import { printTargets } from "./targets.ts";

/**
 * How long the built page takes from the press that unfolds the fit chart of the plain truck, 30 × 30, until its first cells are
 * drawn and until all are: wall clock, with as many workers as the page starts here.
 */
const ROUNDS = Number(process.argv[2] ?? 3);
/** ms. */
const FIRST_AIM = 1000;
const ALL_AIM = 10_000;
/** Thirty values each. */
const AXES = [
  { key: "wheel.backspacing", text: "3:5.9:0.1", table: null },
  { key: "tire.sectionWidth", text: "7:12.8:0.2", table: null },
];
const CELLS = 900;

const server = await serveFolder(await buildWorkbench());
const found = await findBrowser();
const browser = await chromium.launch({
  executablePath: found.executablePath,
  args: [...found.args],
  env: { ...found.env },
});
try {
  const all: Drawn[] = [];
  // The first one starts the browser's own processes and is not counted.
  for (let i = 0; i <= ROUNDS; i++) all.push(await pressed());
  const counted = all.slice(1);
  printColumns([
    ["fit chart of the page, from the press", ...counted.map((_, i) => String(i + 1)), "median"],
    ...(["first", "whole"] as const).map((what) => [
      { first: "first cells drawn", whole: `all ${CELLS} drawn` }[what],
      ...counted.map((one) => `${Math.round(one[what])} ms`),
      `${Math.round(middleOf(counted.map((one) => one[what])))} ms`,
    ]),
  ]);
  console.log("times: wall clock; on a busy machine they are too long");
  printTargets([
    {
      what: "first picture of a fit chart on the page",
      found: middleOf(counted.map(({ first }) => first)),
      limit: { atMost: FIRST_AIM },
      unit: "ms",
    },
    {
      what: "a fit chart of 30 × 30 on the page",
      found: middleOf(counted.map(({ whole }) => whole)),
      limit: { atMost: ALL_AIM },
      unit: "ms",
    },
  ]);
} finally {
  await browser.close();
  await server.close();
}

/** ms since the press. */
interface Drawn {
  readonly first: number;
  readonly whole: number;
}

async function pressed(): Promise<Drawn> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  try {
    const page = await context.newPage();
    await page.addInitScript(
      (axes) => localStorage.setItem("wellsweep chart axes", JSON.stringify(axes)),
      AXES,
    );
    await page.goto(`${server.address}/#choose`, { waitUntil: "load" });
    await page.locator(".verdict .verdict-word").waitFor();
    await page.locator(".axes-sketch").waitFor();
    await page.waitForTimeout(1000);
    return await drawnAfterPress(page);
  } finally {
    await context.close();
  }
}

function drawnAfterPress(page: Page): Promise<Drawn> {
  return page.evaluate(
    (cells) =>
      new Promise<Drawn>((resolve) => {
        const press = performance.now();
        let first = 0;
        const timer = setInterval(() => {
          const told = document.querySelectorAll(
            '.chart-grid td[data-sort]:not([data-sort="unfinished"])',
          ).length;
          if (told === 0) return;
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
    CELLS,
  );
}

function middleOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
