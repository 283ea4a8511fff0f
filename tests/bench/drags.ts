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
