import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { goTo } from "./harness/stations.ts";
import { sharedWorkbench, shot } from "./harness/workbench.ts";

/** Triangles whose STL is well over what is read without a worker: 84 bytes and 50 each. */
const MANY = 60_000;

/** A binary STL of a strip of triangles high over the truck, in inches. */
function strip(count: number): Buffer {
  const bytes = Buffer.alloc(84 + 50 * count);
  bytes.writeUInt32LE(count, 80);
  for (let i = 0; i < count; i++) {
    const corners = [i % 2, 33, 40, (i + 1) % 2, 33, 40 + 1e-4 * (i + 1), 0.5, 34, 40 + 1e-4 * i];
    for (const [k, value] of corners.entries()) bytes.writeFloatLE(value, 84 + 50 * i + 12 + 4 * k);
  }
  return bytes;
}

const file = (name: string, buffer: Buffer) => ({ name, mimeType: "model/stl", buffer });
const undo = (page: Page) => page.getByRole("button", { name: "Undo", exact: true });
const add = (page: Page) => page.getByLabel("Mesh file of a body part");
const part = (page: Page, name: string) => page.locator(".part summary").filter({ hasText: name });

const shared = sharedWorkbench({
  ...{ isBare: true, path: "#measure", viewport: { width: 1440, height: 900 }, colorScheme: "light" },
});

async function atBodyParts() {
  const bench = await shared();
  const group = bench.page
    .locator(".setup .group")
    .filter({ has: bench.page.getByRole("heading", { name: "Body parts", exact: true }) });
  await group.waitFor();
  if ((await group.getAttribute("open")) === null) await group.locator("> summary").click();
  return bench;
}

describe("a scan added as a body part", () => {
  it("comes and goes in one step", async () => {
    const { page, problems } = await atBodyParts();
    await add(page).setInputFiles(file("strip.stl", strip(8)));
    await part(page, "strip").waitFor();
    expect(await page.getByRole("alert").count()).toBe(0);
    await undo(page).click();
    await expect.poll(() => part(page, "strip").count()).toBe(0);
    expect(await undo(page).isDisabled()).toBe(true);
    expect(problems()).toEqual([]);
  });

  it("is refused with its reason when it does not read, and no part is added", async () => {
    const { page } = await atBodyParts();
    await add(page).setInputFiles(file("empty.stl", Buffer.alloc(0)));
    await page.getByText("is empty; export or copy it again").waitFor();
    expect(await part(page, "empty").count()).toBe(0);
    expect(await undo(page).isDisabled()).toBe(true);
  });

  it("is read in a worker when it is large", async () => {
    const { page, problems } = await atBodyParts();
    // Its own: started for it, and ended after it.
    let ended = 0;
    page.on("worker", (worker) => worker.on("close", () => ended++));
    await page.evaluate(() => {
      const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = function (this: Worker, ...sent: unknown[]) {
        // Bytes sent to a worker are gone from the page; what else is asked there names no file.
        const asked = (sent[0] as { question?: { name?: unknown; bytes?: unknown } }).question;
        if (asked?.name === "large.stl" && asked.bytes instanceof ArrayBuffer)
          document.body.dataset.handed = String(asked.bytes.byteLength);
        Reflect.apply(postMessage, this, sent);
      };
    });
    await add(page).setInputFiles(file("large.stl", strip(MANY)));
    await part(page, "large").waitFor();
    expect(await page.locator("body").getAttribute("data-handed")).toBe(String(84 + 50 * MANY));
    await expect.poll(() => ended).toBeGreaterThan(0);
    expect(await page.getByRole("button", { name: "Stop", exact: true }).count()).toBe(0);
    expect(problems()).toEqual([]);
  });

  it("is reached by keys like all else: a new part opens at its name, menus shut, links lead past the heading", async () => {
    const { page, problems } = await atBodyParts();
    const focused = () =>
      page.evaluate(() => document.activeElement?.closest("[data-field]")?.getAttribute("data-field"));
    await page.getByRole("button", { name: "Add an arch" }).click();
    await expect.poll(focused).toMatch(/^truck\.body\.\d+\.name$/);
    await undo(page).click();

    const sheets = page.locator(".menu-sheet:visible");
    const menu = (name: string) => page.locator(".heading summary", { hasText: name });
    await menu("Trucks").click();
    await sheets.getByRole("button", { name: /^Start your own truck/ }).waitFor();
    await menu("Units, look").click();
    await sheets.getByText("Lengths").waitFor();
    expect(await sheets.count()).toBe(1);
    await page.keyboard.press("Escape");
    await expect.poll(() => sheets.count()).toBe(0);
    await menu("Trucks").click();
    await sheets.first().waitFor();
    await page.locator(".verdict").click({ position: { x: 5, y: 5 } });
    await expect.poll(() => sheets.count()).toBe(0);

    await page.getByRole("button", { name: "Skip to the truck's numbers" }).focus();
    await page.keyboard.press("Enter");
    await expect.poll(focused).toBeTruthy();

    await goTo(page, "Clear");
    const map = page.locator(".map-board");
    await map.focus();
    const pose = () => map.getAttribute("aria-label");
    await page.keyboard.press("Home");
    await expect.poll(pose).toMatch(/^Pose: [^.]*full left lock/);
    await page.keyboard.press("End");
    await expect.poll(pose).toMatch(/^Pose: [^.]*full right lock/);
    await goTo(page, "Measure");
    expect(problems()).toEqual([]);
  });

  it("is not added when its reading is stopped", async () => {
    const { page } = await atBodyParts();
    // A reader that never answers stands for a file that takes long.
    await page.evaluate(() => {
      (window as unknown as { Worker: unknown }).Worker = class extends EventTarget {
        postMessage() {}
        terminate() {
          document.body.setAttribute("data-ended", "");
        }
      };
    });
    await add(page).setInputFiles(file("slow.stl", strip(MANY)));
    await page.getByText(/^Reading slow\.stl, 3 MB/).waitFor();
    await shot(page, "scan-reading");
    await page.getByRole("button", { name: "Stop", exact: true }).click();
    await page.getByText("reading it was stopped").waitFor();
    expect(await page.locator("body[data-ended]").count()).toBe(1);
    expect(await part(page, "slow").count()).toBe(0);
  });
});
