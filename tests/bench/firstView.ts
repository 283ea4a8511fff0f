import type { Browser } from "playwright-core";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { printRounds, withBuiltPage } from "./builtPage.ts";
import { middleOf } from "./measure.ts";
import { printColumns } from "./printColumns.ts";

/**
 * How long a first visit to the built page takes until there is something to read, and until all is there, from the start of the
 * navigation: a new browser context each time, nothing kept, no network in between. WELLSWEEP_BEFORE names the folder of another
 * build: both are visited in turn, and the one is told by the other.
 */
const VISITS = 5;
/** ms. */
const AIM = 2000;

const TIMED = {
  seen: { name: "text and fields seen", aim: { what: "first view of the built page", ms: AIM } },
  answered: { name: "verdict told", aim: { what: "first answer of the built page", ms: AIM } },
  drawn: { name: "stage drawn (in software)" },
} as const;

/** ms since the navigation began. */
type Visit = Readonly<Record<keyof typeof TIMED, number>>;

await withBuiltPage((browser, address) => {
  const before = process.env.WELLSWEEP_BEFORE;
  if (before !== undefined) return compared(browser, address, before);
  return printRounds("first visit", VISITS, TIMED, () => visit(browser, address));
});

/** Visits this build and one before it in turn, and prints the medians of both with their ratio. The first visit of each is not counted. */
async function compared(browser: Browser, address: string, folder: string): Promise<void> {
  const server = await serveFolder(folder);
  try {
    const all: { readonly before: Visit; readonly now: Visit }[] = [];
    for (let i = 0; i <= VISITS; i++)
      all.push({ before: await visit(browser, server.address), now: await visit(browser, address) });
    const counted = all.slice(1);
    printColumns([
      ["first visit", "before", "now", "ratio"],
      ...(Object.keys(TIMED) as (keyof Visit)[]).map((key) => {
        const [before, now] = (["before", "now"] as const).map((of) =>
          middleOf(counted.map((one) => one[of][key])),
        ) as [number, number];
        return [
          TIMED[key].name,
          `${Math.round(before)} ms`,
          `${Math.round(now)} ms`,
          (now / before).toFixed(2),
        ];
      }),
    ]);
  } finally {
    await server.close();
  }
}

async function visit(browser: Browser, address: string): Promise<Visit> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.addInitScript(() => {
    const seen: Record<string, number> = {};
    Object.assign(globalThis, { seen });
    // No function has a name in here: the runner would give it one by a helper that a page does not have.
    setInterval(() => {
      const now = performance.now();
      if (document.querySelector(".pose-sentence p")?.textContent) seen.seen ??= now;
      if (document.querySelector(".verdict .verdict-word:not([aria-hidden])")) seen.answered ??= now;
      if (document.querySelector(".axes-sketch")) seen.drawn ??= now;
    }, 4);
  });
  await page.goto(address, { waitUntil: "load" });
  await page.waitForFunction(
    () => Object.keys((globalThis as unknown as { seen: object }).seen).length === 3,
  );
  const seen = await page.evaluate(() => (globalThis as unknown as { seen: Visit }).seen);
  await context.close();
  return seen;
}
