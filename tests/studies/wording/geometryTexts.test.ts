import { describe, expect, it } from "vitest";
import type { BumpSteer } from "../../../src/studies/geometry/bumpSteer.ts";
import type { FlatTieRod } from "../../../src/studies/geometry/flatTieRod.ts";
import {
  bumpSteerText,
  circleText,
  farText,
  flatText,
  ratioText,
} from "../../../src/studies/wording/geometryTexts.ts";

const IN = 25.4;
const DEG = Math.PI / 180;
const INCHES = { units: "in" } as const;
const MILLIMETERS = { units: "mm" } as const;

const bump = (travel: number, toeChange: number) => ({ most: { travel, toeChange } }) as BumpSteer;
const flat = (move: number, mostAfter: number, atEndOfSearch: boolean) =>
  ({ end: "inner", move, mostAfter, atEndOfSearch }) as FlatTieRod;

describe("geometry in words", () => {
  it.each([
    [farText(null, INCHES), "–"],
    [farText(undefined, INCHES), "–"],
    [farText(2 * IN, INCHES), "2 in"],
    [farText(-2e5, INCHES), "far"],
    [circleText(12 * 40 * IN, INCHES), "40.0 ft"],
    [circleText(11_640, MILLIMETERS), "11.64 m"],
    [ratioText({ type: "pitman", mean: 1.02 } as never, "in"), "1.02° per ° of pitman arm"],
    [ratioText({ type: "rack", mean: (9.2 * DEG) / IN } as never, "in"), "9.2° per in of rack"],
    [ratioText({ type: "rack", mean: 0.36 * DEG } as never, "mm"), "3.6° per 10 mm of rack"],
    [flatText(null, INCHES), "–"],
  ])("%s", (found, wanted) => expect(found).toBe(wanted));

  it("bump steer is that of the wheel that toes more, said in or out; a wheel that cannot follow is told", () => {
    const said = bumpSteerText([bump(2 * IN, 0.2 * DEG), bump(-3 * IN, -0.5 * DEG)], INCHES);
    expect(said).toMatch(/^toes out by up to 0\.50°, at 3 in .*droop/);
    expect(bumpSteerText([bump(2 * IN, 0.2 * DEG)], INCHES)).toMatch(
      /^toes in by up to 0\.20°, at 2 in .*bump/,
    );
    expect(bumpSteerText([bump(0, 0)], INCHES)).toBe("none");
    expect(bumpSteerText([bump(0, 1), null], INCHES)).toBe("the wheels cannot follow the whole travel");
  });

  it("a tie rod end is moved up or down, in thirty-seconds, with what is left", () => {
    expect(flatText(flat(IN / 32, 0.05 * DEG, false), INCHES)).toBe(
      "raise the inner tie rod end 1/32 in (0.05° remains)",
    );
    expect(flatText(flat(-IN, 0.2 * DEG, true), INCHES)).toMatch(
      /^lower the inner tie rod end 1 in \(nothing past that was looked at; 0\.20° remains\)$/,
    );
  });
});
