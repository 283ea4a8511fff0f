import { describe, expect, it } from "vitest";
import { pastedBlock } from "../../src/app/editing/points/pastedBlock.ts";
import { pasteInto } from "../../src/app/editing/points/pasteInto.ts";
import { fieldAt } from "../../src/setup/fieldCatalogue.ts";
import { exampleDocument } from "./exampleText.ts";

const XYZ = [0, 1, 2].map((i) => fieldAt(["truck", "body", 0, "points", 0, i], exampleDocument)!);

describe("a block of cells that was copied", () => {
  it("comes apart at tabs, with fractions and units left whole", () => {
    expect(pastedBlock("17 3/4\t34 15/16\t12.5\r\n-1 1/8 in\t900 mm\t5' 3\"\r\n", 3)).toEqual({
      ok: true,
      rows: [
        ["17 3/4", "34 15/16", "12.5"],
        ["-1 1/8 in", "900 mm", "5' 3\""],
      ],
    });
  });

  it("comes apart at semicolons or commas where there are no tabs, and at spaces between plain decimals", () => {
    const rows = [
      ["1 1/2", "2", "3"],
      ["4", "5", "6"],
    ];
    expect(pastedBlock("1 1/2, 2, 3\n4, 5, 6", 3)).toEqual({ ok: true, rows });
    expect(pastedBlock("1 1/2;2;3\n4;5;6", 3)).toEqual({ ok: true, rows });
    expect(pastedBlock("1.5 2 3\n4 5 -6.25", 3)).toEqual({
      ok: true,
      rows: [
        ["1.5", "2", "3"],
        ["4", "5", "-6.25"],
      ],
    });
  });

  it("loses a heading of words, empty rows and empty cells at the right edge", () => {
    expect(pastedBlock("x\ty\tz\n\n1\t2\t3\t\t\n", 3)).toEqual({ ok: true, rows: [["1", "2", "3"]] });
  });

  it("takes the quotes off cells that a spreadsheet quoted", () => {
    expect(pastedBlock('"5 1/4"""\t2\n3\t4', 3)).toEqual({
      ok: true,
      rows: [
        ['5 1/4"', "2"],
        ["3", "4"],
      ],
    });
  });

  it("is no block when it is one cell, so that it goes in as text does", () => {
    expect(pastedBlock("5 5/8", 3)).toBeNull();
    expect(pastedBlock("  -17 3/4 in\n", 3)).toBeNull();
    expect(pastedBlock("", 3)).toBeNull();
  });

  it("is refused with its row when it is too wide or has a hole", () => {
    expect(pastedBlock("1\t2\t3\n1\t2\t3\t4", 3)).toEqual({
      ok: false,
      mend: expect.stringMatching(/row 2 has 4 cells/),
    });
    expect(pastedBlock("1\t2\t3", 2)).toEqual({ ok: false, mend: expect.stringMatching(/2 go from here/) });
    expect(pastedBlock("1\t\t3\n4\t5\t6", 3)).toEqual({
      ok: false,
      mend: expect.stringMatching(/row 1 has an empty cell/),
    });
  });
});

describe("pasting cells over points", () => {
  const points = [
    [14, 34, 24],
    [0, 34, 30],
  ];
  const base = {
    points,
    row: 0,
    column: 0,
    fields: XYZ,
    mayGrow: true,
    fileUnits: "in",
    bareUnits: "in",
  } as const;

  it("replaces from the cell on and adds rows past the end", () => {
    const rows = [
      ["1", "2 1/2", "3"],
      ["4", "5", "6"],
    ];
    expect(pasteInto({ ...base, rows, row: 1 })).toEqual({
      ok: true,
      points: [
        [14, 34, 24],
        [1, "2 1/2", 3],
        [4, 5, 6],
      ],
    });
    expect(points).toHaveLength(2);
  });

  it("fills a new row's other cells from the row before it", () => {
    const rows = [["40"], ["41"], ["42"]];
    expect(pasteInto({ ...base, rows, column: 2 })).toEqual({
      ok: true,
      points: [
        [14, 34, "40"],
        [0, 34, "41"],
        [0, 34, "42"],
      ].map((point) => point.map(Number)),
    });
  });

  it("reads bare numbers in the unit shown, and gives them that unit in a file of the other", () => {
    expect(pasteInto({ ...base, rows: [["25", "50", "100"]], bareUnits: "mm" })).toEqual({
      ok: true,
      points: [
        ["25 mm", "50 mm", "100 mm"],
        [0, 34, 30],
      ],
    });
  });

  it("takes nothing when one cell does not read, and names it", () => {
    const rows = [
      ["1", "2", "3"],
      ["4", "5 im", "6"],
    ];
    expect(pasteInto({ ...base, rows })).toEqual({
      ok: false,
      mend: expect.stringMatching(/row 2, y: “5 im” .*"in"/),
    });
  });

  it("takes no more rows than there are where rows are fixed", () => {
    const rows = [["1"], ["2"], ["3"]];
    expect(pasteInto({ ...base, rows, mayGrow: false })).toEqual({
      ok: false,
      mend: expect.stringMatching(/only 2/),
    });
  });
});
