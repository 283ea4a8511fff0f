import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { setupFields } from "../../src/setup/fieldCatalogue.ts";
import { faults } from "./harness/faults.ts";
import { kept } from "./harness/reading.ts";
import { sharedWorkbench, shot } from "./harness/workbench.ts";

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

const panel = (page: Page) => page.getByRole("region", { name: "Setup", exact: true });
const field = (page: Page, name: string) => panel(page).getByRole("textbox", { name, exact: true });
const group = (page: Page, name: string) => panel(page).locator(".group > summary").filter({ hasText: name });
const undo = (page: Page) => page.getByRole("button", { name: /^Undo/ });

/** Text of a row of the alignment table: changes when the knuckle of the truck shown does. */
async function rowText(page: Page, name: RegExp): Promise<string> {
  const table = page.getByRole("region", { name: /^Alignment now/ });
  return (await table.getByRole("row", { name }).textContent()) ?? "";
}
const camber = (page: Page) => rowText(page, /^Camber/);
const scrub = (page: Page) => rowText(page, /^Scrub radius/);

const bare = { isBare: true, path: "#measure" } as const;
const desk = sharedWorkbench({ ...bare, viewport: DESK, colorScheme: "light" });
const phone = sharedWorkbench({
  ...{ ...bare, viewport: PHONE, colorScheme: "light", hasTouch: true, isMobile: true },
});

/** The example as it came: all that was done on the page before is taken back. */
async function openDesk() {
  const bench = await desk();
  await field(bench.page, "Hub-face distance").waitFor();
  while (await undo(bench.page).isEnabled()) await undo(bench.page).click();
  return bench;
}

/** Opens what is folded, where it is not open already. */
async function unfold(summary: Locator): Promise<void> {
  const isOpen = await summary.evaluate((element) => element.closest("details")?.open);
  if (!isOpen) await summary.click();
}

/** Opens the help of a field, where it is not open already. */
async function ask(page: Page, name: string): Promise<void> {
  const button = panel(page).getByRole("button", { name: `What is ${name}?` });
  if ((await button.getAttribute("aria-expanded")) !== "true") await button.click();
}

const part = (page: Page, name: string) => panel(page).locator(".part summary").filter({ hasText: name });

/** How long something that follows by itself may take on a busy machine. */
const SOON = { timeout: 30_000 };

/** Pastes text into what has the focus, as the clipboard would. */
async function paste(place: Locator, text: string): Promise<void> {
  await place.evaluate((element, clip) => {
    const data = new DataTransfer();
    data.setData("text/plain", clip);
    element.dispatchEvent(
      new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, text);
}

describe("the steps", () => {
  it("are listed by name, gone back to by one press, and are there after a reload; a state can be named", async () => {
    const { page, problems } = await openDesk();
    const steps = page.getByLabel("Steps by name");
    const sheet = page.locator(".steps-menu .menu-sheet");
    const hubFace = field(page, "Hub-face distance");
    const asOpened = await hubFace.inputValue();
    for (const typed of ["6.1", "6.2"]) {
      await hubFace.fill(typed);
      await hubFace.press("Enter");
      await hubFace.blur();
    }
    await field(page, "Pin angle").fill("9.5");
    await field(page, "Pin angle").press("Enter");
    await steps.click();
    const last = sheet.getByRole("button", { name: /^Pin angle .* → 9.5 ?now$/ });
    await last.waitFor();
    await sheet.getByLabel("Name this state, to come back to it").fill("as ordered");
    await sheet.getByRole("button", { name: "Keep" }).click();
    await shot(page, "editing-steps");
    await sheet.getByRole("button", { name: "As it was opened" }).click();
    expect(await hubFace.inputValue()).toBe(asOpened);
    await page.keyboard.press("Escape");
    await sheet.waitFor({ state: "detached" });
    await kept(page);
    await page.reload();
    await hubFace.waitFor();
    await steps.click();
    await sheet.getByRole("button", { name: /^Hub-face distance 6.1 → 6.2/ }).click();
    expect(await hubFace.inputValue()).toMatch(/^6.2/);
    await sheet.getByRole("button", { name: /^as ordered/ }).click();
    expect(await field(page, "Pin angle").inputValue()).toMatch(/^9.5/);
    await page.getByRole("heading", { name: "Wellsweep" }).click();
    await sheet.waitFor({ state: "detached" });
    expect(problems()).toEqual([]);
  });
});

describe("a field of the setup", () => {
  it("takes a fraction while it is typed, and arithmetic, as one step to undo", async () => {
    // Narrow enough for the answer to take two lines.
    const { page, problems } = await openDesk();
    await page.setViewportSize({ width: 1180, height: 800 });
    const before = await camber(page);
    const answer = page.locator(".verdict");
    await answer.locator(".verdict-word:not([aria-hidden])").waitFor();
    const heights = await answer.evaluateHandle((element) => {
      const seen: number[] = [];
      new ResizeObserver(() => seen.push(element.getBoundingClientRect().height)).observe(element);
      return seen;
    });
    const pinAngle = field(page, "Pin angle");
    await pinAngle.fill("9.5");
    await expect.poll(() => camber(page), SOON).not.toBe(before);
    // What stands below the answer keeps its place while the next one is looked for.
    await expect.poll(() => answer.locator("[aria-busy]").getAttribute("aria-busy"), SOON).toBe("false");
    const seen = await heights.jsonValue();
    expect(Math.min(...seen)).toBe(Math.min(seen[0]!, seen.at(-1)!));
    const hubFace = field(page, "Hub-face distance");
    const scrubBefore = await scrub(page);
    await hubFace.click();
    await hubFace.fill("");
    await hubFace.pressSequentially("5 5/8 + 1/8", { delay: 30 });
    expect(await hubFace.inputValue()).toBe("5 5/8 + 1/8");
    // A pause in typing puts it into the truck, and ends no step.
    await expect.poll(() => scrub(page), SOON).not.toBe(scrubBefore);
    await hubFace.press("End");
    await hubFace.pressSequentially(" + 1/16");
    await hubFace.press("Enter");
    expect(await hubFace.inputValue()).toBe("5 13/16");
    await undo(page).click();
    expect(await hubFace.inputValue()).toBe("6 5/16");
    expect(await pinAngle.inputValue()).toBe("9.5");
    await undo(page).click();
    expect(await pinAngle.inputValue()).toBe("8.5");
    expect(await camber(page)).toBe(before);
    await page.setViewportSize(DESK);
    expect(problems()).toEqual([]);
  });

  it("steps with the arrow keys by the sixteenth, eight with Shift, from its default where it is empty", async () => {
    const { page } = await openDesk();
    const hubFace = field(page, "Hub-face distance");
    await hubFace.focus();
    await page.keyboard.press("ArrowUp");
    expect(await hubFace.inputValue()).toBe("6 3/8");
    await page.keyboard.press("Shift+ArrowDown");
    expect(await hubFace.inputValue()).toBe("5 7/8");
    await page.keyboard.press("Escape");
    expect(await hubFace.inputValue()).toBe("6 5/16");
    const lead = field(page, "Pin lead");
    expect([await lead.inputValue(), await lead.getAttribute("placeholder")]).toEqual(["", "0"]);
    await lead.focus();
    await page.keyboard.press("ArrowUp");
    expect(await lead.inputValue()).toBe("1/16");
    await ask(page, "Pin lead");
    await panel(page).getByRole("button", { name: "Back to default" }).click();
    expect(await lead.inputValue()).toBe("");
  });

  it("is dragged by its name as one step, and Escape puts it back", async () => {
    const { page } = await openDesk();
    const hubFace = field(page, "Hub-face distance");
    const name = panel(page).getByText("Hub-face distance", { exact: true }).first();
    await name.scrollIntoViewIfNeeded();
    const box = (await name.boundingBox())!;
    const [x, y] = [box.x + 20, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 30, y, { steps: 6 });
    expect(await hubFace.inputValue()).toBe("6 5/8");
    await page.mouse.move(x - 12, y, { steps: 6 });
    expect(await hubFace.inputValue()).toBe("6 3/16");
    await page.mouse.up();
    await undo(page).click();
    expect(await hubFace.inputValue()).toBe("6 5/16");
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y, { steps: 6 });
    expect(await hubFace.inputValue()).toBe("6 15/16");
    await page.keyboard.press("Escape");
    expect(await hubFace.inputValue()).toBe("6 5/16");
    await page.mouse.up();
    expect(await hubFace.inputValue()).toBe("6 5/16");
  });

  it("keeps text that is no length, with its mend, and the truck as it was", async () => {
    const { page, problems } = await openDesk();
    const before = await camber(page);
    const span = field(page, "Ball joint span");
    await span.fill("10 5/8 im");
    await expect.poll(() => span.getAttribute("aria-invalid"), SOON).toBe("true");
    const described = (await span.getAttribute("aria-describedby"))!.split(" ");
    const words = await Promise.all(described.map((id) => page.locator(`[id="${id}"]`).textContent()));
    expect(words.join("\n")).toMatch(/unknown unit "im".*"in"/i);
    await page.keyboard.press("Tab");
    expect(await span.inputValue()).toBe("10 5/8 im");
    expect(await camber(page)).toBe(before);
    await shot(page, "editing-desk-bad-text");
    await span.focus();
    await page.keyboard.press("Escape");
    expect([await span.inputValue(), await span.getAttribute("aria-invalid")]).toEqual(["10 5/8", "false"]);
    expect(problems()).toEqual([]);
  });

  it("offers the nearest value that closes when the setup cannot be assembled", async () => {
    const { page, problems } = await openDesk();
    const before = await camber(page);
    const span = field(page, "Ball joint span");
    await span.fill("40");
    const offer = panel(page).getByRole("button", { name: /^Use .* in, the nearest that closes$/ });
    await offer.waitFor();
    expect(await camber(page)).toBe(before);
    await shot(page, "editing-desk-offer");
    const offered = /Use (.*) in,/.exec((await offer.textContent()) ?? "")![1];
    await offer.click();
    expect(await span.inputValue()).toBe(offered);
    expect(await span.getAttribute("aria-invalid")).toBe("false");
    await expect.poll(() => camber(page), SOON).not.toBe(before);
    expect(problems()).toEqual([]);
  });

  it("says which values are the variant's own, and gives the setup's back", async () => {
    const { page } = await openDesk();
    const choose = page.getByLabel("Variant", { exact: true });
    await choose.selectOption({ label: "narrow hub face" });
    const row = panel(page).locator('[data-field="knuckle.hubFace"]');
    expect(await row.textContent()).toContain("own value of “narrow hub face”");
    expect(await panel(page).locator('[data-field="knuckle.span"]').textContent()).not.toContain("own value");
    await ask(page, "Hub-face distance");
    await row.getByRole("button", { name: "Take the setup's own, 6 5/16 in" }).click();
    expect(await field(page, "Hub-face distance").inputValue()).toBe("6 5/16");
    expect(await row.textContent()).not.toContain("own value");
    await choose.selectOption({ label: "current truck" });
  });
});

describe("points and body parts", () => {
  it("takes a block of cells from a spreadsheet, adds rows for it, and marks a cell that does not read", async () => {
    const { page, problems } = await openDesk();
    await unfold(group(page, "Body parts"));
    await unfold(part(page, "fender lip"));
    const rows = panel(page).getByRole("table", { name: "Points of fender lip" }).getByRole("rowheader");
    await expect.poll(() => rows.count(), SOON).toBe(11);
    const cell = field(page, "11, x");
    await cell.focus();
    await paste(cell, "-17 3/4 in\t35\t12 1/2\n-18\t889 mm\t8");
    await expect.poll(() => rows.count(), SOON).toBe(12);
    expect(await field(page, "12, x").inputValue()).toBe("-18");
    expect(await field(page, "12, y").inputValue()).toBe("35");
    expect(await panel(page).getByRole("status").filter({ hasText: "2 rows pasted" }).count()).toBe(1);
    await paste(cell, "1\t2\t3 im");
    expect(
      await panel(page)
        .getByText(/row 11, z “3 im”/)
        .count(),
    ).toBe(1);
    expect(await cell.inputValue()).toBe("1");
    expect(await field(page, "11, z").inputValue()).toBe("3 im");
    expect(await field(page, "11, z").getAttribute("aria-invalid")).toBe("true");
    await undo(page).click();
    expect(await cell.inputValue()).toBe("-17 3/4");
    await undo(page).click();
    await expect.poll(() => rows.count(), SOON).toBe(11);
    expect(problems()).toEqual([]);
  });

  it("adds an arch, names it, lays it out by dragging and by keys, hides it and removes it", async () => {
    const { page, problems } = await openDesk();
    await unfold(group(page, "Body parts"));
    await panel(page).getByRole("button", { name: "Add an arch" }).click();
    // It comes open, with the focus at its name.
    const part = panel(page).locator(".part").last();
    const name = part.getByRole("textbox", { name: "Name" });
    await expect.poll(() => name.evaluate((input) => input === document.activeElement), SOON).toBe(true);
    await name.fill("frame rail");
    expect(await part.getByText("Another part is called so").count()).toBe(1);
    await name.fill("new arch");
    await name.press("Enter");
    expect(await part.getByRole("heading", { name: "new arch" }).count()).toBe(1);

    const rows = part.getByRole("rowheader");
    await expect.poll(() => rows.count(), SOON).toBe(7);
    const drawing = part.getByRole("group", { name: "new arch, from the left side" });
    await drawing.scrollIntoViewIfNeeded();
    const top = part.getByRole("button", { name: /^Point 4 of 7/ });
    const grip = (await top.boundingBox())!;
    const [x, y] = [grip.x + grip.width / 2, grip.y + grip.height / 2];
    const height = await part.getByRole("textbox", { name: "4, z" }).inputValue();
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 20, { steps: 5 });
    await page.mouse.up();
    expect(await part.getByRole("textbox", { name: "4, z" }).inputValue()).not.toBe(height);
    await undo(page).click();
    expect(await part.getByRole("textbox", { name: "4, z" }).inputValue()).toBe(height);

    // Between two points, a press makes one.
    const next = (await part.getByRole("button", { name: /^Point 5 of 7/ }).boundingBox())!;
    await page.mouse.click((x + next.x + next.width / 2) / 2, (y + next.y + next.height / 2) / 2);
    await expect.poll(() => rows.count(), SOON).toBe(8);
    const made = part.getByRole("button", { name: /^Point 5 of 8/ });
    await made.focus();
    const madeX = await part.getByRole("textbox", { name: "5, x" }).inputValue();
    await page.keyboard.press("ArrowLeft");
    expect(await part.getByRole("textbox", { name: "5, x" }).inputValue()).not.toBe(madeX);
    await shot(page, "editing-desk-arch");
    await page.keyboard.press("Delete");
    await expect.poll(() => rows.count(), SOON).toBe(7);

    const hide = part.getByRole("button", { name: "Hide new arch in the picture" });
    await hide.click();
    expect(await hide.getAttribute("aria-pressed")).toBe("true");
    await part.getByRole("button", { name: "Remove new arch" }).click();
    expect(await panel(page).getByText("new arch").count()).toBe(0);
    expect(problems()).toEqual([]);
  });
});

describe.each([
  ["light", DESK],
  ["dark", DESK],
  ["light", PHONE],
] as const)("the setup in %s at %o", (colorScheme, viewport) => {
  it("has no fault that an accessibility checker finds, and no target too small", async () => {
    const isPhone = viewport === PHONE;
    const { page, problems } = await (isPhone ? phone() : openDesk());
    await page.emulateMedia({ colorScheme });
    await unfold(group(page, "Body parts"));
    await unfold(part(page, "fender lip"));
    await unfold(group(page, "Wheel").first());
    await field(page, "Pin height").fill("5 im");
    await field(page, "Ball joint span").fill("40");
    await panel(page)
      .getByRole("button", { name: /the nearest that closes$/ })
      .waitFor();
    await ask(page, "Hub-face distance");
    await panel(page).scrollIntoViewIfNeeded();
    await shot(page, `editing-${isPhone ? "phone" : "desk"}-${colorScheme}`);
    expect(await faults(page, ".setup")).toEqual([]);
    const small = await panel(page)
      .locator("button, input:not([type=radio]):not([hidden]), select, summary, label:has([type=radio])")
      .evaluateAll(
        (elements, least) => {
          const sizes = elements.map(
            (element) => [element.outerHTML.slice(0, 90), element.getBoundingClientRect()] as const,
          );
          return sizes.filter(([, box]) => box.height > 0 && box.height < least).map(([html]) => html);
        },
        isPhone ? 44 : 24,
      );
    expect(small).toEqual([]);
    if (isPhone) {
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    }
    expect(problems()).toEqual([]);
  });
});

describe("the form", () => {
  it("has a place for every field that a setup can hold", async () => {
    const { page, problems } = await openDesk();
    const seen = new Set<string>();
    const look = async () => {
      const places = await panel(page)
        .locator("[data-field]")
        .evaluateAll((elements) => elements.map((element) => element.getAttribute("data-field") ?? ""));
      for (const place of places) {
        const keys = place.split(".").map((key) => (/^\d+$/.test(key) ? "*" : key));
        for (let i = 1; i <= keys.length; i++) seen.add(keys.slice(0, i).join("."));
      }
    };
    // By the page itself: that each can be pressed is asked elsewhere.
    const clickAll = async (places: Locator) => {
      for (let left = 100; left > 0 && (await places.count()) > 0; left--)
        await places.evaluateAll((all: HTMLElement[]) => {
          for (const one of all) one.click();
        });
    };
    await clickAll(panel(page).locator(".group:not([open]) > summary"));
    await clickAll(panel(page).locator(".part details:not([open]) summary"));
    const adds = panel(page).getByRole("button", { name: /^(Measure|Add) (?!after|an? |the )/ });
    await clickAll(adds);
    await look();
    for (const way of ["offset", "dimensions", "profile", "pitman arm and idler"]) {
      await panel(page).getByRole("radio", { name: way, exact: true }).check();
      await clickAll(adds);
      await look();
    }
    const heights = panel(page).getByRole("combobox", { name: "Height of aired out by" });
    for (const measure of await heights.locator("option").allTextContents()) {
      await heights.selectOption({ label: measure });
      await look();
    }
    // Blocks of several sorts, each sort in turn.
    const sorts = panel(page).locator('[data-field$=".kind"] select');
    for (let i = 0; i < (await sorts.count()); i++) {
      const words = await sorts.nth(i).locator("option:not([value=''])").allTextContents();
      for (const word of words) {
        await sorts.nth(i).selectOption({ label: word });
        await clickAll(adds);
        await look();
      }
    }
    const stl =
      "solid s\nfacet normal 0 0 1\nouter loop\nvertex 0 30 20\nvertex 1 30 20\nvertex 0 31 20\nendloop\nendfacet\nendsolid s\n";
    await page
      .getByLabel("Mesh file of a body part")
      .setInputFiles({ name: "scan.stl", mimeType: "model/stl", buffer: Buffer.from(stl) });
    await panel(page).getByRole("radio", { name: "by three points" }).waitFor();
    await clickAll(adds);
    await look();
    await panel(page).getByRole("radio", { name: "by three points" }).check();
    await look();
    await panel(page).getByRole("radio", { name: "by matched points" }).check();
    await look();
    // The place of readings is the worksheet.
    const notOfTheForm =
      /^(\$schema|format|version|variants.*|truck\.body\.\*\.kind|fromExample\.(of|read.*)|readings.*)$/;
    const wanted = setupFields()
      .map(({ pattern }) => pattern.join("."))
      .filter((pattern) => !notOfTheForm.test(pattern));
    expect(wanted.length).toBeGreaterThan(60);
    // What tells the sorts of steering apart is the switch between them.
    expect(wanted.filter((pattern) => !seen.has(pattern))).toEqual(["truck.steering.type"]);
    expect(problems()).toEqual([]);
  });
});
