import type { Locator, Page } from "playwright-core";
import { expect } from "vitest";

/** The steps of the job, each a station of the page. */
export type StationName = "Measure" | "Clear" | "Choose" | "Build" | "Show";

export const STATIONS: readonly StationName[] = ["Measure", "Clear", "Choose", "Build", "Show"];

/** The link that leads to a station. */
export const stationLink = (page: Page, name: StationName) =>
  page.getByRole("navigation", { name: "Steps of the job" }).getByRole("link", { name, exact: true });

/** Goes to a station by its link. */
export async function goTo(page: Page, name: StationName): Promise<void> {
  await stationLink(page, name).click();
}

/** What only that station has. */
export const room = (page: Page, station: StationName): Locator =>
  ({
    Measure: page.getByRole("region", { name: "Setup", exact: true }),
    Clear: page.getByRole("region", { name: "Height and steering: drag the dot" }),
    Choose: page.getByRole("region", { name: /^Variants side by side/ }),
    Build: page.getByRole("region", { name: /^The knuckle of the current truck/ }),
    Show: page.getByRole("region", { name: /^Side by side/ }),
  })[station];

/** The page's address below its path: `#clear`. */
const hash = (page: Page) => new URL(page.url()).hash;

/** One station is shown, with its address, its mark and its own room, and no other. */
export async function isAt(page: Page, station: StationName): Promise<void> {
  await room(page, station).waitFor();
  expect(hash(page)).toBe(`#${station.toLowerCase()}`);
  for (const one of STATIONS) {
    expect(await stationLink(page, one).getAttribute("aria-current"), one).toBe(
      one === station ? "page" : null,
    );
    if (one !== station) expect(await room(page, one).count(), one).toBe(0);
  }
}

/** Opens the list of trucks; on a phone it stands behind a button. */
export async function openTrucks(page: Page): Promise<void> {
  const menu = page.getByRole("button", { name: /^Menu/ });
  await page.locator(".heading").waitFor();
  if (await menu.isVisible()) await menu.click();
  await page.getByText("Trucks", { exact: true }).click();
}
