import { type Browser, chromium } from "playwright-core";
import { buildWorkbench } from "../../src/serve/buildWorkbench.ts";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { findBrowser } from "../browser/harness/findBrowser.ts";
import { middleOf } from "./measure.ts";
import { printColumns } from "./printColumns.ts";
import { printTargets } from "./targets.ts";

/** Gives a browser and the address of the built page, and ends both after. WELLSWEEP_DIST names another build. */
export async function withBuiltPage(
  work: (browser: Browser, address: string) => Promise<void>,
): Promise<void> {
  const server = await serveFolder(process.env.WELLSWEEP_DIST ?? (await buildWorkbench()));
  try {
    const found = await findBrowser();
    const browser = await chromium.launch({
      executablePath: found.executablePath,
      args: [...found.args],
      env: { ...found.env },
    });
    try {
      await work(browser, server.address);
    } finally {
      await browser.close();
    }
  } finally {
    await server.close();
  }
}

/** What is timed of a page: how it is called in the table, and, where it has an aim, in the list of targets. */
export interface Timed {
  readonly name: string;
  readonly aim?: { readonly what: string; readonly ms: number };
}

/**
 * Times a page over and over, prints each round and the medians, then the targets. The first round, which starts the browser's own
 * processes, is not counted.
 * @param round ms by the names of `timed`
 */
export async function printRounds<K extends string>(
  title: string,
  rounds: number,
  timed: Readonly<Record<K, Timed>>,
  round: () => Promise<Readonly<Record<K, number>>>,
): Promise<void> {
  const all: Readonly<Record<K, number>>[] = [];
  for (let i = 0; i <= rounds; i++) all.push(await round());
  const counted = all.slice(1);
  const rows = (Object.entries(timed) as [K, Timed][]).map(([key, { name, aim }]) => {
    const times = counted.map((one) => one[key]);
    return { name, aim, times, median: middleOf(times) };
  });
  printColumns([
    [title, ...counted.map((_, i) => String(i + 1)), "median"],
    ...rows.map(({ name, times, median }) => [
      name,
      ...[...times, median].map((ms) => `${Math.round(ms)} ms`),
    ]),
  ]);
  console.log("times: wall clock; on a busy machine they are too long");
  printTargets(
    rows.flatMap(({ aim, median }) =>
      aim ? [{ what: aim.what, found: median, limit: { atMost: aim.ms }, unit: "ms" }] : [],
    ),
  );
}
