import { pageSvgText } from "../../../files/writePageSvg.ts";
import type { Page } from "../../../geometry/page.ts";

const known = new WeakMap<Page, string>();

/** A page as the address of a picture. */
export function pageImage(page: Page): string {
  const address = known.get(page) ?? `data:image/svg+xml,${encodeURIComponent(pageSvgText(page))}`;
  known.set(page, address);
  return address;
}
