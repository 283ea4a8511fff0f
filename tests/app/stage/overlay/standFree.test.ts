import { describe, expect, it } from "vitest";
import { standFree } from "../../../../src/app/stage/overlay/standFree.ts";

const LINE = 19;

describe("the text of a dimension or a center", () => {
  it("stands where it is wanted, inside the picture, and is noted", () => {
    const room = { width: 400, height: 300, taken: [] };
    expect(standFree({ x: 200, y: 150 }, 80, LINE, room)).toEqual({ x: 200, y: 150 });
    expect(standFree({ x: 395, y: 2 }, 80, LINE, room)).toEqual({ x: 358, y: LINE });
    expect(room.taken).toEqual([
      { x: 200, y: 150, width: 80 },
      { x: 358, y: LINE, width: 80 },
    ]);
  });

  it("goes up or down past labels that stand there and past marks", () => {
    const wanted = { x: 200, y: 150 };
    const taken = [{ x: 230, y: 150, width: 60 }];
    const past = standFree(wanted, 80, LINE, { width: 400, height: 300, taken });
    expect(Math.abs(past.y - 150)).toBeGreaterThanOrEqual(LINE);
    const mark = { x: 240, y: 145 };
    const off = standFree(wanted, 80, LINE, { width: 400, height: 300, taken: [], marks: [mark] });
    expect(off.x).toBe(200);
    expect(Math.abs(off.y - mark.y)).toBeGreaterThanOrEqual(22);
    const beside = { x: 260, y: 150 };
    expect(standFree(wanted, 80, LINE, { width: 400, height: 300, taken: [], marks: [beside] })).toEqual(
      wanted,
    );
  });

  it("goes to the side of a line that stands upright, and over one that lies, no farther than it needs", () => {
    const wanted = { x: 200, y: 150 };
    const upright = [
      { x: 190, y: 0 },
      { x: 190, y: 300 },
    ];
    const beside = standFree(wanted, 80, LINE, { width: 400, height: 300, taken: [], lines: [upright] });
    expect(beside.y).toBe(150);
    expect(beside.x).toBeGreaterThanOrEqual(190 + 42);
    expect(beside.x).toBeLessThan(280);
    const level = upright.map(({ y }) => ({ x: y, y: 150 }));
    const over = standFree(wanted, 80, LINE, { width: 400, height: 300, taken: [], lines: [level] });
    expect(over.x).toBe(200);
    expect(Math.abs(over.y - 150)).toBe(LINE);
  });

  it("lies on a line rather than on another label, where it must on one", () => {
    const room = { width: 400, height: 300 };
    const lines = Array.from({ length: 40 }, (_, i) => [
      { x: 10 * i, y: 0 },
      { x: 10 * i, y: 300 },
    ]);
    const taken = [{ x: 200, y: 150, width: 60 }];
    const at = standFree({ x: 200, y: 150 }, 80, LINE, { ...room, taken: [...taken], lines });
    expect(at).toEqual(standFree({ x: 200, y: 150 }, 80, LINE, { ...room, taken: [...taken] }));
    expect(Math.abs(at.y - 150)).toBeGreaterThanOrEqual(LINE);
  });
});
