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
