import type { Locator, Page } from "playwright-core";
import { withBuiltPage } from "./builtPage.ts";
import { type Held, heldBy } from "./heldMemory.ts";
import { printColumns } from "./printColumns.ts";
import { printTargets } from "./targets.ts";

/**
 * What ten thousand drags leave behind: the built workbench in a real browser, moved by real input, looked at
 * after every thousand once everything that can be thrown away has been.
 *
 * Arrow keys held down on the controls make nineteen of twenty pose changes, the pointer the rest: the browser
 * hands on pointer moves only once a frame. A first thousand fills what is kept on purpose (caches, compiled
 * code).
 */
const WARM_UP = 1000;
const DRAGS = 10_000;
const AT_ONCE = 1000;
const POINTER_SHARE = 0.05;

/** KiB per 1,000 drags, 10 bytes a drag: the smallest object takes 12, so one kept a drag shows. */
const HEAP_NOISE = 10;
/** One object in a hundred drags: caches that fill late, code that is compiled late. */
const OBJECT_NOISE = DRAGS / 100;

await withBuiltPage(async (browser, address) => {
  const page = await browser.newPage({ viewport: { width: 900, height: 600 }, reducedMotion: "reduce" });
  const held = await heldBy(page);
  await page.goto(address, { waitUntil: "load" });
  await page.locator(".stage canvas").waitFor();
  await page.locator('.verdict [aria-busy="false"]').waitFor();

  await drag(page, WARM_UP);
  const looks: Held[] = [await held()];
  for (let done = 0; done < DRAGS; done += AT_ONCE) {
    await drag(page, AT_ONCE);
    looks.push(await held());
  }
  report(looks);
});

/** Moves height and steering to and fro by keys and pointer, so many pose changes in all. */
async function drag(page: Page, count: number): Promise<void> {
  const byPointer = Math.round(count * POINTER_SHARE);
  const byKeys = count - byPointer;
  for (const [name, share] of [
    ["Travel", 0.5],
    ["Steering", 0.5],
  ] as const) {
    const slider = page.getByRole("slider", { name, exact: true });
    await slider.focus();
    await pressInTurn(slider, Math.round(byKeys * share));
    const box = await slider.boundingBox();
    if (box === null) throw new Error(`memory: the ${name} control is not on the page`);
    const y = box.y + 0.4 * box.height;
    await page.mouse.move(box.x + 0.5 * box.width, y);
    await page.mouse.down();
    const moves = Math.round(byPointer * share);
    for (let i = 0; i < moves; i++) {
      await page.mouse.move(box.x + (0.5 + 0.3 * Math.sin((12 * Math.PI * i) / moves)) * box.width, y);
    }
    await page.mouse.up();
  }
}

/** Ten steps one way, ten the other, each way held down: never as far as an end, where nothing would change. */
async function pressInTurn(slider: Locator, count: number): Promise<void> {
  const { keyboard } = slider.page();
  let before = await slider.inputValue();
  for (let done = 0; done < count; done += 10) {
    const key = (done / 10) % 2 === 0 ? "ArrowRight" : "ArrowLeft";
    await Promise.all(Array.from({ length: Math.min(10, count - done) }, () => keyboard.down(key)));
    await keyboard.up(key);
    const after = await slider.inputValue();
    if (after === before) throw new Error(`memory: ${key} leaves the control at ${before}`);
    before = after;
  }
}

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
  const perDrag = (what: "taskSeconds" | "scriptSeconds" | "layoutSeconds") =>
    `${((1000 * (last[what] - first![what])) / DRAGS).toFixed(2)} ms`;
  console.log(
    `main thread, processor time a drag, drawing (in software) included: ${perDrag("taskSeconds")}, of them scripts ${perDrag("scriptSeconds")}, style and layout ${perDrag("layoutSeconds")}`,
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
