import { chromium } from "playwright-core";
import { buildWorkbench } from "../../src/serve/buildWorkbench.ts";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { findBrowser } from "../browser/harness/findBrowser.ts";
import { printColumns } from "./printColumns.ts";
import { printTargets } from "./targets.ts";

/**
 * How long a first visit to the built page takes until there is something to read, and until all is there: a new
 * browser context each time, nothing kept, no network in between.
 */
const VISITS = 5;
/** ms. */
const AIM = 2000;

const server = await serveFolder(await buildWorkbench());
const found = await findBrowser();
const browser = await chromium.launch({
  executablePath: found.executablePath,
  args: [...found.args],
  env: { ...found.env },
});
try {
  const visits: Visit[] = [];
  // The first one starts the browser's own processes and is not counted.
  for (let i = 0; i <= VISITS; i++) visits.push(await visit());
  const counted = visits.slice(1);
  printColumns([
    ["first visit", ...counted.map((_, i) => String(i + 1)), "median"],
    ...(["seen", "answered", "drawn"] as const).map((what) => [
      { seen: "text and fields seen", answered: "verdict told", drawn: "stage drawn (in software)" }[what],
      ...counted.map((one) => `${Math.round(one[what])} ms`),
      `${Math.round(middleOf(counted.map((one) => one[what])))} ms`,
    ]),
  ]);
  console.log("times: wall clock from the start of the navigation; on a busy machine they are too long");
  printTargets([
    {
      what: "first view of the built page",
      found: middleOf(counted.map(({ seen }) => seen)),
      limit: { atMost: AIM },
      unit: "ms",
    },
    {
      what: "first answer of the built page",
      found: middleOf(counted.map(({ answered }) => answered)),
      limit: { atMost: AIM },
      unit: "ms",
    },
  ]);
} finally {
  await browser.close();
  await server.close();
}

/** ms since the navigation began. */
interface Visit {
  readonly seen: number;
  readonly answered: number;
  readonly drawn: number;
}

async function visit(): Promise<Visit> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.addInitScript(() => {
    const seen: Record<string, number> = {};
    Object.assign(globalThis, { seen });
    // No function has a name in here: the runner would give it one by a helper that a page does not have.
    setInterval(() => {
      const now = performance.now();
      if (document.querySelector(".pose-sentence p")?.textContent) seen.seen ??= now;
      if (document.querySelector(".verdict .verdict-word")) seen.answered ??= now;
      if (document.querySelector(".axes-sketch")) seen.drawn ??= now;
    }, 4);
  });
  await page.goto(server.address, { waitUntil: "load" });
  await page.waitForFunction(
    () => Object.keys((globalThis as unknown as { seen: object }).seen).length === 3,
  );
  const seen = await page.evaluate(() => (globalThis as unknown as { seen: Visit }).seen);
  await context.close();
  return seen;
}

function middleOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
