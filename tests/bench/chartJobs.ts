import { FIRST_CELLS } from "../../src/studies/chart/chartOrder.ts";
import { chartSearch } from "../../src/studies/chart/chartSearch.ts";
import type { AxisAsk } from "../../src/studies/chart/chartTypes.ts";
import { Budget } from "../../src/studies/numeric/budget.ts";
import { windowSubject } from "../studies/window/windowSubject.ts";
import type { Job } from "./job.ts";

/** Cells along an axis. */
const SIDE = 30;

/** ms of processor time: ten seconds on two cores. */
const AIM = 20_000;

/** ms until the first picture: what the page asks for first. */
const FIRST_AIM = 1000;

/** A truck's backspacing against its tire's width. */
export function askedChart(file = "half-ton-on-air.json") {
  const { subject } = windowSubject(file);
  const axis = (key: string, from: number, to: number): AxisAsk => ({
    key,
    entries: Array.from({ length: SIDE }, (_, i) => {
      const typed = from + ((to - from) * i) / (SIDE - 1);
      return { label: String(typed), typed };
    }),
  });
  const ask = {
    x: axis("wheel.backspacing", 3, 6),
    y: axis("tire.sectionWidth", 7, 12),
    travel: null,
    lock: 1,
  };
  return { subject, ask };
}

/** The plain truck's backspacing against its tire's width, 30 × 30. */
export function chartJob(): Job {
  const { subject, ask } = askedChart();
  return {
    name: `a fit chart of the plain truck, ${SIDE} × ${SIDE}`,
    each: "chart",
    size: 1,
    repeats: 3,
    aimMs: AIM,
    run() {
      const made = chartSearch(subject, ask);
      if (!made.ok) throw new Error(made.issues[0]!.mend);
      return made.value
        .order()
        .map((cell) => made.value.cellAt(cell, Budget.endless()))
        .reduce((sum, cell) => sum + (cell.kind === "verdict" ? (cell.gap ?? 0) : 0), 0);
    },
  };
}

/** The same chart's first picture: its corners and middles, which show all of it coarsely. */
export function firstPictureJob(): Job {
  const { subject, ask } = askedChart();
  return {
    name: `the first picture of that chart, ${FIRST_CELLS} of its cells`,
    each: "picture",
    size: 1,
    repeats: 5,
    aimMs: FIRST_AIM,
    run() {
      const made = chartSearch(subject, ask);
      if (!made.ok) throw new Error(made.issues[0]!.mend);
      return made.value
        .order()
        .slice(0, FIRST_CELLS)
        .map((cell) => made.value.cellAt(cell, Budget.endless()))
        .reduce((sum, cell) => sum + (cell.kind === "verdict" ? (cell.gap ?? 0) : 0), 0);
    },
  };
}

/** Checks that a plain loop over the same chart takes. */
export const CHART_CELLS = SIDE * SIDE;
