import { withBuiltPage } from "./builtPage.ts";
import { DRAGGED_PAGE, drag, openDrawn } from "./drags.ts";
import { type Held, heldBy } from "./heldMemory.ts";
import { perDrag, type Worked } from "./mainThread.ts";
import { printColumns } from "./printColumns.ts";
import { printTargets } from "./targets.ts";

/**
 * What ten thousand drags leave behind: the built workbench in a real browser, moved by real input, looked at
 * after every thousand once everything that can be thrown away has been.
 * A first thousand fills what is kept on purpose (caches, compiled code).
 */
const WARM_UP = 1000;
const DRAGS = 10_000;
const AT_ONCE = 1000;

/** KiB per 1,000 drags, 10 bytes a drag: the smallest object takes 12, so one kept a drag shows. */
const HEAP_NOISE = 10;
/** One object in a hundred drags: caches that fill late, code that is compiled late. */
const OBJECT_NOISE = DRAGS / 100;

await withBuiltPage(async (browser, address) => {
  const page = await browser.newPage(DRAGGED_PAGE);
  const held = await heldBy(page);
  await openDrawn(page, address);

  await drag(page, WARM_UP);
  // Looked at when all that follows the pose is told: answers that are on their way are part of the page, too.
  const look = async () => {
    await page.locator('.map-limits[aria-busy="false"]').waitFor();
    return held();
  };
  const looks: Held[] = [await look()];
  for (let done = 0; done < DRAGS; done += AT_ONCE) {
    await drag(page, AT_ONCE);
    looks.push(await look());
  }
  report(looks);
});

function report(looks: readonly Held[]): void {
  const [first] = looks;
  const last = looks.at(-1)!;
  printColumns([
    ["drags", "heap", "objects", "DOM nodes", "listeners", "geometries", "textures", "shaders"],
    ...looks.map((look, i) => [
      String(i * AT_ONCE),
      `${(look.heapBytes / 2 ** 20).toFixed(3)} MiB`,
      String(look.objects),
      String(look.nodes),
      String(look.listeners),
      String(look.geometries),
      String(look.textures),
      String(look.programs),
    ]),
  ]);
  const cost = perDrag(first!, last, DRAGS);
  const ms = (what: keyof Worked) => `${cost[what].toFixed(2)} ms`;
  console.log(
    `main thread, processor time a drag, drawing (in software) included: ${ms("taskSeconds")}, of them scripts ${ms("scriptSeconds")}, style and layout ${ms("layoutSeconds")}`,
  );
  console.log();
  printTargets([
    {
      what: "heap grown per 1,000 drags (line through all looks)",
      found: (1000 * slopeOf(looks.map(({ heapBytes }) => heapBytes))) / AT_ONCE / 1024,
      limit: { atMost: HEAP_NOISE },
      unit: "KiB",
    },
    {
      what: `objects grown over ${DRAGS} drags`,
      found: last.objects - first!.objects,
      limit: { atMost: OBJECT_NOISE },
      unit: "",
    },
    ...(["nodes", "listeners", "geometries", "textures", "programs"] as const).map((what) => ({
      what: `${what} grown over ${DRAGS} drags`,
      found: last[what] - first![what],
      limit: { atMost: 0 },
      unit: "",
    })),
  ]);
}

/** Slope of the least squares line through values at 0, 1, 2, … */
function slopeOf(values: readonly number[]): number {
  const middle = (values.length - 1) / 2;
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  const rise = values.reduce((sum, v, i) => sum + (i - middle) * (v - mean), 0);
  return rise / values.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
}
