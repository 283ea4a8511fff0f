import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
/** A truck with nothing but its fender lip: quick to look over. */
const lip = folder.write("lip.json", demoDocument(lipAlone()));
const tires = "@shared/catalogs/tires-for-charts.csv";
const wheels = "@shared/catalogs/wheels-for-charts.csv";
const lists = ["--x", `wheel=${wheels}`, "--y", `tire=${tires}`, "--budget", "100"];
const fields = ["--x", "wheel.backspacing=4 1/4:5 1/4:1/4", "--y", "knuckle.hubFace=5 5/16, 6 5/16"];

describe("chart", () => {
  const { code, document } = capturedJson(["chart", lip, ...fields]);

  it("answers in the file's units: axes, poses, and a row of cells for each value of y", () => {
    expect(document).toMatchObject({
      units: "in",
      x: { field: "wheel.backspacing", name: "Backspacing", values: [4.25, 4.5, 4.75, 5, 5.25] },
      y: { field: "knuckle.hubFace", name: "Hub-face distance", labels: ["5 5/16", "6 5/16"] },
      travel: { from: -3.75, to: 3.5 },
      lock: 1,
      allowance: 0.25,
      present: { column: 0, row: 1 },
    });
    expect(document.cells.map((row: unknown[]) => row.length)).toEqual([5, 5]);
  });

  it("says of each combination what check says of that truck, within the tolerance", () => {
    const rubs = document.cells[1][0];
    expect(rubs).toMatchObject({ verdict: "rubs", part: "fender lip", side: "left", bound: null });
    const alone = capturedJson(["check", lip]).document;
    expect(alone.verdict).toBe("rubs");
    expect(rubs.gap).toBeLessThan(0);
    expect(rubs.gap).toBeGreaterThan(alone.worst.bound - 1e-9);
    const narrow = folder.write("narrow.json", {
      ...demoDocument(lipAlone()),
      knuckle: { ...(demoDocument(lipAlone()) as { knuckle: object }).knuckle, hubFace: "5 5/16" },
    });
    const checked = capturedJson(["check", narrow]).document;
    const cell = document.cells[0][0];
    expect(cell.verdict).toBe(checked.verdict);
    expect(Math.abs(cell.gap - checked.worst.gap)).toBeLessThanOrEqual(0.1 / 25.4 + 1e-9);
  });

  it("ends in 1 where the truck as it stands rubs, in 0 where it does not, whatever the rest does", () => {
    expect(code).toBe(1);
    const cleared = ["--variant", "narrow hub face", "--x", "wheel.backspacing=4 1/4, 1"];
    const other = capturedJson(["chart", lip, ...cleared, "--y", "knuckle.hubFace=5 5/16"]);
    expect([other.code, other.document.present]).toEqual([0, { column: 0, row: 0 }]);
    expect(other.document.cells[0][1].verdict).toBe("rubs");
  });

  it("of a chart it is not on ends in 0 where anything clears or is close, else in 1", () => {
    const run = (x: string) => captured(["chart", lip, "--x", x, "--y", "knuckle.hubFace=6"]).code;
    expect([run("wheel.backspacing=1, 5 1/2"), run("wheel.backspacing=1, 1 1/2")]).toEqual([0, 1]);
  });

  it("looks only at the heights and the lock asked about", () => {
    const one = capturedJson(["chart", lip, ...fields, "--heights", "full droop:driving", "--lock", "0.5"]);
    expect(one.document).toMatchObject({ travel: { from: -3.75, to: 0 }, lock: 0.5 });
    for (const cell of one.document.cells.flat()) {
      expect(Math.abs(cell.steer)).toBeLessThanOrEqual(0.5);
      expect(cell.travel).toBeLessThanOrEqual(1e-9);
    }
  });

  it("prints a table with marks, the truck as it stands in brackets, and a line a cell for a spreadsheet", () => {
    const table = captured(["chart", lip, ...fields]).out;
    expect(table).toContain("Hub-face distance \\ Backspacing");
    expect(table).toMatch(/6 5\/16 +\[x 3\/16\]/);
    expect(table).toContain("The current truck (4 1/4, 6 5/16) rubs by 3/16 in or more.");
    const csv = captured(["chart", lip, ...fields, "--csv"])
      .out.trimEnd()
      .split("\n");
    expect(csv).toHaveLength(11);
    expect(csv[0]).toContain("backspacing,hubFace,verdict,gap (in),bound (in)");
    expect(csv[6]).toMatch(/^4 1\/4,6 5\/16,rubs,-0\.\d+,,fender lip,left,/);
  });
});

describe("a chart with a slip in its list", () => {
  it("says once why a row does not go together, and works out the others", () => {
    const axes = ["--x", "wheel.backspacing=5, 5 1/4", "--y", "tire.size=P215/60R15, P2l5/60R15"];
    const { out } = captured(["chart", lip, ...axes]);
    expect(out).toContain("Of 4 combinations 2 clear and 2 do not go together.");
    expect(out.match(/5, P2l5\/60R15 does not go together: tire\.size: not a tire size/g)).toHaveLength(1);
  });
});

describe("a chart in pieces", () => {
  const whole = (way: readonly string[]) => captured(["chart", lip, ...lists, ...way]);
  const pieces = [1, 2, 3, 4, 5].map((at) => {
    const { code, out } = captured(["chart", lip, ...lists, "--shard", `${at}/5`]);
    expect(code).toBe(0);
    return folder.write(`piece-${at}.jsonl`, out);
  });

  it.each([[["--json"]], [["--csv"]], [[]]])(
    "put together is the whole byte for byte, printed with %j",
    (way) => {
      const shuffled = [3, 0, 4, 1, 2].map((i) => pieces[i]!);
      const merged = captured(["chart", "merge", ...shuffled, ...way]);
      const one = whole(way);
      expect(merged.out).toBe(one.out);
      expect(merged.code).toBe(one.code);
      expect(merged.out.length).toBeGreaterThan(1000);
    },
  );

  it.each([
    ["with one missing", () => pieces.slice(1), "pieces are missing: 1/5"],
    ["with a setup among them", () => [...pieces, "shared/half-ton-on-air.json"], "is no piece of a chart"],
    ["with one cut off", () => [...pieces.slice(1), cutOff(pieces[0]!)], "does not hold every cell"],
    ["with one of another chart", () => [...pieces.slice(1), otherPiece()], "is a piece of another chart"],
    ["that are not there", () => ["nowhere.jsonl"], "no such file"],
  ])("%s is refused", (_, files, mend) => {
    const { code, out, error } = captured(["chart", "merge", ...files()]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toContain(mend);
  });

  function cutOff(file: string): string {
    return folder.write("cut.jsonl", readFileSync(file, "utf8").split("\n").slice(0, -3).join("\n"));
  }

  function otherPiece(): string {
    return folder.write(
      "other.jsonl",
      captured(["chart", lip, ...lists, "--lock", "0.9", "--shard", "1/5"]).out,
    );
  }
});

describe("a chart that cannot be", () => {
  const many = folder.write("many.csv", `size\n${"P215/60R15\n".repeat(20_000)}`);
  const letter = folder.write("letter.csv", "name,diameter,sectionWidth\nA,26,B5\n");
  const empty = folder.write("empty.csv", "");
  it.each<[string[], string]>([
    [["--x", "wheel.backspacing=3:6:1/8"], "--y: is missing"],
    [["--x", "wheel.backspacing", "--y", "knuckle.hubFace=6"], "must be FIELD=VALUES"],
    [[...fields.slice(0, 2), "--y", "wheel.backspacing=3"], "the same field as --x"],
    [[...fields.slice(0, 2), "--y", "tire.size=@nowhere.csv"], "nowhere.csv: there is no such file"],
    [[...fields, "--heights", "parked:driving"], 'there is no stance "parked"'],
    [[...fields, "--lock", "2"], "--lock"],
    [[...fields, "--shard", "3/2"], "must be K/N"],
    [[...fields, "--shard", "1/2", "--json"], "chart merge"],
    [["--x", "wheel.backspacing=3:5:0.001", "--y", "knuckle.hubFace=5:7:0.001"], "2,001 entries"],
    [[...fields.slice(0, 2), "--y", `tire.size=@${many}`], "many.csv: --y tire.size: has 20,000 entries"],
    [
      [...fields.slice(0, 2), "--y", `tire=@${letter}`],
      "row 1 under the header, sectionWidth: no number found",
    ],
    [[...fields.slice(0, 2), "--y", `tire=@${empty}`], "the list is empty; give a row for each entry"],
  ])("%j says what to mend", (options, mend) => {
    const { code, out, error } = captured(["chart", lip, ...options]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toContain(mend);
    expect(error.trimEnd().split("\n")).toHaveLength(1);
  });
});
