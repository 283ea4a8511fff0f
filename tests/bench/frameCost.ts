import { chromium, type Page } from "playwright-core";
import { buildWorkbench } from "../../src/serve/buildWorkbench.ts";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { findBrowser } from "../browser/harness/findBrowser.ts";
import { printColumns } from "./printColumns.ts";

/**
 * What one frame of the stage costs, drawn in software in a window of 1024 × 768 while the steering is dragged: as a truck in
 * rubber and metal, and as the line drawing, which is how it was all drawn before. WELLSWEEP_DIST names another build.
 */
const FRAMES = 40;
/** Views by their places among the buttons. */
const VIEWS = { "three-quarter": 0, front: 1, "wheel well": 4 } as const;

const server = await serveFolder(process.env.WELLSWEEP_DIST ?? (await buildWorkbench()));
const found = await findBrowser();
const browser = await chromium.launch({
  executablePath: found.executablePath,
  args: [...found.args],
  env: { ...found.env },
});
try {
  const context = await browser.newContext({
    viewport: { width: 1024, height: 768 },
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  await page.goto(server.address);
  await page.locator(".axes-sketch").waitFor({ state: "attached" });
  await page.locator('.verdict [aria-busy="false"]').waitFor();
  const look = page.getByText("Units, look");
  const picture = page.locator("select", { hasText: "line drawing" });
  await look.click();
  const hasStyles = await picture.waitFor({ timeout: 3000 }).then(
    () => true,
    () => false,
  );
  await look.click();
  const rows: string[][] = [];
  for (const style of hasStyles ? ["rubber and metal", "line drawing"] : ["as this build draws"]) {
    if (hasStyles) {
      await look.click();
      await picture.selectOption({ label: style });
      await look.click();
    }
    const cells: string[] = [];
    for (const at of Object.values(VIEWS)) {
      await page.locator(".stage-bar .view-button").nth(at).click();
      await drag(page, 6);
      cells.push(`${(await drag(page, FRAMES)).toFixed(0)} ms`);
    }
    rows.push([style, ...cells]);
  }
  printColumns([["a frame of the stage, dragged, median", ...Object.keys(VIEWS)], ...rows]);
  console.log("times: wall clock from one frame to the next, all of the page's own work in it; in software");
} finally {
  await browser.close();
  await server.close();
}

/** Drags the steering, a step a frame. @returns median time from frame to frame, ms */
async function drag(page: Page, frames: number): Promise<number> {
  const times = await page.evaluate(async (count) => {
    const slide = document.querySelectorAll<HTMLInputElement>('.pose-controls input[type="range"]')[1]!;
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")!.set!;
    const gl = document.querySelector("canvas")!.getContext("webgl2")!;
    const out: number[] = [];
    const pixel = new Uint8Array(4);
    let before = 0;
    for (let i = 0; i <= count; i++) {
      set.call(slide, String(0.8 * Math.sin(i / 5)));
      slide.dispatchEvent(new Event("input", { bubbles: true }));
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      // A frame is over when a pixel of it can be read.
      gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
      const now = performance.now();
      if (i > 0) out.push(now - before);
      before = now;
    }
    return out.sort((a, b) => a - b);
  }, frames);
  return times[Math.floor(times.length / 2)]!;
}
