import { expect, it } from "vitest";
import { faults } from "./harness/faults.ts";
import { readPdf } from "./harness/pdfText.ts";
import { read, verdict } from "./harness/reading.ts";
import { openTrucks } from "./harness/stations.ts";
import { openWorkbench, shot } from "./harness/workbench.ts";

const SOON = { timeout: 60_000 };

/** The twelve of the shortest list, in its order, as somebody types them. */
const READ = [
  "P235/70R15",
  "13 1/4",
  "31",
  "36 1/4",
  "8",
  "4 1/4",
  "6 5/16",
  "10 5/8",
  "8 1/2",
  "26 3/8",
  "9 3/8",
];
const LAST = ["1", "0", "5/8"];

it("a truck of one's own goes from the first screen through twelve readings to a verdict, is kept and is printed", async () => {
  const { page, problems } = await openWorkbench({
    isBare: true,
    path: "#clear",
    viewport: { width: 390, height: 844 },
    hasTouch: true,
  });
  const waiting = page.locator(".verdict-waiting");
  const input = page.locator(".reading-input");
  const go = (name: RegExp) => page.locator(".reading-go").getByRole("button", { name }).click();
  const axe = () => faults(page);

  await openTrucks(page);
  await page.getByRole("button", { name: /^Start your own truck by worksheet/ }).click();
  expect(await axe()).toEqual([]);
  await page.getByRole("button", { name: /^12 readings/ }).click();
  await waiting.getByText("0 of 12 read; 12 more needed for a first verdict", { exact: false }).waitFor(SOON);
  // However long somebody takes over the first, its card stays.
  await input.fill(READ[0]!);
  await waiting.getByText("1 of 12 read", { exact: false }).waitFor(SOON);
  expect(await read(page.locator(".reading-place"))).toContain("1 of 12");
  await input.fill("");
  await input.focus();
  for (const [i, text] of READ.entries()) {
    // By key or by press: the cursor stands in the next reading's field.
    await page.keyboard.type(text);
    await (i % 2 === 0 ? page.keyboard.press("Enter") : go(/Next/));
  }
  await waiting.getByText("11 of 12 read; 1 more", { exact: false }).waitFor(SOON);
  expect(await axe()).toEqual([]);
  await shot(page, "worksheet-phone");

  // Who puts right what was read comes back to where the list was; an undo there says what is back.
  await page.locator(".line").nth(2).click();
  await input.fill("27");
  await go(/On to 12/);
  expect(await read(page.locator(".reading-place"))).toContain("12 of 12");
  await go(/Undo/);
  await page.getByText(new RegExp(`^Undone: .*, back to ${READ[2]}$`)).waitFor(SOON);
  expect(await read(page.locator(".line-value").nth(2))).toBe(READ[2]);

  // A slip gets its sentence and is kept; the keys mend it.
  await input.fill("ten");
  await page.locator(".reading-card .fault").waitFor(SOON);
  expect(await read(page.locator(".reading-card .fault"))).toContain("No number found");
  await input.fill("");
  for (const key of LAST)
    await page
      .locator(".pad")
      .getByRole("button", { name: key === "5/8" ? /^5\D*8$/ : key, exact: true })
      .click();
  await expect.poll(() => input.inputValue()).toBe("10 5/8");
  await expect
    .poll(() => verdict(page), SOON)
    .toMatch(/^Partly assumed If what is assumed is right, everything clears.*fender lip/);
  // The verdict may still be of the truck before the last reading.
  await expect
    .poll(() => page.locator(".doubts").allTextContents(), SOON)
    .toEqual([expect.stringMatching(/From 12 readings; \d+ numbers are still assumed, in whole or in part/)]);

  await page.reload();
  await expect
    .poll(() => verdict(page), SOON)
    .toMatch(/^Partly assumed If what is assumed is right, everything clears.*fender lip/);
  expect(await read(page.locator(".worksheet-progress"))).toBe("All 12 readings are in");
  expect(await page.locator(".line-value").allInnerTexts()).toEqual([...READ, "10 5/8"]);
  expect(await read(page.locator(".still-assumed"))).toContain("upper arm, rear pivot");

  await page.setViewportSize({ width: 1440, height: 900 });
  expect(await axe()).toEqual([]);
  await page.evaluate(() => {
    window.print = () => {};
  });
  for (const [name, format] of [
    ["Print a blank form", "Letter"],
    ["Print with what was read", "A4"],
  ] as const) {
    await page.getByRole("button", { name }).click();
    const { pages, text } = readPdf(await page.pdf({ format }));
    expect(pages, format).toBeLessThanOrEqual(2);
    expect(text).toContain("Measuringworksheet:Mytruck");
    expect(text).toContain("12.Lowerarm,frontpivot,outfromthecenterline");
    expect(text.includes("263/8"), name).toBe(format === "A4");
    for (const control of ["Undo", "Showthefulllist", "Next›"]) expect(text).not.toContain(control);
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  }
  expect(problems()).toEqual([]);
}, 240_000);
