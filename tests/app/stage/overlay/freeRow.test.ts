import { describe, expect, it } from "vitest";
import { freeRow } from "../../../../src/app/stage/overlay/freeRow.ts";

const PICTURE = { height: 560 };
const NAMES = [
  [360, 470],
  [90, 100],
] as const;

describe("names at the foot of the picture", () => {
  it("stand at its foot, in one row", () => {
    expect(freeRow(...NAMES, { ...PICTURE, taken: [] })).toBe(544);
  });

  it("go up past a dimension's text and past its line, as far as the other of the two too", () => {
    const taken = [{ x: 415, y: 540, width: 120 }];
    expect(freeRow(...NAMES, { ...PICTURE, taken })).toBe(504);
    const across = [
      { x: 60, y: 500 },
      { x: 770, y: 500 },
    ];
    expect(freeRow(...NAMES, { ...PICTURE, taken, lines: [across] })).toBe(484);
    // Down past the one name alone.
    const upright = [
      { x: 340, y: 400 },
      { x: 340, y: 560 },
    ];
    expect(freeRow(...NAMES, { ...PICTURE, taken: [], lines: [upright] })).toBe(384);
    const aside = upright.map(({ y }) => ({ x: 200, y }));
    expect(freeRow(...NAMES, { ...PICTURE, taken: [], lines: [aside] })).toBe(544);
  });

  it("stand at its foot where no row is free", () => {
    const taken = Array.from({ length: 40 }, (_, i) => ({ x: 400, y: 14 * i, width: 300 }));
    expect(freeRow(...NAMES, { ...PICTURE, taken })).toBe(544);
  });
});
