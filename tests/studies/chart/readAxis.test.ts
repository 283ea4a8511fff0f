import { describe, expect, it } from "vitest";
import { chartOrder } from "../../../src/studies/chart/chartOrder.ts";
import { readAxis, readAxisTable } from "../../../src/studies/chart/readAxis.ts";
import { windowSubject } from "../window/windowSubject.ts";

const { subject } = windowSubject("half-ton-on-air.json");

function typed(key: string, text: string): unknown {
  const read = readAxis(key, text, subject);
  return read.ok ? read.value.entries.map((entry) => entry.typed) : read.issues[0]!.mend;
}

function listed(key: string, text: string): unknown {
  const read = readAxisTable(key, text, subject);
  return read.ok ? read.value.entries : read.issues[0]!.mend;
}

describe("an axis as typed", () => {
  it("is every value from one to another by a step, both ends among them, free of rounding", () => {
    expect(typed("wheel.backspacing", "3:3 1/2:1/8")).toEqual([3, 3.125, 3.25, 3.375, 3.5]);
    expect(typed("wheel.backspacing", "3:4:0.1")).toEqual([
      3, 3.1, 3.2, 3.3, 3.4, 3.5, 3.6, 3.7, 3.8, 3.9, 4,
    ]);
    expect(typed("wheel.offset", "-10 mm:10mm:10 mm")).toEqual(
      [-10, 0, 10].map((mm) => Number((mm / 25.4).toPrecision(12))),
    );
    expect(typed("knuckle.pinAngle", "8:9:1/2")).toEqual([8, 8.5, 9]);
  });

  it("is called as a tape reads it", () => {
    const read = readAxis("wheel.backspacing", "3:4:3/8", subject);
    expect(read.ok && read.value.entries.map(({ label }) => label)).toEqual(["3", "3 3/8", "3 3/4"]);
  });

  it("is a list, with semicolons where a value holds a comma", () => {
    expect(typed("wheel.backspacing", "3, 3 1/2 , 100 mm")).toEqual([3, "3 1/2", "100 mm"]);
    expect(typed("tire.size", "P215/60R15, 31x10.50R15LT")).toEqual(["P215/60R15", "31x10.50R15LT"]);
    expect(typed("wheel.backspacing", "3,5; 4")).toEqual(["3,5", 4]);
    expect(typed("tire", "P215/60R15")).toEqual([{ size: "P215/60R15" }]);
  });

  it.each([
    ["wheel.backspacing", "3:6", "FROM:TO:STEP"],
    ["wheel.backspacing", "3:6:0", "more than 0"],
    ["wheel.backspacing", "6:3:1", "must not be more"],
    ["wheel.backspacing", "3:6:0.0001", "30,001 entries"],
    ["wheel.backspacing", "3, four", "no number"],
    ["wheel.backspacing", " ", "empty"],
    ["wheel.backspacing", " , ,", "holds no value"],
    ["tire.size", "P215/60R15,".repeat(20_000), "20,000 entries, and a chart takes 2,000"],
    ["wheel", "15x8", "CSV"],
    ["tire", "", "sizes such as"],
    ["knuckle", "3", "holds no single value"],
  ])("%s=%s is refused with what to mend", (key, text, mend) => {
    expect(typed(key, text)).toContain(mend);
  });
});

describe("an axis as a table", () => {
  it("has a column for the field, or for each key of a block, and a name where there is one", () => {
    expect(listed("tire.size", 'name,size\nOne,P215/60R15\n\nTwo,"P235/70R15"\n')).toEqual([
      { label: "One", typed: "P215/60R15" },
      { label: "Two", typed: "P235/70R15" },
    ]);
    expect(listed("tire.size", "\uFEFFP215/60R15\r\nP235/70R15")).toHaveLength(2);
    expect(listed("wheel", "rimWidth;backspacing;name\n8;4,5;Steel\n7;4 1/8;")).toEqual([
      { label: "Steel", typed: { rimWidth: 8, backspacing: "4,5" } },
      { label: "7, 4 1/8", typed: { rimWidth: 7, backspacing: "4 1/8" } },
    ]);
  });

  it.each([
    ["tire", "name,sise\nA,P215/60R15", 'no column "sise"'],
    ["tire.size", "a,b\nP215/60R15,1", "one of them size"],
    ["tire.size", "size\n", "no rows"],
    ["tire.size", "", "empty"],
    ["wheel.backspacing", "4 1/2\nfour", "row 2, backspacing: no number"],
    ["tire", "\u0089PNG\r\n\u001a\n\u0000\u0000", "no text; save it as CSV"],
    ["wheel", "rimWidth,backspacing\n8,four", "row 1 under the header, backspacing: no number found"],
    ["wheel", 'rimWidth,backspacing\n8,"4', "never closed"],
    ["tire.size", `size\n${"P215/60R15\n".repeat(20_000)}`, "20,000 entries, and a chart takes 2,000"],
  ])("%s of %j is refused with what to mend", (key, text, mend) => {
    expect(listed(key, text)).toContain(mend);
  });
});

describe("the order of a chart's cells", () => {
  it.each([
    [1, 1],
    [1, 7],
    [30, 30],
    [5, 12],
  ])("of %d × %d has each once, corners first", (columns, rows) => {
    const order = chartOrder(columns, rows, true);
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: columns * rows }, (_, i) => i));
    const corners = new Set([0, columns - 1, columns * (rows - 1), columns * rows - 1]);
    expect(new Set(order.slice(0, corners.size))).toEqual(corners);
  });

  it("shows the whole coarsely at any time: after three tenths no cell is far from one that is there", () => {
    const columns = 32;
    const seen = chartOrder(columns, columns, true).slice(0, columns * columns * 0.3);
    for (let cell = 0; cell < columns * columns; cell++) {
      const [x, y] = [cell % columns, Math.floor(cell / columns)];
      const near = seen.some(
        (at) => Math.abs((at % columns) - x) <= 1 && Math.abs(Math.floor(at / columns) - y) <= 1,
      );
      expect(near).toBe(true);
    }
  });
});
