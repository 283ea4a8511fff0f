import { describe, expect, it } from "vitest";
import { pastedBlock, pasteInto, pasteNote } from "../../src/app/measure/points/pasteInto.ts";
import { fieldAt } from "../../src/setup/fieldCatalogue.ts";
import { exampleDocument } from "./exampleText.ts";

const XYZ = [0, 1, 2].map((i) => fieldAt(["truck", "body", 0, "points", 0, i], exampleDocument)!);

describe("a block of cells that was copied", () => {
  it("comes apart at tabs, with fractions and units left whole", () => {
    expect(pastedBlock("17 3/4\t34 15/16\t12.5\r\n-1 1/8 in\t900 mm\t5' 3\"\r\n", 3)).toEqual([
      ["17 3/4", "34 15/16", "12.5"],
      ["-1 1/8 in", "900 mm", "5' 3\""],
    ]);
  });

  it("comes apart at semicolons or commas where there are no tabs, and at spaces between plain decimals", () => {
    const rows = [
      ["1 1/2", "2", "3"],
      ["4", "5", "6"],
    ];
    expect(pastedBlock("1 1/2, 2, 3\n4, 5, 6", 3)).toEqual(rows);
    expect(pastedBlock("1 1/2;2;3\n4;5;6", 3)).toEqual(rows);
    expect(pastedBlock("1.5 2 3\n4 5 -6.25", 3)).toEqual([
      ["1.5", "2", "3"],
      ["4", "5", "-6.25"],
    ]);
  });

  it("loses a heading of words, empty rows and empty cells at the right edge", () => {
    expect(pastedBlock("x\ty\tz\n\n1\t2\t3\t\t\n", 3)).toEqual([["1", "2", "3"]]);
  });

  it("takes the quotes off cells that a spreadsheet quoted", () => {
    expect(pastedBlock('"5 1/4"""\t2\n3\t4', 3)).toEqual([
      ['5 1/4"', "2"],
      ["3", "4"],
    ]);
  });

  it("is no block when it is one cell, so that it goes in as text does", () => {
    expect(pastedBlock("5 5/8", 3)).toBeNull();
    expect(pastedBlock("  -17 3/4 in\n", 3)).toBeNull();
    expect(pastedBlock("", 3)).toBeNull();
  });

  it("takes numbers as people and programs write them, decimal commas too", () => {
    expect(pastedBlock("383.0 .5 +383\n1e3 383,0 -2.5E-1", 3)).toEqual([
      ["383.0", ".5", "+383"],
      ["1e3", "383,0", "-2.5E-1"],
    ]);
    expect(pastedBlock("383,0", 3)).toBeNull();
    expect(pastedBlock("1,5\t2,5\t3\n4\t5\t6", 3)).toEqual([
      ["1,5", "2,5", "3"],
      ["4", "5", "6"],
    ]);
    expect(pastedBlock("383,12.5,6\n1,2,3", 3)).toEqual([
      ["383", "12.5", "6"],
      ["1", "2", "3"],
    ]);
  });

  it("loses names of points before their numbers, and nothing else", () => {
    expect(pastedBlock("P1\t1\t2\t3\nP2\t4\t5\t6", 3)).toEqual([
      ["1", "2", "3"],
      ["4", "5", "6"],
    ]);
    expect(pastedBlock("1\t2\t3\t4", 3)).toEqual([["1", "2", "3", "4"]]);
  });
});

const NOTHING_LEFT = { unread: [], leftOver: [], dropped: 0 };

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
      ...NOTHING_LEFT,
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
      ...NOTHING_LEFT,
      points: [
        [14, 34, "40"],
        [0, 34, "41"],
        [0, 34, "42"],
      ].map((point) => point.map(Number)),
    });
  });

  it("reads bare numbers in the unit shown, and gives them that unit in a file of the other", () => {
    expect(pasteInto({ ...base, rows: [["25", "50", "100"]], bareUnits: "mm" })).toEqual({
      ...NOTHING_LEFT,
      points: [
        ["25 mm", "50 mm", "100 mm"],
        [0, 34, 30],
      ],
    });
  });

  it("takes what reads, and gives back a cell that does not with its place and mend", () => {
    const rows = [
      ["1", "2", "3"],
      ["4", "5 im", "6"],
      ["7", "", "9"],
    ];
    expect(pasteInto({ ...base, rows })).toEqual({
      points: [
        [1, 2, 3],
        [4, 34, 6],
        [7, 34, 9],
      ],
      unread: [
        { row: 1, column: 1, text: "5 im", mend: expect.stringMatching(/did you mean "in"/) },
        { row: 2, column: 1, text: "", mend: expect.stringMatching(/^empty/) },
      ],
      leftOver: [],
      dropped: 0,
    });
  });

  it("reads decimal commas, and does not guess at thousands", () => {
    const { points: read, unread } = pasteInto({ ...base, rows: [["383,5", "1,234", "+1e1"]] });
    expect(read[0]).toEqual(["383,5", 34, "+1e1"]);
    expect(unread).toEqual([
      { row: 0, column: 1, text: "1,234", mend: expect.stringMatching(/write 1.234 or 1234/) },
    ]);
  });

  it("puts in what has a place and tells the rest", () => {
    const rows = [["1"], ["2"], ["3"]];
    const pasted = pasteInto({ ...base, rows, mayGrow: false });
    expect(pasted.points).toEqual([
      [1, 34, 24],
      [2, 34, 30],
    ]);
    expect(pasted.leftOver).toEqual(["3"]);
    expect(pasteInto({ ...base, rows: [["1", "2", "3", "4"]] }).leftOver).toEqual(["4"]);
    expect(pasteNote(3, pasted, ["x", "y", "z"])).toBe("3 rows pasted. No place here for “3”.");
  });

  it("takes whole rows put in at the top for all there are; one row, or rows further down, go over what is there", () => {
    const eleven = Array.from({ length: 11 }, (_, i) => [i, 34, 24]);
    const six = Array.from({ length: 6 }, (_, i) => [String(i), "30", "20"]);
    const whole = pasteInto({ ...base, points: eleven, rows: six });
    expect(whole.points).toEqual(six.map((row) => row.map(Number)));
    expect(pasteNote(6, whole, ["x", "y", "z"])).toBe(
      "6 rows pasted. They are all there are now; 5 after them are gone, and undo brings them back.",
    );
    for (const other of [
      { row: 1 },
      { rows: six.slice(0, 1) },
      { rows: six.map(([x]) => [x!]) },
      { mayGrow: false },
    ])
      expect(pasteInto({ ...base, points: eleven, rows: six, ...other }).points).toHaveLength(11);
  });
});
