import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { expect, it } from "vitest";
import { openWorkbench, shot } from "./harness/workbench.ts";

const ROOT = join(import.meta.dirname, "..", "..");

it("the built page shows itself without an error or a request to anyone else", async () => {
  const { page, problems } = await openWorkbench({ colorScheme: "light" });
  await page.locator("#root > :not(.opening-page)").first().waitFor({ state: "visible" });
  await page.waitForLoadState("networkidle");
  expect(await page.title()).toContain("Wellsweep");
  expect(statSync(await shot(page, "smoke")).size).toBeGreaterThan(0);
  expect(problems()).toEqual([]);
});

it("the built page asks for at most 430 kB of JavaScript, compressed, before its first view, and for none of the stage", () => {
  const folder = join(ROOT, "dist", "app");
  const html = readFileSync(join(folder, "index.html"), "utf8");
  const found = new Set<string>();
  const follow = (path: string) => {
    if (found.has(path)) return;
    found.add(path);
    const code = readFileSync(join(folder, path), "utf8");
    // Static imports alone: what is imported by a call comes later.
    for (const [, name] of code.matchAll(
      /(?:^|[;}])import\s*(?:[\w${},*\s]+from)?\s*["']\.\/([\w.-]+\.js)["']/g,
    )) {
      follow(`assets/${name}`);
    }
  };
  for (const [, path] of html.matchAll(/(?:src|href)="\.\/(assets\/[\w.-]+\.js)"/g)) follow(path!);
  const bytes = [...found].reduce((sum, path) => sum + gzipSync(readFileSync(join(folder, path))).length, 0);
  console.log(`initial JavaScript: ${found.size} files, ${(bytes / 1000).toFixed(0)} kB compressed`);
  expect(found.size).toBeGreaterThan(1);
  expect(bytes).toBeGreaterThan(50_000);
  expect(bytes).toBeLessThanOrEqual(430_000);
  expect([...found].filter((path) => path.includes("Stage"))).toEqual([]);
  // By the name that three.js leaves in the page.
  const draws = (path: string) => readFileSync(join(folder, path), "utf8").includes("__THREE__");
  expect([...found].filter(draws)).toEqual([]);
});
