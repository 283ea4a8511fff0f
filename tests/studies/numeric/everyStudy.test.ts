import { describe, expect, it } from "vitest";
import { floorReport } from "../../../src/studies/floor/floorReport.ts";
import { asBuiltReport } from "../../../src/studies/jig/asBuiltReport.ts";
import { LimitCell } from "../../../src/studies/limits/limitCell.ts";
import { carriersOf } from "../../../src/studies/loads/carriers.ts";
import { loadsReport } from "../../../src/studies/loads/loadsReport.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { PoseCells } from "../../../src/studies/search/poseCells.ts";
import { TriedPose } from "../../../src/studies/search/triedPose.ts";
import { windowOf } from "../../../src/studies/window/windowOf.ts";
import { assembledModel, exampleSetup } from "../../reference/demoModel.ts";
import { windowSubject } from "../window/windowSubject.ts";

/** How many poses searches solved while something ran, of which a clock may tell. */
function solved(run: (count: () => number) => void): number {
  let poses = 0;
  const { add } = PoseCells.prototype;
  const { put } = LimitCell.prototype;
  const { stands } = TriedPose.prototype;
  PoseCells.prototype.add = function (...args) {
    poses++;
    return add.apply(this, args);
  };
  LimitCell.prototype.put = function (...args) {
    poses++;
    return put.apply(this, args);
  };
  TriedPose.prototype.stands = function (...args) {
    poses++;
    return stands.apply(this, args);
  };
  try {
    run(() => poses);
  } finally {
    PoseCells.prototype.add = add;
    LimitCell.prototype.put = put;
    TriedPose.prototype.stands = stands;
  }
  return poses;
}

const limited = exampleSetup("half-ton-limits.json");
const ordered = assembledModel(exampleSetup("ordered-knuckle.json"));
const { subject } = windowSubject("half-ton-limits.json");

/** Each tells whether it was cut short; the floor's, which tells less then, is asked its budget. */
const STUDIES: Readonly<Record<string, (budget: Budget) => boolean>> = {
  window: (budget) => {
    const window = windowOf(subject, "knuckle.hubFace", { from: 120, to: 150, budget });
    return window.ok && window.value.cutShort === true;
  },
  asBuilt: (budget) => asBuiltReport(ordered, "ordered", budget)?.cutShort === true,
  floor: (budget) => {
    floorReport(assembledModel(limited), null, budget);
    return budget.cut;
  },
};

describe("studies made of searches end within a tenth of their budget, besides what they do in any case", () => {
  it.each(Object.entries(STUDIES))("%s", (_, study) => {
    const whole = solved(() => expect(study(Budget.endless())).toBe(false));
    const always = solved((count) => study(Budget.of(Number.MIN_VALUE, count)));
    expect(whole).toBeGreaterThan(always);
    for (const share of [0.5, 0.2]) {
      const most = share * (whole - always);
      const spent = solved((count) => expect(study(Budget.of(most / 1000, count))).toBe(true));
      expect(spent).toBeLessThanOrEqual(always + 1.1 * most);
    }
  });
});

it("loads looks at no more poses than its budget has looks at the clock", () => {
  const carriers = carriersOf(ordered.setup, "ordered");
  if (!carriers.ok) throw new TypeError("it has masses");
  let read = 0;
  const ask = { name: null, pose: null };
  const cut = loadsReport(
    ordered,
    carriers.value,
    null,
    ask,
    Budget.of(0.003, () => read++),
  );
  expect(cut.cutShort).toBe(true);
  expect(read).toBeLessThan(8);
  expect(cut.cases.length).toBeGreaterThan(0);
});
