import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";

/**
 * What an accessibility checker says against the page, each fault by its rule and its places. The page has no frames: it is
 * looked at where it stands, and told are faults alone, which takes a fraction of the time that all that is well takes to tell.
 * @param within selectors of what is looked at; default all of it
 */
export async function faults(page: Page, ...within: readonly string[]): Promise<readonly string[]> {
  const builder = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ["violations"] });
  for (const selector of within) builder.include(selector);
  const { violations } = await builder.analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}
