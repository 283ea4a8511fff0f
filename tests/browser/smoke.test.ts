import { statSync } from "node:fs";
import { expect, it } from "vitest";
import { openWorkbench, shot } from "./harness/workbench.ts";

it("the built page shows itself without an error or a request to anyone else", async () => {
  const { page, problems } = await openWorkbench({ colorScheme: "light" });
  await page.locator("#root > :not(.opening-page)").first().waitFor({ state: "visible" });
  await page.waitForLoadState("networkidle");
  expect(await page.title()).toContain("Wellsweep");
  expect(statSync(await shot(page, "smoke")).size).toBeGreaterThan(0);
  expect(problems()).toEqual([]);
});
