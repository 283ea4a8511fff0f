import { type Browser, chromium } from "playwright-core";
import type { Rims } from "../../src/app/stage/drawing.ts";
import { buildWorkbench } from "../../src/serve/buildWorkbench.ts";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { findBrowser } from "../browser/harness/findBrowser.ts";
import { dragFrames, type FrameCost, VIEWS } from "./drags.ts";
import { printColumns } from "./printColumns.ts";
import { printTargets } from "./targets.ts";

/**
 * What one frame of the stage costs, drawn in software in a window of 1024 × 768 while the steering is dragged: as a truck in
 * rubber and metal, and as the line drawing; as the page draws it where there is no graphics card (rims smooth at rest alone),
 * and with rims smooth in every frame, which is the saving turned off. WELLSWEEP_DIST names another build.
 */
const FRAMES = 40;
/** ms: fifteen frames a second. */
const AIM = 1000 / 15;

/** How the page itself is put together: as a browser without a graphics card does it, or through WebGL in software too. */
const COMPOSED = { "by the processor": ["--disable-gpu-compositing"], "through WebGL": [] } as const;

const server = await serveFolder(process.env.WELLSWEEP_DIST ?? (await buildWorkbench()));
const found = await findBrowser();
try {
  for (const [composed, args] of Object.entries(COMPOSED)) {
    const browser = await chromium.launch({
      executablePath: found.executablePath,
      args: [...found.args, ...args],
      env: { ...found.env },
    });
    try {
      await measure(browser, composed);
    } finally {
      await browser.close();
    }
  }
  console.log("waited for: wall clock from one frame to the next, at least two beats of the screen (33 ms)");
  console.log("on and on: wall clock of the whole drag by its frames");
} finally {
  await server.close();
}

async function measure(browser: Browser, composed: string): Promise<void> {
  const saved = await costs(browser, undefined);
  const whole = await costs(browser, "always");
  for (const [of, what] of [
    ["waited", "waited for"],
    ["onAndOn", "on and on"],
  ] as const) {
    const row = (name: string, all: readonly FrameCost[]) => [
      name,
      ...all.map((one) => `${one[of].toFixed(0)} ms`),
    ];
    printColumns([
      [`a frame dragged, ${what}; page put together ${composed}`, ...Object.keys(VIEWS)],
      ...[...saved].flatMap(([style, all]) => [
        row(`${style}, rims smooth at rest`, all),
        row(`${style}, rims always smooth`, whole.get(style)!),
        ["  the one by the other", ...all.map((one, i) => (one[of] / whole.get(style)![i]![of]).toFixed(2))],
      ]),
    ]);
    console.log();
  }
  printTargets(
    [...saved].map(([style, all]) => ({
      what: `a frame dragged on and on, slowest view, ${style}, page put together ${composed}`,
      found: Math.max(...all.map(({ onAndOn }) => onAndOn)),
      limit: { atMost: AIM },
      unit: "ms",
    })),
  );
}

/** FrameCosts by style of picture, then view. @param rims undefined = as the page decides */
async function costs(browser: Browser, rims: Rims | undefined): Promise<Map<string, FrameCost[]>> {
  const context = await browser.newContext({
    viewport: { width: 1024, height: 768 },
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  await page.addInitScript((given) => {
    globalThis.wellsweepRims = given;
  }, rims);
  await page.goto(server.address);
  await page.locator(".axes-sketch").waitFor({ state: "attached" });
  await page.locator('.verdict [aria-busy="false"]').waitFor();
  const look = page.getByText("Units, look");
  const picture = page.locator("select", { hasText: "line drawing" });
  const known = new Map<string, FrameCost[]>();
  for (const style of ["rubber and metal", "line drawing"]) {
    await look.click();
    await picture.selectOption({ label: style });
    await look.click();
    const all: FrameCost[] = [];
    for (const at of Object.values(VIEWS)) {
      await page.locator(".stage-bar .view-button").nth(at).click();
      await dragFrames(page, 6);
      all.push(await dragFrames(page, FRAMES));
    }
    known.set(style, all);
  }
  await context.close();
  return known;
}
