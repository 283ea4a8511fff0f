import type { Page } from "playwright-core";
import { stageDrawn } from "./reading.ts";

/** Levels of 255 by which a pixel may be off and look the same: the browser lays a picture on half pixels now so, now so. */
const SAME_LEVELS = 4;

const taken = new WeakMap<Page, string[]>();

/** A picture of the stage once it is drawn, as base64 PNG. */
export async function png(page: Page): Promise<string> {
  await stageDrawn(page);
  return (await page.locator("canvas").first().screenshot()).toString("base64");
}

/** The number of the stage's picture: the same for every picture taken of the page that looks the same. */
export async function picture(page: Page): Promise<number> {
  const now = await png(page);
  const before = taken.get(page) ?? [];
  taken.set(page, before);
  for (const [number, one] of before.entries())
    if (one === now || (await shareApart(page, one, now, SAME_LEVELS)) === 0) return number;
  return before.push(now) - 1;
}

/** Share of the pixels by whose levels, 0 to 255, two pictures of one size are further apart than that; 1 of unlike sizes. */
export async function shareApart(page: Page, one: string, other: string, levels: number): Promise<number> {
  return page.evaluate(
    async ([pictures, most]) => {
      const [a, b] = await Promise.all(
        pictures.map(async (data) => {
          const image = new Image();
          image.src = `data:image/png;base64,${data}`;
          await image.decode();
          const pen = new OffscreenCanvas(image.width, image.height).getContext("2d")!;
          pen.drawImage(image, 0, 0);
          return pen.getImageData(0, 0, image.width, image.height);
        }),
      );
      if (a!.width !== b!.width || a!.height !== b!.height) return 1;
      let apart = 0;
      for (let i = 0; i < a!.data.length; i += 4) {
        const off = (channel: number) => Math.abs(a!.data[i + channel]! - b!.data[i + channel]!) > most;
        if (off(0) || off(1) || off(2)) apart++;
      }
      return (4 * apart) / a!.data.length;
    },
    [[one, other], levels] as const,
  );
}
