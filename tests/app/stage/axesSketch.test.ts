import { describe, expect, it } from "vitest";
import { labelPlaces } from "../../../src/app/stage/axesSketch.ts";

describe("the names of the axes", () => {
  it("stand a line apart where two tips on one side are nearly level, the upper one above", () => {
    const [forward, left, up] = labelPlaces([
      { x: 22, y: 4 },
      { x: 12, y: 8 },
      { x: 0, y: -28 },
    ]);
    expect(left!.y - forward!.y).toBeCloseTo(13, 9);
    expect([forward!.anchor, left!.anchor, up!.anchor]).toEqual(["start", "start", "middle"]);
    expect(up!.y).toBe(-40);
    // Beyond both tips: the lower name does not lie on the longer axis.
    expect([forward!.x, left!.x]).toEqual([27, 27]);
  });

  it("stay at their tips on two sides, and an axis seen from its end has none", () => {
    expect(
      labelPlaces([
        { x: 22, y: 4 },
        { x: -22, y: 4 },
        { x: 2, y: 3 },
      ]),
    ).toEqual([{ anchor: "start", x: 27, y: 4 }, { anchor: "end", x: -27, y: 4 }, null]);
  });
});
