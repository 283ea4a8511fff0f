import type { Locator, Page } from "playwright-core";

/** Text with every space an ordinary one: lengths are kept together by hard ones. */
export function plain(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

/** What a person reads there. */
export async function read(place: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: what is not shown is not read
  return plain(await place.innerText());
}

/** The verdict over the whole range, once it is there. */
export async function verdict(page: Page): Promise<string> {
  const region = page.getByRole("region", { name: "Over the whole range of travel and steering" });
  await page.locator('.verdict [aria-busy="false"]').waitFor();
  return read(region.getByRole("status"));
}

/** The sentence for the pose on the stage, once it is told: with the next frame. */
export async function poseSentence(page: Page): Promise<string> {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  const region = page.getByRole("region", { name: "At this height and steering angle" });
  return read(region.getByRole("paragraph").first());
}

/** The stage is there, and a frame asked for by the last change has been drawn. */
export async function stageDrawn(page: Page): Promise<void> {
  await page.locator("canvas").first().waitFor();
  await page.locator(".axes-sketch").waitFor({ state: "attached" });
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

/** The map is drawn for the truck shown, and its two sentences are there. */
export async function mapDrawn(page: Page): Promise<void> {
  await page.locator('.map-board[aria-busy="false"]').waitFor();
  await page.locator('.map-limits[aria-busy="false"]').waitFor();
}

/** What was done is in the browser's storage: nothing of it is but noted. */
export async function kept(page: Page): Promise<void> {
  await page.waitForFunction(() =>
    Object.keys(localStorage).every((key) => !key.startsWith("wellsweep-said:")),
  );
}
