import type { ElementHandle, Page } from "playwright-core";

const POINTER_SHARE = 0.05;

/** A window with the picture, a verdict and the controls in it. */
export const DRAGGED_PAGE = { viewport: { width: 900, height: 600 }, reducedMotion: "reduce" } as const;

/** Opens the built workbench and waits until its truck is drawn and its verdict told. */
export async function openDrawn(page: Page, address: string): Promise<void> {
  await page.goto(address, { waitUntil: "load" });
  await page.locator(".stage canvas").waitFor();
  await page.locator('.verdict [aria-busy="false"]').waitFor();
}

/**
 * Moves height and steering of the built workbench to and fro, so many pose changes in all: arrow keys held down on the controls
 * make nineteen of twenty, the pointer the rest, as the browser hands on pointer moves only once a frame.
 */
export async function drag(page: Page, count: number): Promise<void> {
  const byPointer = Math.round(count * POINTER_SHARE);
  await dragByKeys(page, count - byPointer);
  await dragByPointer(page, byPointer);
}

/** Ten steps one way, ten the other, each way held down: never as far as an end, where nothing would change. */
export async function dragByKeys(page: Page, count: number): Promise<void> {
  for (const slider of await sliders(page)) {
    await slider.focus();
    let before = await slider.inputValue();
    for (let done = 0; done < count / 2; done += 10) {
      const key = (done / 10) % 2 === 0 ? "ArrowRight" : "ArrowLeft";
      const presses = Math.min(10, Math.round(count / 2) - done);
      await Promise.all(Array.from({ length: presses }, () => page.keyboard.down(key)));
      await page.keyboard.up(key);
      const after = await slider.inputValue();
      if (after === before) throw new Error(`drag: ${key} leaves the control at ${before}`);
      before = after;
    }
  }
}

/** To and fro over six tenths of each control. */
export async function dragByPointer(page: Page, count: number): Promise<void> {
  for (const slider of await sliders(page)) {
    const box = await slider.boundingBox();
    if (box === null) throw new Error("drag: a control is not on the page");
    const y = box.y + 0.4 * box.height;
    await page.mouse.move(box.x + 0.5 * box.width, y);
    await page.mouse.down();
    const moves = Math.round(count / 2);
    for (let i = 0; i < moves; i++) {
      await page.mouse.move(box.x + (0.5 + 0.3 * Math.sin((12 * Math.PI * i) / moves)) * box.width, y);
    }
    await page.mouse.up();
  }
}

/** Height and steering, found once: looking for them by name costs the page as much as a drag. */
async function sliders(page: Page): Promise<ElementHandle[]> {
  return Promise.all(
    ["Travel", "Steering"].map(async (name) => {
      const slider = await page.getByRole("slider", { name, exact: true }).elementHandle();
      return slider!;
    }),
  );
}

/** Views by their places among the buttons. */
export const VIEWS = { "three-quarter": 0, front: 1, "wheel well": 4 } as const;

/** What one frame took while the steering is dragged. */
export interface FrameCost {
  /** ms from one frame to the next, each waited for until a pixel of it can be read. */
  readonly waited: number;
  /** ms a frame, dragged on and on. */
  readonly onAndOn: number;
}

/** Drags the steering, a step a frame: first each waited for, then on and on. */
export async function dragFrames(page: Page, frames: number): Promise<FrameCost> {
  return page.evaluate(async (count) => {
    const slide = document.querySelectorAll<HTMLInputElement>('.pose-controls input[type="range"]')[1]!;
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")!.set!;
    const gl = document.querySelector("canvas")!.getContext("webgl2")!;
    const pixel = new Uint8Array(4);
    const out: number[] = [];
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
    const start = performance.now();
    for (let i = 0; i < count; i++) {
      set.call(slide, String(0.8 * Math.cos(i / 5)));
      slide.dispatchEvent(new Event("input", { bubbles: true }));
      await new Promise(requestAnimationFrame);
    }
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
    const onAndOn = (performance.now() - start) / count;
    return { waited: out.sort((a, b) => a - b)[Math.floor(out.length / 2)]!, onAndOn };
  }, frames);
}
