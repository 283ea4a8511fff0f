import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { readSetup } from "../../src/setup/readSetup.ts";
import { airEquilibrium } from "../../src/studies/air/airEquilibrium.ts";
import { airStateAt } from "../../src/studies/air/airState.ts";
import { floorAt } from "../../src/studies/floor/floorAt.ts";
import { wheelTravelsInRoll } from "../../src/studies/floor/wheelTravelsInRoll.ts";
import { turningCircle } from "../../src/studies/geometry/turningCircle.ts";
import { limitMargins } from "../../src/studies/limits/limitsOf.ts";
import { limitsOverRange } from "../../src/studies/limits/limitsPassed.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";
import { gapsAt } from "../../src/studies/reports/gapsAt.ts";
import { formatOf } from "../../src/studies/wording/lengths.ts";
import { poseSentence } from "../../src/studies/wording/poseSentence.ts";
import { solveApart } from "../../src/suspension/solvePose.ts";
import { formatAngle, radFromDeg } from "../../src/units/angle.ts";
import { formatLength } from "../../src/units/formatLength.ts";
import { MPA_PER_PSI } from "../../src/units/quantity.ts";
import { atRest } from "./harness/atRest.ts";
import { FOLDS, fold, unfold } from "./harness/folds.ts";
import { picture } from "./harness/picture.ts";
import { plain, read } from "./harness/reading.ts";
import { sharedWorkbench, shot } from "./harness/workbench.ts";

const NAME = "half-ton-limits.json";
/** With a named pose that no height of the setup is halfway of. */
const EXAMPLE = JSON.stringify({
  ...JSON.parse(readFileSync(join(import.meta.dirname, "..", "..", "shared", NAME), "utf8")),
  poses: [{ name: "past bump", leftTravel: 9, rightTravel: 3 }],
});
const DESK = { width: 1440, height: 900 };
/** What the library says of the same file. */
function exampleModel(text = EXAMPLE): Model {
  const reading = readSetup(text, NAME);
  if (!reading.ok) throw new Error(reading.issues.map(({ mend }) => mend).join("; "));
  const made = modelOf(reading.value.setup, NAME);
  if (!made.ok) throw new Error("the example goes together");
  return made.value;
}

const shared = sharedWorkbench({ viewport: DESK, colorScheme: "light" });
const bare = sharedWorkbench({ isBare: true, viewport: DESK, colorScheme: "light" });

/** What is on the board of each page, as it was opened. */
const opened = new WeakMap<Page, string>();
let openings = 0;

/** A page with a setup on its board; each test puts back what it changes of the picture. */
async function withExample(open = bare, text = EXAMPLE) {
  const bench = await open();
  const { page } = bench;
  if (opened.get(page) !== text) {
    // By its name it is told from the one before.
    const name = `Fern Street shop half-ton, opening ${++openings}`;
    const buffer = Buffer.from(JSON.stringify({ ...JSON.parse(text), name }));
    await page
      .locator('input[type="file"]')
      .first()
      .setInputFiles({ name: NAME, mimeType: "application/json", buffer });
    await page.locator(".heading-setup").filter({ hasText: name }).waitFor();
    opened.set(page, text);
  }
  await atRest(page);
  return bench;
}

const travelSlider = (page: Page) => page.getByRole("slider", { name: "Travel", exact: true });
const steeringSlider = (page: Page) => page.getByRole("slider", { name: "Steering", exact: true });

describe("limits, air, floor and geometry beside the picture", () => {
  it("ranks the limits by their least over the range, the library's first, and goes where one is least", async () => {
    const { page, problems } = await withExample();
    const limits = await unfold(page, FOLDS[0]);
    const over = limitsOverRange(exampleModel());
    const [least] = [...over].sort((a, b) => a.margin / a.range - b.margin / b.range);
    const rows = limits.locator(".limit-list button");
    await limits.locator(".limit-row:enabled").first().waitFor();
    await expect.poll(() => read(rows.first()), { timeout: 30_000 }).toContain(least!.name);
    expect(await rows.count()).toBe(5);
    await limits.getByRole("button", { name: /^All \d+ limits$/ }).click();
    const names = new Set(over.map(({ name }) => name));
    expect(await rows.count()).toBe(names.size);
    await rows.filter({ hasText: "rack stroke" }).click();
    expect(await steeringSlider(page).inputValue()).not.toBe("0");
    await shot(page, "front-end-limits-desk");
    expect(problems()).toEqual([]);
  });

  it("says what is passed and by how much, and has what is not checked checked", async () => {
    const document = JSON.parse(EXAMPLE);
    document.limits = { lowerBallJoint: { cone: 4 } };
    delete document.airSpring;
    document.variants = [];
    document.stances = document.stances.filter((s: { travel?: unknown }) => s.travel !== undefined);
    const text = JSON.stringify(document);
    const { page, problems } = await withExample(shared, text);
    const limits = await unfold(page, FOLDS[0]);
    await page.getByRole("button", { name: "aired out", exact: true }).click();
    const stance = exampleModel(text).setup.stances.find(({ name }) => name === "aired out")!;
    const pose = limitMargins(exampleModel(text), stance.travel, 0);
    if (!pose.ok) throw new Error("out of reach");
    const { margin } = pose.margins[0]!;
    expect(margin).toBeLessThan(0);
    const row = limits.locator(".limit-list button").first();
    await row.locator(".limit-where").filter({ hasText: "passed from" }).waitFor();
    // What is left at the pose shown follows when there is time.
    await expect.poll(() => read(row), { timeout: 30_000 }).toContain(`passed by ${formatAngle(-margin, 1)}`);
    const mark = page.locator(".joint-marks text:visible").first();
    expect(plain((await mark.textContent()) ?? "")).toContain(`${formatAngle(-margin, 1)} past its cone`);
    await limits.getByRole("button", { name: "Check it: bump stop" }).click();
    await limits.locator(".limit-name").filter({ hasText: "bump stop" }).waitFor();
    expect(await limits.getByRole("button", { name: "Check it: bump stop" }).count()).toBe(0);
    await shot(page, "front-end-passed-desk");
    expect(problems()).toEqual([]);
  });

  it("tells the spring's pressure at each stance, and puts the truck where a pressure holds it", async () => {
    const { page, problems } = await withExample();
    const air = await unfold(page, FOLDS[2]);
    const model = exampleModel();
    for (const { name, travel } of model.setup.stances) {
      const state = airStateAt(model, "left", travel)!;
      const row = await read(air.getByRole("row").filter({ hasText: name }));
      // What is told falls to the side of the limit that is nearer: never past the figure next to it either way.
      const sixteenth = 25.4 / 16;
      const heights = [Math.floor, Math.ceil].map((round) =>
        formatLength(round(state.height / sixteenth) * sixteenth, { units: "in" }),
      );
      expect(heights.filter((text) => row.includes(text))).not.toEqual([]);
      const psi = state.pressure! / MPA_PER_PSI;
      const pressures = [Math.floor, Math.ceil].map((round) => `${round(psi)} psi`);
      expect(pressures.filter((text) => row.includes(text))).not.toEqual([]);
      expect(row).toContain(`${state.frequency!.toFixed(2)} Hz`);
    }
    await air.getByLabel("At this pressure").fill("75");
    const found = airEquilibrium(model, "left", 75 * MPA_PER_PSI)!;
    expect(found.rest).not.toBe("unknown");
    await air.getByRole("button", { name: "Go there" }).click();
    const shown = Number(await travelSlider(page).inputValue());
    expect(shown).toBeCloseTo(found.travel!, 3);
    await air.getByLabel("At this pressure").fill("200");
    expect(await read(air.locator(".air-answer"))).toContain("above the greatest pressure the setup allows");
    expect(await read(air)).toContain("Air under pressure can kill");
    expect(problems()).toEqual([]);
  });

  it("a height typed off the floor puts the truck there; one out of range is refused with what it can be", async () => {
    const { page, problems } = await withExample();
    const floor = await unfold(page, FOLDS[1]);
    const lip = floor.getByLabel("Floor to fender lip");
    await lip.fill("28 1/2");
    await lip.press("Enter");
    const travel = Number(await travelSlider(page).inputValue());
    expect(floorAt(exampleModel(), { left: travel, right: travel }, 0)!.lip!.left).toBeCloseTo(
      28.5 * 25.4,
      2,
    );
    await lip.fill("90");
    await lip.press("Enter");
    expect(await read(floor.getByRole("alert"))).toMatch(/^The truck reads .* to .* here/);
    await lip.press("Escape");
    expect(await floor.getByRole("alert").count()).toBe(0);
    expect(problems()).toEqual([]);
  });

  it("rolls the body: camber of both wheels to the floor, and the picture with it", async () => {
    const { page, problems } = await withExample(shared);
    const floor = await unfold(page, FOLDS[1]);
    await page.getByRole("button", { name: "Front", exact: true }).click();
    const before = await picture(page);
    await floor.getByRole("slider").fill("2");
    const model = exampleModel();
    const rolled = wheelTravelsInRoll(model, 0, radFromDeg(2));
    if (!rolled.ok) throw new Error("out of reach");
    const pose = floorAt(model, rolled.travels, 0)!;
    const row = await read(floor.getByRole("row").filter({ hasText: "Camber to the floor" }));
    // What a name means is no part of it.
    const exact = true;
    await floor.getByRole("rowheader", { name: "Camber to the floor + out at top", exact }).waitFor();
    await floor.getByRole("heading", { name: "Body roll, or one wheel on a bump", exact }).waitFor();
    for (const side of ["left", "right"] as const)
      expect(row).toContain(formatAngle(pose[side].camber, 2).replace("-", "−"));
    expect(await picture(page)).not.toBe(before);
    await shot(page, "front-end-roll-desk");
    // One wheel on a bump, the other hanging: each at its own travel, and what comes near there.
    for (const [side, typed] of [
      ["Left", "3 1/4"],
      ["Right", "-2 1/2"],
    ]) {
      const entry = floor.getByLabel(`${side} wheel travel, + bump`);
      await entry.fill(typed!);
      await entry.press("Enter");
    }
    const apart = solveApart(model.frontEnd, { left: 82.55, right: -63.5 }, 0);
    if (!apart.ok) throw new Error("out of reach");
    const told = poseSentence(gapsAt(model, apart), apart, model, formatOf(model.setup));
    await expect
      .poll(async () => plain(await read(floor.locator(".floor-roll p[role='status']"))))
      .toBe(told);
    // A name that a stance has is refused at its field; one of its own is taken.
    const name = floor.getByLabel("Name of this pose");
    await name.fill("driving");
    await name.press("Enter");
    await floor.getByRole("alert").filter({ hasText: "is the name of a stance already" }).waitFor();
    expect(await name.getAttribute("aria-invalid")).toBe("true");
    // The pose gets a name, is gone to by it from level, and is taken off the list again.
    await name.fill("left wheel on a curb");
    await name.press("Enter");
    const named = floor.getByRole("list", { name: "Named poses" });
    const curb = named.getByRole("button", { name: "left wheel on a curb", exact: true });
    await expect.poll(() => curb.getAttribute("aria-pressed")).toBe("true");
    expect(plain(await read(named))).toContain(
      "left wheel 3 1/4 in bump, right wheel 2 1/2 in droop, straight ahead",
    );
    expect(await name.inputValue()).toBe("");
    await floor.getByRole("button", { name: "Level again" }).click();
    expect(await floor.getByRole("slider").inputValue()).toBe("0");
    await expect.poll(() => curb.getAttribute("aria-pressed")).toBe("false");
    await curb.click();
    await expect.poll(() => curb.getAttribute("aria-pressed")).toBe("true");
    await expect
      .poll(async () => plain(await read(floor.locator(".floor-roll p[role='status']"))))
      .toBe(told);
    await named.getByRole("button", { name: "Remove left wheel on a curb" }).click();
    await curb.waitFor({ state: "detached" });
    // What cannot be shown is refused, until something else is shown.
    await named.getByRole("button", { name: "past bump", exact: true }).click();
    const refused = floor.getByRole("alert").filter({ hasText: "Halfway between its wheels" });
    expect(plain(await read(refused))).toMatch(/ at 6 in bump; the setup’s travel ends at .* bump\.$/);
    await floor.getByRole("button", { name: "Level again" }).click();
    expect(await floor.getByRole("slider").inputValue()).toBe("0");
    await refused.waitFor({ state: "detached" });
    // At a lock the way to where it is nearer takes itself away: by key, the focus goes on with the steering.
    await travelSlider(page).fill("82.55");
    await steeringSlider(page).fill("1");
    const before80 = page.locator(".pose-before");
    await expect.poll(() => read(before80)).toMatch(/^On the way there it is worse: at 80% of left lock /);
    await before80.getByRole("button", { name: "Go there" }).press("Enter");
    await expect.poll(() => steeringSlider(page).inputValue()).toBe("0.8");
    expect(await steeringSlider(page).evaluate((one) => one === document.activeElement)).toBe(true);
    await steeringSlider(page).fill("0");
    await travelSlider(page).fill("0");
    expect(problems()).toEqual([]);
  });

  it("tells turning circle, bump steer and the flattest tie rod", async () => {
    const { page, problems } = await withExample();
    const geometry = await unfold(page, FOLDS[3]);
    await geometry.getByText("Turning circle, curb to curb").waitFor();
    const model = exampleModel();
    const most = Math.max(
      ...(["left", "right"] as const).map((way) => turningCircle(model, way, 0)!.curbToCurb),
    );
    const text = await read(geometry);
    expect(text).toContain(`${(most / 304.8).toFixed(1)} ft`);
    expect(text).toMatch(/Bump steer over travel \? toes (in|out) by up to/);
    expect(text).toMatch(/Least bump steer, inner end \? (raise|lower) the inner tie rod end /);
    expect(problems()).toEqual([]);
  });

  it("bags, shocks and cones come and go with the Show menu", async () => {
    const { page, problems } = await withExample(shared);
    await page.getByRole("button", { name: "Front", exact: true }).click();
    let before = await picture(page);
    await page.getByRole("button", { name: "Show", exact: true }).click();
    for (const name of ["Springs and shocks", "Ball joint cones"]) {
      await page.getByRole("checkbox", { name }).uncheck();
      const after = await picture(page);
      expect(after).not.toBe(before);
      before = after;
    }
    for (const name of ["Springs and shocks", "Ball joint cones"])
      await page.getByRole("checkbox", { name }).check();
    await page.keyboard.press("Escape");
    expect(problems()).toEqual([]);
  });

  it("remembers which folds are open", async () => {
    const { page } = await withExample();
    await unfold(page, FOLDS[2]);
    // It may be open from before; a second press folds it.
    await unfold(page, FOLDS[3]);
    await fold(page, FOLDS[3]).locator("summary").first().click();
    await fold(page, FOLDS[3]).locator(".fold-inside").waitFor({ state: "detached" });
    await page.reload();
    await fold(page, FOLDS[2]).waitFor();
    expect(await fold(page, FOLDS[2]).getAttribute("open")).not.toBeNull();
    expect(await fold(page, FOLDS[3]).getAttribute("open")).toBeNull();
  });
});
