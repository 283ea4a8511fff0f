import type { Page } from "playwright-core";

/** The steps of the job, each a station of the page. */
export type StationName = "Measure" | "Clear" | "Choose" | "Build" | "Show";

/** The link that leads to a station. */
export const stationLink = (page: Page, name: StationName) =>
  page.getByRole("navigation", { name: "Steps of the job" }).getByRole("link", { name, exact: true });

/** Goes to a station by its link. */
export async function goTo(page: Page, name: StationName): Promise<void> {
  await stationLink(page, name).click();
}
