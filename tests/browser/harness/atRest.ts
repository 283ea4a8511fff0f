import type { Page } from "playwright-core";

/** At Clear, a truck as it comes up: at its driving height, wheels straight, seen from three quarters, no pointer on it. */
export async function atRest(page: Page): Promise<void> {
  const button = (name: string) => page.getByRole("button", { name, exact: true });
  const controls = page.getByRole("region", { name: "Height and steering", exact: true });
  await controls.getByRole("button", { name: "driving", exact: true }).click();
  await button("Straight").click();
  // A page that draws nothing has no views.
  if ((await page.locator("canvas").count()) > 0) await button("Three-quarter").click();
  await page.mouse.move(0, 0);
}

/**
 * The page has come to rest, however busy the machine: nothing is being worked out, the picture has its frame's size, and page,
 * curves and labels have stood for some frames. What is read or held still from here on is not what was still to come.
 */
export async function comeToRest(page: Page): Promise<void> {
  const stands = await page.evaluateHandle(() => {
    let last = "";
    let since = performance.now();
    let frames = 0;
    let isOver = false;
    requestAnimationFrame(function look() {
      const busy = [...document.querySelectorAll('main [aria-busy="true"]')].filter((one) =>
        one.checkVisibility(),
      );
      const places = [
        ...document.querySelectorAll(".gap-mark .plate, .plot-curve, .stage-frame, .stage canvas"),
      ];
      const now = JSON.stringify([
        busy.length,
        document.documentElement.scrollHeight,
        ...places.map((one) => [one.getBoundingClientRect(), one.getAttribute("d")]),
      ]);
      if (now !== last || busy.length > 0) {
        frames = 0;
        since = performance.now();
      }
      last = now;
      frames++;
      isOver = frames > 10 && performance.now() - since > 400;
      if (!isOver) requestAnimationFrame(look);
    });
    return () => isOver;
  });
  await page.waitForFunction((isOver) => isOver(), stands, { timeout: 60_000 });
}
