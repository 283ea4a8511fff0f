import type { Browser } from "playwright-core";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { withBuiltPage } from "./builtPage.ts";
import { DRAGGED_PAGE, drag, dragByKeys, dragByPointer, dragFrames, openDrawn, VIEWS } from "./drags.ts";
import { metricsOf, perDrag, startCounting, type Worked, workedOf } from "./mainThread.ts";
import { middleOf } from "./measure.ts";
import { printColumns } from "./printColumns.ts";

/**
 * What a drag of height or steering costs this build by what it costs another one, whose folder WELLSWEEP_BEFORE names: both are
 * dragged in turn in one run, by keys and pointer, and the middles of the turns are told with their ratio. What is worked on the
 * page's main thread is told in processor time; the picture, drawn in software elsewhere, by the clock, a frame.
 */
const TURNS = 5;
const WARM_UP = 1000;
const FRAMES = 30;

const WAYS = {
  "by keys held down": { drag: dragByKeys, count: 500 },
  "by the pointer": { drag: dragByPointer, count: 200 },
} as const;

const TOLD = {
  taskSeconds: "all of the main thread",
  scriptSeconds: "  of it scripts",
  layoutSeconds: "  of it style and layout",
} as const;

type Way = (typeof WAYS)[keyof typeof WAYS];
type Cost = Readonly<Record<keyof Worked, number>>;

const before = process.env.WELLSWEEP_BEFORE;
if (before === undefined) throw new Error("dragCost: WELLSWEEP_BEFORE must name the folder of another build");

await withBuiltPage(async (browser, address) => {
  const server = await serveFolder(before);
  try {
    const [then, now] = [await opened(browser, server.address), await opened(browser, address)];
    for (const [name, way] of Object.entries(WAYS)) {
      const all: { readonly before: Cost; readonly now: Cost }[] = [];
      for (let i = 0; i < TURNS; i++) all.push({ before: await then.turn(way), now: await now.turn(way) });
      printColumns([
        [`processor time a drag, ${name}`, "before", "now", "ratio"],
        ...(Object.keys(TOLD) as (keyof Worked)[]).map((what) => {
          const [was, is] = (["before", "now"] as const).map((of) =>
            middleOf(all.map((one) => one[of][what])),
          );
          return [TOLD[what], `${was!.toFixed(2)} ms`, `${is!.toFixed(2)} ms`, (is! / was!).toFixed(2)];
        }),
        ["all, least turn by least", "", "", leastRatio(all).toFixed(2)],
      ]);
      console.log();
    }
    const frames: { readonly before: readonly number[]; readonly now: readonly number[] }[] = [];
    for (let i = 0; i < TURNS; i++) frames.push({ before: await then.frames(), now: await now.frames() });
    printColumns([
      ["a frame dragged on and on, wall clock", "before", "now", "ratio"],
      ...Object.keys(VIEWS).map((view, at) => {
        const [was, is] = (["before", "now"] as const).map((of) =>
          middleOf(frames.map((one) => one[of][at]!)),
        );
        return [view, `${was!.toFixed(1)} ms`, `${is!.toFixed(1)} ms`, (is! / was!).toFixed(2)];
      }),
    ]);
  } finally {
    await server.close();
  }
});

function leastRatio(all: readonly { readonly before: Cost; readonly now: Cost }[]): number {
  const least = (of: "before" | "now") => Math.min(...all.map((one) => one[of].taskSeconds));
  return least("now") / least("before");
}

/** A build in a page of its own, warmed up. */
interface Opened {
  /** What a drag of one turn cost. */
  turn(way: Way): Promise<Cost>;
  /** ms a frame in each view. */
  frames(): Promise<readonly number[]>;
}

async function opened(browser: Browser, address: string): Promise<Opened> {
  const page = await browser.newPage(DRAGGED_PAGE);
  const session = await page.context().newCDPSession(page);
  await startCounting(session);
  await openDrawn(page, address);
  await drag(page, WARM_UP);
  return {
    async turn(way) {
      await page.bringToFront();
      const from = workedOf(await metricsOf(session));
      await way.drag(page, way.count);
      return perDrag(from, workedOf(await metricsOf(session)), way.count);
    },
    async frames() {
      await page.bringToFront();
      const all: number[] = [];
      for (const at of Object.values(VIEWS)) {
        await page.locator(".stage-bar .view-button").nth(at).click();
        all.push((await dragFrames(page, FRAMES)).onAndOn);
      }
      return all;
    },
  };
}
