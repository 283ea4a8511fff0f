import { chromium } from "playwright-core";
import { describe, expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { findBrowser } from "./harness/findBrowser.ts";
import { openWorkbench } from "./harness/workbench.ts";

describe("the browser that the tests found", () => {
  it("draws with WebGL 2", async () => {
    const { executablePath, args, env } = await findBrowser();
    const browser = await chromium.launch({ executablePath, args: [...args], env: { ...env } });
    try {
      const page = await browser.newPage();
      // Clears to a known color and reads it back: a context that draws nothing would not do.
      const pixel = await page.evaluate(() => {
        const gl = document.createElement("canvas").getContext("webgl2");
        if (!gl) return [];
        gl.clearColor(1, 0.2, 0, 1);
        gl.clear(gl.COLOR_BUFFER_BIT);
        const read = new Uint8Array(4);
        gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, read);
        return [...read];
      });
      expect(pixel).toEqual([255, 51, 0, 255]);
    } finally {
      await browser.close();
    }
  });
});

describe("the watch over a page", () => {
  it("reports errors, missing files and requests to others, so that a clean page means something", async () => {
    const { page, problems } = await openWorkbench();
    await page.evaluate(async () => {
      console.error("said on the console");
      setTimeout(() => {
        throw new Error("thrown later");
      });
      await fetch("./missing.json");
      await fetch("http://127.0.0.1:9/other").catch(() => {});
      await new Promise((resolve) => setTimeout(resolve));
    });
    await expect.poll(() => problems().join("\n")).toContain("thrown: thrown later");
    expect(problems()).toContain("console: said on the console");
    expect(problems().join("\n")).toMatch(/failed request: .*missing\.json \(404\)/);
    expect(problems().join("\n")).toContain("127.0.0.1:9/other");
  });

  it("hands back pages of the size and color scheme asked for", async () => {
    const { page } = await openWorkbench({ viewport: { width: 390, height: 844 }, colorScheme: "dark" });
    const seen = await page.evaluate(() => [innerWidth, matchMedia("(prefers-color-scheme: dark)").matches]);
    expect(seen).toEqual([390, true]);
  });

  it("hears of what cannot be told apart or has no name", async () => {
    const { page } = await openWorkbench({ isBare: true });
    await page.locator("main").waitFor();
    await page.evaluate(() => {
      const pale = Object.assign(document.createElement("p"), { textContent: "hardly to be read" });
      pale.style.cssText = "color: #ccc; background: #fff";
      document.querySelector("main")!.prepend(pale, new Image(), document.createElement("button"));
    });
    const rules = (await faults(page, "main")).map((fault) => fault.split(":")[0]);
    expect(rules).toEqual(expect.arrayContaining(["button-name", "color-contrast", "image-alt"]));
  });
});
