import type { Page } from "playwright-core";

/** Titles of what is folded beside the picture at Clear. */
export const FOLDS = [
  "Limits, what is met first",
  "Stance and floor",
  "Air springs",
  "Steering and geometry",
] as const;

export type FoldTitle = (typeof FOLDS)[number];

export const fold = (page: Page, title: FoldTitle) =>
  page.locator("details.fold").filter({ has: page.getByRole("heading", { name: title, exact: true }) });

/** Opens a fold where it is not, and gives it once its inside is there. */
export async function unfold(page: Page, title: FoldTitle) {
  const details = fold(page, title);
  if ((await details.getAttribute("open")) === null) await details.locator("summary").click();
  await details.locator(".fold-inside").waitFor();
  return details;
}
