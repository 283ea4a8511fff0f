import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { readPdf } from "./harness/pdfText.ts";
import { openWorkbench, sharedWorkbench, shot } from "./harness/workbench.ts";

const EXAMPLE = join(import.meta.dirname, "..", "..", "shared", "half-ton-limits.json");
const TABLET = { width: 1024, height: 768 };
const PHONE = { width: 390, height: 844 };

/** A red square, 2 pixels a side, as a shop's logo. */
const LOGO = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAEElEQVR4nGP4z8AARAwQCgAf7gP9i18U1AAAAABJRU5ErkJggg==",
  "base64",
);

const tablet = sharedWorkbench({ isBare: true, path: "#show", viewport: TABLET, colorScheme: "light" });
const desk = sharedWorkbench({
  ...{ isBare: true, path: "#show", viewport: { width: 1440, height: 900 }, colorScheme: "dark" },
});
const phone = sharedWorkbench({ isBare: true, viewport: PHONE, path: "#counter" });

const counterView = (page: Page) => page.getByRole("dialog", { name: /Side by side/ });
const sheet = (page: Page) => page.getByRole("dialog", { name: /Customer sheet/ });

/** What a person reads there, with every space an ordinary one. */
async function read(place: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: what is not shown is not read
  return (await place.innerText()).replace(/\s+/g, " ").trim();
}

/** The workbench's own answer, once it is there. */
async function verdict(page: Page): Promise<string> {
  await page.locator(".verdict .verdict-word:not([aria-hidden])").waitFor();
  return read(page.locator(".verdict .verdict-sentence"));
}

/** The sentences at the counter, once all is known. */
async function sentences(page: Page): Promise<string> {
  const words = counterView(page).locator(".counter-sentences");
  await page.waitForFunction(() => {
    const text = document.querySelector(".counter-sentences")?.textContent ?? "…";
    return !text.includes("…");
  });
  return read(words);
}

/** Texts of the pictures that stand over another, or past their picture, as the browser draws them. */
function crowded(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll(".layer .wheel-picture")].flatMap((picture) => {
      const frame = picture.getBoundingClientRect();
      const texts = [...picture.querySelectorAll("text")].map((text) => ({
        said: text.textContent,
        box: text.getBoundingClientRect(),
      }));
      return texts.flatMap(({ said, box }, i) => {
        const isPast =
          box.left < frame.left ||
          box.right > frame.right ||
          box.top < frame.top ||
          box.bottom > frame.bottom + 1;
        // The box of a line has room above and below its letters.
        const over = texts
          .slice(0, i)
          .filter(
            ({ box: other }) =>
              Math.min(box.right, other.right) - Math.max(box.left, other.left) > 1 &&
              Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top) > 4,
          );
        return [
          ...(isPast ? [`${said} past its picture`] : []),
          ...over.map((o) => `${said} over ${o.said}`),
        ];
      });
    }),
  );
}

/** The first length in a text that follows some words. */
function amountAfter(text: string, words: RegExp): string | undefined {
  return new RegExp(`${words.source}.*?((?:\\d+ )?\\d+(?:/\\d+)? in)\\b`).exec(text)?.[1];
}

describe("the counter view", () => {
  it.each([
    [1024, 768],
    [768, 1024],
    [390, 844],
    // With a phone's own bars.
    [390, 664],
    [1440, 900],
  ])(
    "has words, picture and slider on the first screen of %i by %i, and the slider stays",
    async (width, height) => {
      const { page } = await tablet();
      await page.setViewportSize({ width, height });
      await page.getByRole("button", { name: "Counter view" }).click();
      await sentences(page);
      const places = new Set<number>();
      for (const stance of await counterView(page).locator(".counter-stances button").all()) {
        await stance.click();
        // With a phone's bars the answer is seen, and why below it.
        const seenThere = [".counter-figure svg", ".counter-tag strong"];
        for (const seen of height < 700 ? seenThere : [...seenThere, ".counter-why p"]) {
          const box = (await counterView(page).locator(seen).first().boundingBox())!;
          expect(box.y, seen).toBeLessThan(height - 20);
        }
        for (const end of await counterView(page).locator(".counter-slider-ends > *").all()) {
          const box = (await end.boundingBox())!;
          expect(box.x).toBeGreaterThanOrEqual(0);
          expect(box.x + box.width).toBeLessThanOrEqual(width);
          expect(box.y + box.height).toBeLessThanOrEqual(height);
        }
        places.add(Math.round((await counterView(page).getByRole("slider").boundingBox())!.y));
        expect(await crowded(page)).toEqual([]);
      }
      expect([...places]).toHaveLength(1);
      await shot(page, `counter-${width}`);
      await page.keyboard.press("Escape");
      await counterView(page).waitFor({ state: "detached" });
      await page.setViewportSize(TABLET);
    },
  );

  it("steers both a step at a time, and fills what overlaps", async () => {
    const { page } = await tablet();
    await page.getByRole("button", { name: "Counter view" }).click();
    await sentences(page);
    await counterView(page).getByRole("button", { name: "aired out" }).click();
    const left = counterView(page).getByRole("button", { name: "Steer a step left" });
    // To the lock: there the tire of A is in the fender lip, that of B is not.
    for (let press = 0; press < 10; press++) await left.click();
    const above = counterView(page).getByRole("img", { name: /^From above/ });
    expect(await above.getAttribute("aria-label")).toMatch(/steered \d+° to the left: A touches\./);
    expect(await above.locator(".wheel-overlap circle").count()).toBe(1);
    const filled = above.locator(".wheel-overlap circle");
    expect(await filled.evaluate((circle) => getComputedStyle(circle).fill)).toContain("overlap");
    await shot(page, "counter-steered");
    await counterView(page).getByRole("button", { name: "Steer back to where it matters" }).click();
    expect(await above.getAttribute("aria-label")).toMatch(/where something first touches/);
    await page.keyboard.press("Escape");
    await counterView(page).waitFor({ state: "detached" });
  });

  it("says in plain words what the workbench says of each of the two", async () => {
    const { page, problems } = await tablet();
    const wide = amountAfter(await verdict(page), /rubs/);
    await page.getByLabel("Variant", { exact: true }).selectOption({ label: "narrow hub face" });
    await page.locator('.verdict[data-verdict="fromExample"]').waitFor();
    const narrow = amountAfter(await verdict(page), /closest is/);
    expect([wide, narrow]).not.toContain(undefined);
    await page.getByRole("button", { name: "Counter view" }).click();
    const told = await sentences(page);
    await shot(page, "counter-tablet");
    // One inch of hub face, per side, on a pin that stands nearly level.
    expect(told).toContain(
      "As measured, the wheels of the current truck sit 1 in farther out per side than those of “narrow hub face”.",
    );
    expect(told).toMatch(
      /^(?!.*If the example).*At the “aired out” stance, the tire of the current truck meets the fender lip at \d+° of steer/,
    );
    expect(told).toContain("“narrow hub face” steers lock to lock and nothing touches");
    expect(told).toContain(`the tire of the current truck rubs the fender lip by ${wide}`);
    expect(told).toContain(`“narrow hub face” clears by ${narrow}`);
    // Beside the sign, which is not green, too.
    const sign = counterView(page).locator('.counter-tag[data-verdict="fromExample"]');
    expect(await read(sign)).toContain(`the example clears Everything clears by ${narrow}`);
    const all = await read(counterView(page));
    expect(all.match(/the example's numbers are this truck's/g)).toHaveLength(1);
    expect(all).toMatch(/does not say that a part or a truck is safe/);
    const size = await counterView(page)
      .locator(".counter-sentences p")
      .first()
      .evaluate((p) => getComputedStyle(p).fontSize);
    expect(Number.parseFloat(size)).toBeGreaterThanOrEqual(22);
    await page.keyboard.press("Escape");
    await counterView(page).waitFor({ state: "detached" });
    await page.getByLabel("Variant", { exact: true }).selectOption({ label: "current truck" });
    await page.locator('.verdict[data-verdict="rubs"]').waitFor();
    expect(problems()).toEqual([]);
  });

  it("shows another height, another variant and another hub face in pictures and words", async () => {
    const { page, problems } = await tablet();
    await page.getByRole("button", { name: "Counter view" }).click();
    const before = await sentences(page);
    const front = counterView(page).getByRole("img", { name: /^From the front/ });
    const label = () => front.getAttribute("aria-label");
    expect(await label()).toContain("B, narrow hub face: hub face 5 5/16 in");
    await counterView(page).getByRole("button", { name: "full droop" }).click();
    expect(await sentences(page)).toContain("At the “full droop” stance");
    await counterView(page).getByRole("button", { name: "aired out" }).click();
    expect(await sentences(page)).toBe(before);

    const slider = counterView(page).getByRole("slider", { name: /What if B had another hub face/ });
    await slider.focus();
    for (let press = 0; press < 6; press++) await page.keyboard.press("ArrowRight");
    expect(await slider.getAttribute("aria-valuetext")).toBe("5 11/16 in");
    expect(await label()).toContain("B, narrow hub face, hub face 5 11/16 in: hub face 5 11/16 in");
    expect(await sentences(page)).toMatch(
      /sit 5\/8 in farther out per side than those of “narrow hub face, hub face 5 11\/16 in”/,
    );
    await page.keyboard.press("End");
    expect(await slider.getAttribute("aria-valuetext")).toBe("6 13/16 in");
    expect(await sentences(page)).toMatch(
      /the wheels of “narrow hub face, hub face 6 13\/16 in” sit 1\/2 in farther out/,
    );
    await counterView(page).getByRole("button", { name: "Back to 5 5/16 in" }).click();
    expect(await sentences(page)).toBe(before);

    await counterView(page).getByLabel(/^B/).selectOption({ label: "steeper pin" });
    expect(await sentences(page)).toContain("“steeper pin”");
    // The setup on the workbench is as it was.
    await page.keyboard.press("Escape");
    await counterView(page).waitFor({ state: "detached" });
    expect(await verdict(page)).toMatch(/rubs the fender lip/);
    expect(problems()).toEqual([]);
  });

  it("puts a wheel that is typed on the truck as it is and in a list for every truck; no key chooses from a closed one", async () => {
    const { page, problems } = await tablet();
    await page.getByRole("button", { name: "Counter view" }).click();
    await sentences(page);
    const b = counterView(page).getByRole("combobox", { name: /^B, drawn/ });
    const chosen = () => b.evaluate((select: HTMLSelectElement) => select.selectedOptions[0]!.textContent);
    const isOpen = () => b.evaluate((select) => select.matches(":open"));
    const other = counterView(page).getByRole("button", { name: "Other wheels…" });
    // A and B are one truck: each wheel is told of once.
    await b.selectOption({ label: "current truck" });
    await b.selectOption({ label: "Add a wheel the shop has…" });
    const form = counterView(page).getByRole("form", { name: "Add a wheel" });
    const size = form.getByRole("textbox", { name: "Tire size" });
    await size.waitFor();
    // The truck's own stands there, and what is typed takes its place.
    expect(await size.inputValue()).toBe("P235/70R15");
    expect(await form.getByRole("textbox", { name: "Rim width, in" }).inputValue()).toBe("8");
    await page.keyboard.type("P225/70R15");
    await page.keyboard.press("Enter");
    await form.getByText("Required: a straightedge").waitFor();
    await page.keyboard.type("5");
    await page.keyboard.press("Enter");
    // The next begins where the first did.
    await page.keyboard.type("P235/70R15");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.type("4");
    await shot(page, "counter-add-wheel");
    await page.keyboard.press("Enter");
    // What each comes to stands beside it: nobody has to put it on first.
    const listed = counterView(page).locator(".listed-wheels > li");
    const comesTo = async (at: number) => read(listed.nth(at).locator(".listed-answer[data-answer]").first());
    expect(await comesTo(1)).toMatch(
      /^tire rubs the fender lip by 5\/16 in, both sides, at 3 1\/2 in of bump/,
    );
    expect(await comesTo(0)).toMatch(/^clears, partly from the example: [\d/]+ in from the/);
    expect(await form.isVisible()).toBe(true);
    await shot(page, "counter-listed");
    await listed
      .nth(1)
      .getByRole("button", { name: /^Put on B/ })
      .click();
    // The list stays in its place, the next wheel may be put on: the row says where this one is.
    const isOn = listed.nth(1).getByRole("button", { name: /^On B/ });
    await isOn.waitFor();
    expect(await isOn.evaluate((button) => button === document.activeElement)).toBe(true);
    expect(await form.isVisible()).toBe(true);
    await counterView(page).getByRole("button", { name: "Done" }).click();
    await form.waitFor({ state: "detached" });
    expect(await b.evaluate((select) => select === document.activeElement)).toBe(true);
    const added = "current truck, P235/70R15 on 15 × 8 in, backspacing 4 in";
    expect((await chosen())?.replace(/\s/g, " ")).toBe(added);
    // The answer says of the wheel why.
    const why = counterView(page).locator(".counter-why p").first();
    expect(await read(why)).toContain("B's wheel stands 1/4 in farther out");
    for (const key of ["End", "Home", "ArrowUp", "PageDown", "s"]) {
      await b.press(key);
      expect(await isOpen(), key).toBe(true);
      expect((await chosen())?.replace(/\s/g, " "), key).toBe(added);
      await page.keyboard.press("Escape");
      expect(await isOpen(), key).toBe(false);
    }
    // Of the list it goes on another truck too.
    await other.click();
    const rows = counterView(page).locator(".listed-wheels > li");
    // The list was away: what each comes to is asked for again.
    await comesTo(1);
    expect(await read(rows.nth(1))).toMatch(
      /^P235\/70R15 on 15 × 8 in, backspacing 4 in, offset −1\/2 in Remove.* B current truck ?: tire rubs .* On B/,
    );
    await b.selectOption({ label: "narrow hub face" });
    // Of two trucks each answers.
    const both = rows.nth(1).locator(".listed-on > li");
    await both.nth(1).locator(".listed-answer[data-answer]").waitFor();
    expect(await read(both.nth(0))).toMatch(/^A current truck ?: tire rubs .* Put on A/);
    expect(await read(both.nth(1))).toMatch(/^B narrow hub face ?: .* Put on B/);
    await shot(page, "counter-wheels");
    await rows
      .nth(1)
      .getByRole("button", { name: /^Put on B/ })
      .click();
    expect((await chosen())?.replace(/\s/g, " ")).toBe(added.replace("current truck", "narrow hub face"));
    await b.press("Home");
    await page.keyboard.press("Home");
    await page.keyboard.press("Enter");
    expect(await chosen()).toBe("current truck");
    // There it is a variant already, which stands above.
    expect(await b.locator("optgroup option").allTextContents()).toEqual([
      expect.stringContaining("P225/70R15"),
      "Add another…",
    ]);
    // What is taken off the list can be put back.
    await rows
      .first()
      .getByRole("button", { name: /^Remove/ })
      .click();
    expect(await rows.count()).toBe(1);
    await counterView(page).getByRole("button", { name: "Put it back" }).click();
    expect(await rows.count()).toBe(2);
    expect(await faults(page, ".layer")).toEqual([]);
    // A step taken back is told there too, where what stands behind the layer is not heard.
    await b.focus();
    await page.keyboard.press("Control+z");
    await counterView(page)
      .getByRole("status")
      .filter({ hasText: /^Undone: / })
      .waitFor();
    await page.keyboard.press("Control+y");
    await counterView(page)
      .getByRole("status")
      .filter({ hasText: /^Done again: / })
      .waitFor();
    await b.selectOption({ label: "narrow hub face" });
    await page.keyboard.press("Escape");
    await counterView(page).waitFor({ state: "detached" });
    // From the answer it is one step.
    const stations = page.getByRole("navigation", { name: "Steps of the job" });
    await stations.getByRole("link", { name: "Clear" }).click();
    await page.getByRole("button", { name: "Will other wheels clear?" }).click();
    await page.getByRole("form", { name: "Add a wheel" }).waitFor();
    await page.getByRole("button", { name: "Done" }).click();
    expect(problems()).toEqual([]);
  });

  it("keeps the focus inside, and gives it back on Escape, on Close and on the browser's Back", async () => {
    const { page } = await tablet();
    const button = page.getByRole("button", { name: "Counter view" });
    const leave: readonly (() => Promise<unknown>)[] = [
      () => page.keyboard.press("Escape"),
      () => counterView(page).getByRole("button", { name: "Close" }).click(),
      () => page.goBack(),
    ];
    for (const go of leave) {
      await button.click();
      await counterView(page).waitFor();
      for (let press = 0; press < 14; press++) {
        await page.keyboard.press("Tab");
        // Past the last one the browser's own bar has it, never the page below.
        const isBelow = await page.evaluate(() => document.activeElement?.closest("#root") !== null);
        expect(isBelow, `after ${press + 1} tabs`).toBe(false);
      }
      await go();
      await counterView(page).waitFor({ state: "detached" });
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Counter view");
      expect(new URL(page.url()).hash).toBe("#show");
    }
  });

  it("fits a phone without scrolling sideways", async () => {
    const { page } = await phone();
    await sentences(page);
    await shot(page, "counter-phone");
    const isWider = await page.locator(".layer").evaluate((layer) => layer.scrollWidth > layer.clientWidth);
    expect(isWider).toBe(false);
  });
});

describe("the customer's sheet", () => {
  it("prints as one page of Letter and of A4 with the numbers, the cautions and the shop's own name", async () => {
    const { page, problems } = await desk();
    await page.getByRole("button", { name: "Print sheet" }).click();
    await sheet(page).getByRole("textbox", { name: "Shop" }).fill("Marrow Lane Suspension");
    await sheet(page).getByRole("textbox", { name: "Customer" }).fill("J. Doe");
    await sheet(page)
      .getByLabel("Logo")
      .setInputFiles({ name: "logo.png", mimeType: "image/png", buffer: LOGO });
    await sheet(page).getByRole("img", { name: "Marrow Lane Suspension logo" }).waitFor();
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute("data-printed", "");
    });
    await sheet(page).getByRole("button", { name: "Print", exact: true }).click();
    expect(await page.locator("body[data-printed]").count()).toBe(1);
    await shot(page, "sheet-desk-dark");
    // Letters of 7.6 pt and more in the table, 8.4 in the answers.
    const letters = await page
      .locator(".sheet-page")
      .evaluate((one) => Number((one as HTMLElement).style.getPropertyValue("--letters")));
    expect(letters).toBeGreaterThanOrEqual(0.8);
    const rubs = (await read(sheet(page).getByRole("region", { name: "Answers" }))).match(
      /rubs .*? by [\d/ ]+ in/,
    );

    for (const format of ["Letter", "A4"]) {
      const { pages, text } = readPdf(await page.pdf({ format }));
      expect(pages, format).toBe(1);
      const has = (words: string) => expect(text, format).toContain(words.replace(/\s/g, ""));
      has("Marrow Lane Suspension");
      has("J. Doe");
      has(new Date().toLocaleDateString("en-US", { dateStyle: "long" }));
      has("A · current truck: The tire rubs the fender lip");
      has(rubs![0]);
      has("Hub-face distance 6 5/16 in 5 5/16 in");
      has("As measured, the wheels of A sit 1 in farther out per side than those of B.");
      has("Steers, aired out");
      for (const angle of ["Camber", "Caster", "Toe of each wheel"]) has(`${angle}, as measured`);
      has("P235/70R15 on 15 × 8 in, backspacing 4 1/4 in");
      has("From above, left wheel, steered");
      has("Measure before you trust it.");
      has("Local codes and licensed practice");
      // Nothing of the page around it.
      for (const words of ["Counter view", "Close", "Choose", "Steering", "kept in this browser"]) {
        expect(text, format).not.toContain(words.replace(/\s/g, ""));
      }
    }
    const [ink, paper] = await page
      .locator(".sheet-page")
      .evaluate((one) => [getComputedStyle(one).color, getComputedStyle(one).backgroundColor]);
    expect([ink, paper]).toEqual(["rgb(0, 0, 0)", "rgb(255, 255, 255)"]);
    await page.emulateMedia({ media: "print" });
    await shot(page, "sheet-print");
    await page.emulateMedia({ media: null });
    await page.keyboard.press("Escape");
    await sheet(page).waitFor({ state: "detached" });
    expect(problems()).toEqual([]);
  });

  it("Ctrl+P prints one packet of whole pages, with nothing that is a control", async () => {
    const { page, problems } = await desk();
    await page.evaluate(() => {
      document.body.removeAttribute("data-printed");
      window.print = () => document.body.setAttribute("data-printed", "");
    });
    await page.keyboard.press("Control+p");
    await page.locator("body[data-printed]").waitFor({ state: "attached" });
    await shot(page, "packet");
    for (const format of ["Letter", "A4"]) {
      const { pages, text } = readPdf(await page.pdf({ format }));
      // As many as its cover line names, less one: air springs and floor share a page.
      expect(pages, format).toBe(5);
      for (const words of [
        "In this packet: customer sheet",
        "A · current truck",
        "Stance and floor",
        "Map of height",
      ])
        expect(text, format).toContain(words.replace(/\s/g, ""));
      for (const words of ["Print packet", "Close", "Print as it is", "not worked out"])
        expect(text, format).not.toContain(words.replace(/\s/g, ""));
    }
    await page.keyboard.press("Escape");
    await page.getByRole("dialog").waitFor({ state: "detached" });
    // Help prints itself, over whatever it lies: black on white in the dark too.
    await page.evaluate(() => {
      document.documentElement.dataset.theme = "dark";
    });
    await page.getByRole("button", { name: "Help", exact: true }).click();
    await page.locator(".docs").getByText("Look it up").waitFor();
    const help = readPdf(await page.pdf({ format: "A4" }));
    expect(help.pages).toBe(2);
    expect(help.text).toContain("HelpStarthere");
    expect(help.text).toContain("Thecommandline");
    for (const words of ["Searchthehelp", "Close", "Inthispacket"]) expect(help.text).not.toContain(words);
    await page.emulateMedia({ media: "print" });
    const inks = await page.locator(".docs").evaluate((docs) => {
      const { color, backgroundColor } = getComputedStyle(docs);
      return [color, backgroundColor];
    });
    expect(inks).toEqual(["rgb(28, 43, 56)", "rgb(255, 255, 255)"]);
    await page.emulateMedia({ media: null });
    await page.evaluate(() => delete document.documentElement.dataset.theme);
    await page.keyboard.press("Escape");
    await page.locator(".docs").waitFor({ state: "detached" });
    expect(problems()).toEqual([]);
  });

  it("stays one page however long the names and however many the heights", async () => {
    const { page } = await desk();
    const setup = JSON.parse(await readFile(EXAMPLE, "utf8"));
    setup.stances = [3.25, 2.5, 2, 1, 0, -1, -2, -3.75].map((travel) => ({
      name: `the height of ${travel} in, by a long name`,
      travel,
    }));
    setup.alignment.targets.stance = setup.stances[4].name;
    setup.variants[0].name = "narrow hub face, by a name that goes on and on for quite a while";
    await page
      .locator("input[type=file]")
      .first()
      .setInputFiles({
        name: "long.json",
        mimeType: "application/json",
        buffer: Buffer.from(JSON.stringify(setup)),
      });
    await page.getByRole("button", { name: "Print sheet" }).click();
    await sheet(page)
      .getByRole("columnheader", { name: /goes on and on/ })
      .waitFor();
    for (const field of ["Shop", "Customer", "Truck"]) {
      await sheet(page)
        .getByRole("textbox", { name: field })
        .fill("as long a name as the field takes ".repeat(3));
    }
    await page.waitForFunction(
      () => !document.querySelector(".sheet-page")?.textContent?.includes("checking…"),
    );
    for (const format of ["Letter", "A4"]) {
      const { pages, text } = readPdf(await page.pdf({ format }));
      expect(pages, format).toBe(1);
      expect(text).toContain("thissheetdoesnot");
      expect(text).toContain("Steers,theheightof-3.75in");
    }
    // From a phone too, where the page on the screen is as long as it likes.
    const { width, height } = page.viewportSize()!;
    await page.setViewportSize({ width: 390, height: 844 });
    expect(readPdf(await page.pdf({ format: "A4" })).pages).toBe(1);
    await page.setViewportSize({ width, height });
  });

  it("keeps the shop's name and logo, and refuses a file that is no picture", async () => {
    const { page } = await openWorkbench({ isBare: true, path: "#sheet" });
    await sheet(page).getByRole("textbox", { name: "Shop" }).fill("Marrow Lane");
    const logo = sheet(page).getByLabel("Logo");
    await logo.setInputFiles({
      name: "notes.txt",
      mimeType: "text/plain",
      buffer: Buffer.from("no picture"),
    });
    await sheet(page).getByText("notes.txt is no picture this browser can read").waitFor();
    await logo.setInputFiles({ name: "logo.png", mimeType: "image/png", buffer: LOGO });
    await sheet(page).getByRole("img", { name: "Marrow Lane logo" }).waitFor();
    await page.waitForFunction(async () => {
      const open = indexedDB.open("wellsweep");
      const db = await new Promise<IDBDatabase>((done) => {
        open.onsuccess = () => done(open.result);
      });
      const kept = db.transaction("board").objectStore("board").get("customer-sheet");
      await new Promise((done) => {
        kept.onsuccess = done;
      });
      db.close();
      return kept.result?.logo !== "" && kept.result?.shop === "Marrow Lane";
    });
    await page.reload();
    await sheet(page).getByRole("img", { name: "Marrow Lane logo" }).waitFor();
    expect(await sheet(page).getByRole("textbox", { name: "Shop" }).inputValue()).toBe("Marrow Lane");
    await sheet(page).getByRole("button", { name: "Remove logo" }).click();
    await sheet(page).getByRole("img", { name: /logo/ }).waitFor({ state: "detached" });
  });

  it("opens over the counter view with its two trucks, and goes back to it", async () => {
    const { page } = await phone();
    await counterView(page).getByLabel(/^B/).selectOption({ label: "steeper pin" });
    await counterView(page).getByRole("button", { name: "Print sheet" }).click();
    await sheet(page).getByRole("columnheader", { name: "B · steeper pin" }).waitFor();
    await shot(page, "sheet-phone");
    const isWider = await page.locator(".layer").evaluate((layer) => layer.scrollWidth > layer.clientWidth);
    expect(isWider).toBe(false);
    await sheet(page).getByRole("button", { name: "Close" }).click();
    expect(await sentences(page)).toContain("“steeper pin”");
  });
});

describe("for everybody", () => {
  for (const colorScheme of ["light", "dark"] as const) {
    for (const layer of ["counter", "sheet"]) {
      it(`the ${layer} has no violation that a checker finds, ${colorScheme}`, async () => {
        const { page } = await tablet();
        await page.emulateMedia({ colorScheme });
        const name = layer === "counter" ? "Counter view" : "Print sheet";
        await page.getByRole("button", { name }).first().click();
        await page
          .locator(layer === "counter" ? ".counter-tag strong svg" : ".sheet-table svg")
          .first()
          .waitFor();
        expect(await faults(page, ".layer")).toEqual([]);
        await page.keyboard.press("Escape");
        await page.locator(".layer").waitFor({ state: "detached" });
      });
    }
  }
});
