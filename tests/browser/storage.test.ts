import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { shareLink } from "../../src/app/shell/share/shareLink.ts";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { kept } from "./harness/reading.ts";
import { openWorkbench } from "./harness/workbench.ts";

const ROOT = join(import.meta.dirname, "..", "..");

async function exampleDocument(): Promise<Record<string, unknown>> {
  return JSON.parse(await readFile(join(ROOT, "shared", "half-ton-limits.json"), "utf8"));
}

const travel = (page: Page) => page.getByRole("slider", { name: "Travel", exact: true });
const variant = (page: Page) => page.getByRole("combobox", { name: "Variant", exact: true });

/** Waits until the page shows a setup of this name. */
async function shows(page: Page, name: string): Promise<void> {
  await page.getByText(name, { exact: true }).first().waitFor();
}

/** What is in the travel control, mm. */
const travelOf = async (page: Page) => Number(await travel(page).inputValue());

async function stepTravel(page: Page, key: string): Promise<number> {
  await travel(page).focus();
  await page.keyboard.press(key);
  return travelOf(page);
}

async function open(page: Page, name: string): Promise<void> {
  const text = JSON.stringify({ ...(await exampleDocument()), name });
  const file = { name: "opened.json", mimeType: "application/json", buffer: Buffer.from(text) };
  await page.getByLabel("Setup file").setInputFiles(file);
  await shows(page, name);
}

/** Waits until the page is kept for use without a network and in charge of its own answers. */
async function isKept(page: Page): Promise<void> {
  await page.waitForFunction(async () => {
    await navigator.serviceWorker.ready;
    return navigator.serviceWorker.controller !== null;
  });
}

describe("a reload", () => {
  it("keeps the opened file, the variant and the pose, and undo still is for what comes after", async () => {
    const { page, problems } = await openWorkbench({ isBare: true });
    await open(page, "Truck kept over a reload");
    await variant(page).selectOption({ label: "steeper pin" });
    const height = await stepTravel(page, "PageUp");
    expect(height).not.toBe(0);
    await page.reload();
    await shows(page, "Truck kept over a reload");
    expect(await travelOf(page)).toBe(height);
    expect(await variant(page).locator("option:checked").textContent()).toBe("steeper pin");
    expect(problems()).toEqual([]);
  });

  it("keeps what was done right before the page was closed", async () => {
    const { page } = await openWorkbench({ isBare: true });
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    const height = await stepTravel(page, "Home");
    const context = page.context();
    const address = page.url();
    await page.close({ runBeforeUnload: true });
    const again = await context.newPage();
    await again.goto(address);
    await shows(again, "Fern Street shop half-ton, aligned and on bags");
    expect(await travelOf(again)).toBe(height);
  });

  it("brings back each of two tabs as it was, though both began with the same setup", async () => {
    const { page } = await openWorkbench({ isBare: true });
    const first = await stepTravel(page, "Home");
    await kept(page);
    const other = await page.context().newPage();
    await other.goto(page.url());
    await shows(other, "Fern Street shop half-ton, aligned and on bags");
    const second = await stepTravel(other, "End");
    await other.reload();
    await page.reload();
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    await shows(other, "Fern Street shop half-ton, aligned and on bags");
    expect([await travelOf(page), await travelOf(other)]).toEqual([first, second]);
  });
});

describe("undo", () => {
  it("of an opening brings back the setup before, and redo the one opened", async () => {
    const { page, problems } = await openWorkbench({ isBare: true });
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    await open(page, "Truck opened by mistake");
    await page.keyboard.press("Control+z");
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    await page.keyboard.press("Control+Shift+z");
    await shows(page, "Truck opened by mistake");
    expect(problems()).toEqual([]);
  });
});

describe("a share link", () => {
  it("opens its setup, leaves of the address but the station, and undo brings back what was on the board", async () => {
    const { page, problems } = await openWorkbench({ isBare: true });
    await open(page, "Truck on the board before");
    const document = { ...(await exampleDocument()), name: "Truck from a link" };
    const link = await shareLink({ document, file: "link.json" }, page.url(), new Set());
    if (!link.ok) throw new Error(link.mend);
    await page.goto(link.url);
    await shows(page, "Truck from a link");
    expect(new URL(page.url()).hash).toBe("#clear");
    await page.keyboard.press("Control+z");
    await shows(page, "Truck on the board before");
    expect(problems()).toEqual([]);
  });

  it("opens in a browser that was never here, and a reload keeps it", async () => {
    const document = { ...(await exampleDocument()), name: "Truck from a link" };
    const link = await shareLink({ document, file: "link.json" }, "", new Set());
    if (!link.ok) throw new Error(link.mend);
    const { page, problems } = await openWorkbench({ isBare: true, path: link.url });
    await shows(page, "Truck from a link");
    await page.reload();
    await shows(page, "Truck from a link");
    expect(problems()).toEqual([]);
  });

  it("is announced while its reader is on its way; one that never gets it stays in the address for a reload", async () => {
    const document = { ...(await exampleDocument()), name: "Truck from a link" };
    const link = await shareLink({ document, file: "link.json" }, "", new Set());
    if (!link.ok) throw new Error(link.mend);
    const { page, problems } = await openWorkbench({ isBare: true, path: "icon.svg" });
    let fail = () => {};
    const isFailed = new Promise<void>((done) => {
      fail = done;
    });
    const reader = "**/assets/knownTexts*";
    await page.route(reader, async (route) => {
      await isFailed;
      await route.abort("failed");
    });
    await page.goto(new URL(`./${link.url}`, page.url()).href);
    await page.getByText("Opening the link…").waitFor();
    // No other truck stands in its place meanwhile.
    expect(await page.locator(".verdict").count()).toBe(0);
    fail();
    await page
      .getByRole("alert")
      .getByText(/the link stays in the address/)
      .waitFor();
    expect(new URL(page.url()).hash).toBe(link.url);
    // Who goes on and comes back by the browser's Back keeps what was done meanwhile, reader or not.
    await open(page, "Truck begun meanwhile");
    await page
      .getByRole("navigation", { name: "Steps of the job" })
      .getByRole("link", { name: "Build" })
      .click();
    await page.unroute(reader);
    await page.goBack();
    await page
      .getByRole("alert")
      .getByText(/the link stays in the address/)
      .waitFor();
    await shows(page, "Truck begun meanwhile");
    expect(new URL(page.url()).hash).toBe(link.url);
    await page.reload();
    await shows(page, "Truck from a link");
    expect(new URL(page.url()).hash).toBe("#clear");
    // A browser may ask for an icon of the picture that the page began as.
    expect(problems().filter((one) => !/knownTexts|ERR_FAILED|favicon\.ico/.test(one))).toEqual([]);
  });

  it("that was cut off is refused with its reason, and the board stays", async () => {
    const { page, problems } = await openWorkbench({ isBare: true, path: "#setup=1.abc" });
    await page
      .getByRole("alert")
      .getByText(/cut off/)
      .waitFor();
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    expect(problems()).toEqual([]);
  });
});

describe("without a network", () => {
  it("the page opens, answers and draws, once it was here before", async () => {
    const { page, problems } = await openWorkbench({ isKept: true });
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    await isKept(page);
    await page.context().setOffline(true);
    await page.reload();
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    await page.locator("canvas").waitFor();
    const verdict = page.getByRole("region", { name: "Over the whole range of travel and steering" });
    await expect.poll(() => verdict.getByRole("status").textContent(), { timeout: 30_000 }).toMatch(/^Rubs/);
    expect(problems()).toEqual([]);
  });

  it("a newer build waits until it is asked for, then takes over and leaves nothing of the older one", async () => {
    const folder = await mkdtemp(join(tmpdir(), "wellsweep-build-"));
    await cp(join(ROOT, "dist", "app"), folder, { recursive: true });
    const server = await serveFolder(folder);
    try {
      const { page, close } = await openWorkbench({ path: server.address, isKept: true });
      await isKept(page);
      const before = await page.evaluate(() => caches.keys());
      const worker = join(folder, "service-worker.js");
      await writeFile(
        worker,
        (await readFile(worker, "utf8")).replace(/"version":"\w+"/, '"version":"newer"'),
      );
      const isWaiting = () =>
        page.evaluate(async () => {
          const registration = await navigator.serviceWorker.getRegistration();
          await registration?.update();
          return registration?.waiting !== null;
        });
      await expect.poll(isWaiting, { timeout: 30_000 }).toBe(true);
      expect(await page.evaluate(() => caches.keys())).toContain(before[0]);
      await page.evaluate(async () => {
        const registration = await navigator.serviceWorker.getRegistration();
        registration?.waiting?.postMessage("apply-update");
      });
      await expect
        .poll(() => page.evaluate(() => caches.keys()), { timeout: 30_000 })
        .toEqual(["wellsweep-newer"]);
      await close();
    } finally {
      await server.close();
      await rm(folder, { recursive: true, force: true });
    }
  });
});

describe("a browser that keeps nothing, or something else", () => {
  it("opens the workbench all the same when there is no storage at all", async () => {
    const { page, problems } = await openWorkbench({ isBare: true });
    await page.addInitScript(() => {
      for (const name of ["indexedDB", "localStorage", "sessionStorage"]) {
        Object.defineProperty(window, name, {
          get: () => {
            throw new DOMException("switched off", "SecurityError");
          },
        });
      }
    });
    await page.reload();
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    await open(page, "Truck without storage");
    expect(await stepTravel(page, "Home")).toBeLessThan(0);
    expect(problems()).toEqual([]);
  });

  it("opens the workbench all the same when what is stored makes no sense", async () => {
    const { page, problems } = await openWorkbench({ isBare: true });
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    await stepTravel(page, "Home");
    await kept(page);
    const spoiled = await page.evaluate(async () => {
      const db = await new Promise<IDBDatabase>((done, fail) => {
        const request = indexedDB.open("wellsweep");
        request.onsuccess = () => done(request.result);
        request.onerror = () => fail(request.error);
      });
      const board = db.transaction("board", "readwrite").objectStore("board");
      const keys = await new Promise<IDBValidKey[]>((done) => {
        const request = board.getAllKeys();
        request.onsuccess = () => done(request.result);
      });
      for (const key of keys) board.put({ version: 1, document: 7, drafts: "none" }, key);
      await new Promise((done) => {
        board.transaction.oncomplete = done;
      });
      db.close();
      return keys.length;
    });
    expect(spoiled).toBeGreaterThan(2);
    await page.reload();
    await shows(page, "Fern Street shop half-ton, aligned and on bags");
    expect(await travelOf(page)).toBe(0);
    expect(problems()).toEqual([]);
  });
});
