import { describe, expect, it } from "vitest";
import type { Setup } from "../../src/setup/types/types.ts";
import { LimitBorders } from "../../src/studies/limits/limitBorders.ts";
import { modelOf } from "../../src/studies/model/model.ts";
import { march } from "../../src/studies/numeric/march.ts";
import { rootBetween } from "../../src/studies/numeric/rootsOver.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { worstGap } from "../../src/studies/search/worstGap.ts";
import { demoModel, lipAlone } from "./demoModel.ts";

const model = demoModel(lipAlone());
const NO_NUMBERS = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
const NO_TOLERANCES = [...NO_NUMBERS, 0, -0, -1];

describe("a walk refuses bounds it would never arrive at", () => {
  it.each(NO_NUMBERS)("%d", (bound) => {
    let looks = 0;
    const look = () => {
      if (++looks > 1000) throw new Error("does not end");
      return -1;
    };
    expect(() => march(look, 0, bound, 1)).toThrow(RangeError);
    expect(() => march(look, bound, 0, 1)).toThrow(RangeError);
    expect(() => march(look, 0, 1, bound)).toThrow(RangeError);
    expect(() => rootBetween((x) => x, bound, 1)).toThrow(RangeError);
    expect(() => rootBetween((x) => x, 1, bound)).toThrow(RangeError);
    expect(looks).toBe(0);
    const limited = demoModel({ ...lipAlone(), limits: { bumpStop: { travel: 1 } } });
    expect(() => new LimitBorders(limited).alongTravel(0, bound, 10)).toThrow(RangeError);
  });

  it("a stretch of no length is still looked at once", () => {
    expect(march(() => 3, 2, 2, 0)).toEqual({ clearTo: 2, next: 2, found: 3 });
  });
});

describe("a search refuses a tolerance it would never come down to, and a range without ends", () => {
  it.each(NO_TOLERANCES)("tolerance %d", (tolerance) => {
    expect(() => checkClearance(model, { tolerance })).toThrow(RangeError);
  });

  it("the search by itself", () => {
    const range = { armLow: -0.1, armHigh: 0.1, steerLow: -1, steerHigh: 1 };
    const tolerances = { asked: 0.1, finer: 0.1, border: 0.1 };
    for (const bad of NO_TOLERANCES)
      for (const kind of Object.keys(tolerances))
        expect(() => worstGap({} as never, range, { ...tolerances, [kind]: bad })).toThrow(RangeError);
    for (const bound of NO_NUMBERS)
      for (const end of Object.keys(range))
        expect(() => worstGap({} as never, { ...range, [end]: bound }, tolerances)).toThrow(RangeError);
  });
});

describe("a setup with a number that is not finite makes no model", () => {
  const { setup } = model;
  it.each<[string, number, (bad: number) => Partial<Setup>]>([
    ["knuckle.hubFace", Number.NaN, (hubFace) => ({ knuckle: { ...setup.knuckle, hubFace } })],
    ["travel.bump", Number.POSITIVE_INFINITY, (bump) => ({ travel: { ...setup.travel, bump } })],
    ["stances[0].travel", Number.NaN, (travel) => ({ stances: [{ name: "nowhere", travel }] })],
    [
      "truck.body[0].positions[4]",
      Number.NaN,
      (bad) => {
        const positions = Float64Array.of(0, 0, 0, 0, bad, 0, 1, 0, 0);
        const part = { name: "m", kind: "mesh", side: "both", positions, triangles: Uint32Array.of(0, 1, 2) };
        return { truck: { ...setup.truck, body: [part as Setup["truck"]["body"][number]] } };
      },
    ],
  ])("%s", (key, bad, change) => {
    const made = modelOf({ ...setup, ...change(bad) }, "made.json");
    expect(made.ok ? null : made.issues).toEqual([
      { file: "made.json", key, value: String(bad), mend: "must be a finite number" },
    ]);
  });
});
