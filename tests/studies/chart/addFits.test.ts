import { describe, expect, it } from "vitest";
import { addFits } from "../../../src/studies/chart/addFits.ts";
import { fitBlocks, readFits } from "../../../src/studies/chart/readFits.ts";
import { pastedText } from "../../../src/studies/wording/shopWords.ts";
import { documentInMm } from "../../cli/documentInMm.ts";
import { demoModel, lipAlone } from "../demoModel.ts";
import { subjectOf, windowSubject } from "../window/windowSubject.ts";

const { subject } = windowSubject("half-ton-on-air.json");
let unnamed = 0;
const add = (text: string, list = "") =>
  addFits(list, text, "backspacing", "in", subject, () => `wheel ${++unnamed}`);
const rows = (list: string) => {
  const fits = readFits(list, subject);
  if (!fits.ok) throw new Error(fits.issues[0]!.mend);
  return fits.value.map(({ name, tire, wheel }) => [
    name,
    (tire!.typed as { size: string }).size,
    (wheel!.typed as { rimWidth: string }).rimWidth,
    (wheel!.typed as { backspacing: string }).backspacing,
  ]);
};

describe("lines pasted into a shop's list", () => {
  it("are wheels, whatever stands between their values, and rims as they are sold", () => {
    const { list, added, faults } = add(
      "P235/70R15, 8, 4 1/2, Deep, polished\r\nP215/70R15\t15x7\t3.5\tNarrow\n\nP255/60R15;15 X 8 1/2;4 3/4;Wide\nP235/75R15 8 4 1/4\n",
    );
    expect(faults).toEqual([]);
    expect(added).toBe(4);
    expect(rows(list)).toEqual([
      ["Deep polished", "P235/70R15", "8 in", "4 1/2 in"],
      ["Narrow", "P215/70R15", "7 in", "3.5 in"],
      ["Wide", "P255/60R15", "8 1/2 in", "4 3/4 in"],
      [expect.stringMatching(/^wheel/), "P235/75R15", "8 in", "4 1/4 in"],
    ]);
  });

  it("tell offsets where the form does: no backspacing is made of one", () => {
    const text = "P235/70R15, 8, 12 mm, Deep\nP235/70R15, 8, near, Wide";
    const { list, faults } = addFits("", text, "offset", "in", subject, () => "wheel");
    const fits = readFits(list, subject);
    expect(fits.ok && fits.value.map(({ wheel }) => wheel!.typed)).toEqual([
      { rimDiameter: "15 in", rimWidth: "8 in", offset: "12 mm" },
    ]);
    expect(faults.map(({ mend }) => mend)).toEqual([expect.stringMatching(/^offset /)]);
  });

  it("of a shop in millimeters have rims as they are sold in inches, and all else without a unit in millimeters", () => {
    const inMm = subjectOf(documentInMm(demoModel(lipAlone()).setup) as object, "mm");
    for (const { subject: of } of [{ subject }, inMm]) {
      const { list, added } = addFits(
        "",
        "P235/70R15; 15 x 8; 100 mm; Sold\nP235/70R15; 15 x 203.2 mm; 100; Metric\nP235/70R15; 203.2; 100; Bare",
        "backspacing",
        "mm",
        of,
        () => "unnamed",
      );
      expect(added).toBe(3);
      const fits = readFits(list, of);
      if (!fits.ok) throw new Error(fits.issues[0]!.mend);
      const widths = fits.value.map((fit) => fitBlocks(fit, of.setup).wheel.rimWidth);
      for (const width of widths) expect(width).toBeCloseTo(8 * 25.4, 9);
    }
  });

  it("are taken one by one: what is wrong of a line is told, and keeps no other back", () => {
    const before = add("P235/70R15,8,4,Usual").list;
    const { list, added, faults } = add(
      "P235/70R15,8\nround,8,4\nP235/70R15,16x8,4\nP235/70R15,8,5,Usual\nP235/70R15,8,5,Deep\nP235/70R15,wide,4",
      before,
    );
    expect(added).toBe(1);
    expect(rows(list).map(([name]) => name)).toEqual(["Usual", "Deep"]);
    expect(faults.map(({ mend }) => mend)).toEqual([
      "backspacing required",
      expect.stringMatching(/^tire size /),
      "rim width is of a 16 in rim, and the tire is for 15 in",
      expect.stringContaining("the list has “Usual” already"),
      expect.stringMatching(/^rim width /),
    ]);
    expect(pastedText({ added, faults })).toMatch(
      /^1 added\. Not added: “P235\/70R15,8” \(backspacing required\); .* and 2 more\.$/,
    );
    expect(pastedText({ added: 3, faults: [] })).toBe("3 added.");
  });
});
