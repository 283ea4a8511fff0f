import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chartSearch } from "../../../src/studies/chart/chartSearch.ts";
import type { AxisAsk, ChartAsk, ChartCell } from "../../../src/studies/chart/chartTypes.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { sampledWorst } from "../../reference/sampledCheck.ts";
import { setupCases } from "../../reference/setupCases.ts";
import { runs } from "../../runs.ts";
import { subjectOf, windowSubject } from "../window/windowSubject.ts";
import { plainLoop, verdictIn } from "./plainLoop.ts";
import { writtenDocument } from "./writtenDocument.ts";

const SEED = 1955;

function axis(key: string, ...values: readonly unknown[]): AxisAsk {
  return { key, entries: values.map((typed) => ({ label: String(typed), typed })) };
}

function charted(subject: Parameters<typeof chartSearch>[0], ask: ChartAsk): readonly ChartCell[] {
  const made = chartSearch(subject, ask);
  if (!made.ok) throw new TypeError(made.issues[0]!.mend);
  const cells: ChartCell[] = [];
  for (const cell of made.value.order()) cells[cell] = made.value.cellAt(cell, Budget.endless());
  return cells;
}

/** Every verdict as a plain loop of checks tells it, and what is told of each cell true of it. */
function expectLoop(document: object, subject: Parameters<typeof chartSearch>[0], ask: ChartAsk): string[] {
  const cells = charted(subject, ask);
  const poses = { travel: ask.travel, lock: ask.lock };
  const loop = plainLoop(document, ask, { poses });
  const told = cells.map(verdictIn);
  expect(told).toEqual(loop.map((report) => report?.verdict ?? "issue"));
  for (const [i, cell] of cells.entries()) {
    const report = loop[i];
    if (cell.kind !== "verdict" || !report?.worst) continue;
    // Both were found at a pose that is there, and neither is farther from the worst than it says.
    const least = Math.max(...report.parts.map(({ tolerance }) => tolerance));
    expect(cell.gap!).toBeGreaterThan(report.worst.gap - least - 1e-9);
    if (cell.bound === null) expect(cell.verdict).toBe("rubs");
    else {
      expect(cell.bound).toBeLessThanOrEqual(report.worst.gap + 1e-6);
      expect(cell.gap! - cell.bound).toBeLessThanOrEqual(0.1 + 1e-9);
    }
  }
  return told;
}

describe("every cell of a chart says what a plain loop of checks says", () => {
  it(`on three random trucks (seed ${SEED})`, () => {
    const trucks = [
      ...fc.sample(setupCases("rack"), { seed: SEED, numRuns: runs(1, 5) }),
      ...fc.sample(setupCases("pitman"), { seed: SEED, numRuns: runs(1, 5) }),
    ];
    const seen = new Set<string>();
    for (const { setup } of trucks) {
      const document = writtenDocument(setup);
      const { subject } = subjectOf(document);
      const { hubFace } = setup.knuckle;
      const ask = {
        x: axis("wheel.offset", ...[-50, 0, 50].map((by) => setup.wheel.offset + by)),
        y: axis("knuckle.hubFace", ...[-40, 40].map((by) => hubFace + by)),
        travel: null,
        lock: 1,
      };
      for (const verdict of expectLoop(document, subject, ask)) seen.add(verdict);
    }
    expect([...seen]).toEqual(expect.arrayContaining(["clear", "rubs"]));
  });

  it("on the plain truck with all its hardware, tires that go on the rim and one that does not", () => {
    const { subject } = windowSubject("half-ton-on-air.json");
    const ask = {
      x: axis("wheel.backspacing", "3 1/2", 4.75, 5, "5 3/4"),
      y: axis("tire.size", "P215/60R15", "P235/70R15", "P235/70R16"),
      travel: null,
      lock: 1,
    };
    const told = expectLoop(subject.document as object, subject, ask);
    expect(new Set(told)).toEqual(new Set(["clear", "close", "rubs", "issue"]));
  });

  it("on a truck whose limits cut the range, between two heights and to part of the lock", () => {
    const { subject } = windowSubject("half-ton-limits.json");
    const ask = {
      x: axis("wheel.backspacing", 4, "5 1/4"),
      y: axis("knuckle.hubFace", "5 1/2", "6 1/2"),
      travel: { low: -20, high: 60 },
      lock: 0.6,
    };
    expectLoop(subject.document as object, subject, ask);
  });
});

describe("a check of part of the range", () => {
  const { model } = windowSubject("half-ton-on-air.json");
  const poses = { travel: { low: 10, high: 45 }, lock: 0.5 };

  it("finds and bounds what a grid of just these poses has", () => {
    const report = checkClearance(model, { poses });
    const within = { ...model, setup: { ...model.setup, travel: { droop: 10, bump: 45 } } };
    for (const entry of report.parts.filter(({ side, together }) => side === "left" && !together)) {
      expect(entry.travel).toBeGreaterThanOrEqual(10);
      expect(entry.travel).toBeLessThanOrEqual(45);
      expect(Math.abs(entry.steer)).toBeLessThanOrEqual(0.5);
      const sampled = sampledHalfLock(within, entry);
      expect(entry.bound).toBeLessThanOrEqual(sampled + 1e-6);
      expect(entry.gap).toBeLessThanOrEqual(sampled + 0.1);
    }
  });

  it("of one height alone is no range of heights", () => {
    const one = checkClearance(model, { poses: { travel: { low: 30, high: 30 }, lock: 1 } });
    for (const { travel, together } of one.parts) if (!together) expect(travel).toBeCloseTo(30, 6);
  });
});

/** The least gap over a grid of half the lock. */
function sampledHalfLock(
  model: Parameters<typeof sampledWorst>[0],
  entry: Parameters<typeof sampledWorst>[1],
): number {
  const { frontEnd } = model;
  const halved = {
    ...frontEnd.steering,
    innerEndsTo: (out: Float64Array, steer: number) => frontEnd.steering.innerEndsTo(out, 0.5 * steer),
  };
  const slower = { ...model, frontEnd: { ...frontEnd, steering: halved } };
  return sampledWorst(slower, entry, { travels: 9, steers: 13 }).gap;
}

describe("what a cell says", () => {
  const { subject } = windowSubject("half-ton-on-air.json");
  const ask = {
    x: axis("wheel.backspacing", 4, 4.25, 4.5, 5, 5.5),
    y: axis("tire.sectionWidth", 9, 9.5, 10),
    travel: null,
    lock: 1,
  };

  it("does not depend on which cells were worked out before", () => {
    const whole = charted(subject, ask);
    const made = chartSearch(subject, ask);
    if (!made.ok) throw new TypeError("no chart");
    for (const cell of [14, 7, 3]) expect(made.value.cellAt(cell, Budget.endless())).toEqual(whole[cell]);
  });

  it("tells where the truck as it stands is, however its numbers are typed", () => {
    const made = chartSearch(subject, ask);
    if (!made.ok) throw new TypeError("no chart");
    expect(made.value.presentOn("x")).toBe(1);
    expect(made.value.presentOn("y")).toBe(null);
    const lists = {
      ...ask,
      x: { key: "wheel", entries: [{ label: "own", typed: { rimWidth: 8, backspacing: "107.95 mm" } }] },
      y: axis("tire.size", "P215/60R15", "235/70R15"),
    };
    const list = chartSearch(subject, lists);
    if (!list.ok) throw new TypeError("no chart");
    // Barrel and center of another wheel are not this one's: a list's wheel is told whole.
    expect(list.value.presentOn("x")).toBe(0);
  });

  it("is unfinished once the budget is spent, and no verdict then", () => {
    let now = 0;
    const budget = Budget.of(0.02, () => now++);
    const made = chartSearch(subject, ask);
    if (!made.ok) throw new TypeError("no chart");
    const cells = made.value.order().map((cell) => made.value.cellAt(cell, budget));
    const loop = charted(subject, ask);
    expect(cells.some(({ kind }) => kind === "unfinished")).toBe(true);
    for (const [i, cell] of made.value.order().entries())
      if (cells[i]!.kind === "verdict") expect(verdictIn(cells[i]!)).toBe(verdictIn(loop[cell]!));
  });

  it("is an issue where no height asked about is in reach", () => {
    const [cell] = charted(subject, { ...ask, travel: { low: 900, high: 950 } });
    expect(cell).toMatchObject({ kind: "issue", issue: expect.stringContaining("in reach") });
  });

  it.each([
    ["wheel.backspacin", "no such field"],
    ["truck.body", "holds no single value"],
    ["truck.body[1].vertices[0][0]", "mesh"],
    ["truck.body[9].radius", "no such field"],
  ])("of an axis over %s is refused", (key, mend) => {
    const made = chartSearch(subject, { ...ask, x: axis(key, 1) });
    expect(made.ok ? "" : made.issues[0]!.mend).toContain(mend);
  });
});
