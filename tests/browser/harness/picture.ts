import type { Page } from "playwright-core";
import { stageDrawn } from "./reading.ts";

/** Levels of 255 by which a pixel may be off and look the same: the browser lays a picture on half pixels now so, now so. */
const SAME_LEVELS = 4;

/** A picture of the stage once it is drawn, as base64 PNG. */
export async function png(page: Page): Promise<string> {
  await stageDrawn(page);
  return (await page.locator("canvas").first().screenshot()).toString("base64");
}

declare global {
  /** In the page: those taken of it that do not look alike. */
  var picturesTaken: ImageData[] | undefined;
}

/** The number of the stage's picture: the same for every picture taken since the page was loaded that looks the same. */
export async function picture(page: Page): Promise<number> {
  return page.evaluate(
    async ([data, most]) => {
      const blob = await (await fetch(`data:image/png;base64,${data}`)).blob();
      const image = await createImageBitmap(blob);
      const pen = new OffscreenCanvas(image.width, image.height).getContext("2d", {
        willReadFrequently: true,
      })!;
      pen.drawImage(image, 0, 0);
      const now = pen.getImageData(0, 0, image.width, image.height);
      globalThis.picturesTaken ??= [];
      const known = globalThis.picturesTaken.findIndex(({ width, height, data: before }) => {
        if (width !== now.width || height !== now.height) return false;
        for (let i = 0; i < before.length; i++)
          if (i % 4 !== 3 && Math.abs(before[i]! - now.data[i]!) > most) return false;
        return true;
      });
      return known >= 0 ? known : globalThis.picturesTaken.push(now) - 1;
    },
    [await png(page), SAME_LEVELS] as const,
  );
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
