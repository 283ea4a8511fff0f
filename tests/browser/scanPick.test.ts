import { expect, it } from "vitest";
import { stlBytes } from "../../src/files/writeStl.ts";
import { comeToRest } from "./harness/atRest.ts";
import { faults } from "./harness/faults.ts";
import { read } from "./harness/reading.ts";
import { openWorkbench, shot } from "./harness/workbench.ts";

const SOON = { timeout: 60_000 };

/** A panel 1500 by 1000 mm, upright along the truck, far from it. */
const PANEL = {
  positions: Float64Array.of(0, 0, 0, 1500, 0, 0, 1500, 0, 1000, 0, 0, 1000),
  triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
};

it("a scan is asked its unit, matched with the truck by presses on the stage, fitted, nudged and undone", async () => {
  const { page, problems } = await openWorkbench({
    path: "#measure",
    viewport: { width: 1440, height: 900 },
    colorScheme: "light",
  });
  const group = page
    .locator(".setup .group")
    .filter({ has: page.getByRole("heading", { name: "Body parts", exact: true }) });
  await group.waitFor();
  if ((await group.getAttribute("open")) === null) await group.locator("> summary").click();
  await page.getByRole("button", { name: "Side", exact: true }).click();
  await page.getByLabel("Mesh file of a body part").setInputFiles({
    name: "panel.stl",
    mimeType: "model/stl",
    buffer: Buffer.from(stlBytes([PANEL], "panel")),
  });
  const units = page.locator(".scan-units");
  await units.waitFor();
  expect(await read(units)).toContain("Its size says millimeters");
  expect(await read(units)).toContain("millimeters: 59 in × 39 in ✓ as large as a fender");
  expect(await units.getByRole("radio", { checked: true }).count()).toBe(1);

  await page.getByRole("radio", { name: "by matched points" }).check();
  const cell = async (name: string) =>
    Number(await page.getByRole("textbox", { name, exact: true }).inputValue());
  const told = page.locator(".scan-matches > p");
  const press = async (n: number, right: number, up: number) => {
    await page.getByRole("button", { name: `Pick on the scan: Point ${n} in the mesh` }).click();
    await page.getByText(`Press on the scan where point ${n} is`).waitFor(SOON);
    const box = (await page.locator(".stage canvas").boundingBox())!;
    // What is drawn is the panel alone by now, its middle in the picture's.
    await page.waitForFunction(() => document.querySelector(".stage-pressing") !== null);
    await comeToRest(page);
    await page.mouse.click(box.x + box.width / 2 + right, box.y + box.height / 2 - up);
    await page.getByText(`Press on the scan where point ${n} is`).waitFor({ state: "detached" });
  };
  await press(1, 0, 0);
  // From the left side: the front is at the left.
  await press(2, -100, 0);
  await press(3, 0, 80);
  // Once more by keys: the cross comes out in the middle, says where it is, and stops at the panel's edge.
  const pickThird = page.getByRole("button", { name: "Pick on the scan: Point 3 in the mesh" });
  await pickThird.click();
  const told3 = page.locator(".cross-told");
  await page.getByRole("application", { name: /^Cross on the scan/ }).waitFor(SOON);
  expect(await read(told3)).toContain("arrows move the cross");
  await page.keyboard.press("Enter");
  await expect
    .poll(() => read(told3), SOON)
    .toMatch(/in ahead of the axle line, on the centerline, .* up\.$/);
  const spoken = await read(told3);
  await page.keyboard.press("Shift+ArrowUp");
  await expect.poll(() => read(told3)).not.toBe(spoken);
  for (let i = 0; i < 60 && !(await read(told3)).startsWith("No more"); i++)
    await page.keyboard.press("ArrowUp");
  expect(await read(told3)).toMatch(/^No more of the scan that way\. .*in ahead.* 39 .*in up\.$/);
  expect(await faults(page, ".stage")).toEqual([]);
  await shot(page, "scan-cross");
  await page.keyboard.press("Enter");
  await told3.waitFor({ state: "detached" });
  expect(await pickThird.evaluate((one) => one === document.activeElement)).toBe(true);
  const byKeys = Number(
    await page.getByRole("textbox", { name: "Point 3 in the mesh, z", exact: true }).inputValue(),
  );
  expect(byKeys).toBeGreaterThan(990);
  await press(3, 0, 80);
  const at = async (n: number) => [
    await cell(`Point ${n} in the mesh, x`),
    await cell(`Point ${n} in the mesh, y`),
    await cell(`Point ${n} in the mesh, z`),
  ];
  const [middle, ahead, above] = [await at(1), await at(2), await at(3)];
  // A pixel of the panel is a few mm.
  expect(middle).toEqual([expect.closeTo(750, -1), expect.closeTo(0, 3), expect.closeTo(500, -1)]);
  const mmPerPixel = (ahead[0]! - middle[0]!) / 100;
  expect(mmPerPixel).toBeGreaterThan(1);
  expect(above[2]! - middle[2]!).toBeCloseTo(80 * mmPerPixel, -1);
  expect(above[0]).toBeCloseTo(middle[0]!, -1);

  await page.getByRole("button", { name: "Pick on the truck: Point 1 on the truck" }).click();
  await page.locator(".stage").getByRole("button", { name: "wheel center", exact: true }).click();
  expect(await cell("Point 1 on the truck, z")).toBeGreaterThan(10);
  await page.getByLabel("Point 2 on the truck, by its name").selectOption({ label: "fender lip, point 1" });
  const fit = page.getByRole("button", { name: "Put the scan on these points" });
  expect(await fit.isDisabled()).toBe(true);
  expect(await read(told)).toContain("2 of 3 points matched");
  await page.getByLabel("Point 3 on the truck, by its name").selectOption({ label: "fender lip, point 6" });
  await expect.poll(() => read(told)).toMatch(/As it stands the matched points are \d+.* in off/);
  const before = await read(told);
  await fit.click();
  await expect.poll(() => read(told)).not.toBe(before);
  const fitted = await read(told);
  await page.getByRole("button", { name: "Up", exact: true }).click();
  await expect.poll(() => read(told)).not.toBe(fitted);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect.poll(() => read(told)).toBe(fitted);

  // A point of the truck off the scan: pressed, it is where the panel stands.
  await page.getByText("Take points of the truck off this scan").click();
  await page.getByLabel("Point of the truck", { exact: true }).selectOption({ label: "fender lip, point 1" });
  await page.getByRole("button", { name: "Pick it on the scan" }).click();
  await page.keyboard.press("Escape");
  await page.getByText("Press on the scan").waitFor({ state: "detached" });
  expect(await faults(page, ".setup", ".stage")).toEqual([]);
  await shot(page, "scan-matched");

  // What is being typed into a knuckle's point by the truck's axes is there again after the page was left.
  const knuckle = page
    .locator(".setup .group")
    .filter({ has: page.getByRole("heading", { name: "Knuckle", exact: true }) });
  const open = async () => {
    if ((await knuckle.getAttribute("open")) === null) await knuckle.locator("> summary").click();
    const inAxes = page.getByText("The same by points in the truck's axes");
    if (!(await inAxes.evaluate((one) => (one.closest("details") as HTMLDetailsElement).open)))
      await inAxes.click();
  };
  await open();
  const face = page.getByLabel("hub face, its middle in the truck's axes, y");
  await face.fill("34 5/");
  await page.reload();
  // The page may draw its fields once more when what was kept is back.
  const shown = async () => {
    await open();
    return face.isVisible();
  };
  await expect.poll(shown, { timeout: 15_000 }).toBe(true);
  expect(await face.inputValue()).toBe("34 5/");
  expect(await face.getAttribute("aria-invalid")).toBe("true");
  await face.fill("33 1/2");
  await face.press("Enter");
  await expect.poll(() => face.getAttribute("aria-invalid")).toBe("false");
  await expect.poll(() => face.inputValue()).toBe("33 1/2");
  // With curves beside the fields the page follows late; of two coordinates typed one after the other both stay.
  await page.getByRole("button", { name: "Curves" }).first().click();
  const high = page.getByLabel("hub face, its middle in the truck's axes, z");
  await face.fill("33 5/8");
  await face.press("Tab");
  await high.fill("14");
  await high.press("Enter");
  await expect.poll(() => high.inputValue()).toBe("14");
  await expect.poll(() => face.inputValue()).toBe("33 5/8");
  expect(problems()).toEqual([]);
}, 120_000);
