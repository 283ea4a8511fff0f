import { describe, expect, it } from "vitest";
import { readSetup } from "../../../src/setup/readSetup.ts";
import { valueAt } from "../../../src/setup/types/keyPath.ts";
import { addFit, type FitFaults, type TypedFit } from "../../../src/studies/chart/addFit.ts";
import { fitBlocks, fitsList, readFits, withFit, withoutLine } from "../../../src/studies/chart/readFits.ts";
import { windowSubject } from "../window/windowSubject.ts";

const { subject } = windowSubject("half-ton-on-air.json");

function read(text: string) {
  const fits = readFits(text, subject);
  if (!fits.ok) throw new Error(fits.issues[0]!.mend);
  return fits.value;
}
const mend = (text: string) => {
  const fits = readFits(text, subject);
  return fits.ok ? "" : fits.issues[0]!.mend;
};

describe("a shop's list of wheels and tires", () => {
  it("tells a whole wheel and tire a line, and leaves nothing of the ones before", () => {
    const [fit] = read(
      "name,tire.size,wheel.rimDiameter,wheel.rimWidth,wheel.offset\nWide one,P255/60R15,15,8,10 mm\n",
    );
    expect(fit!.name).toBe("Wide one");
    const document = withFit(subject.document, fit!, subject);
    expect(valueAt(document, ["tire"])).toMatchObject({ size: "P255/60R15" });
    expect(valueAt(document, ["wheel"])).toMatchObject({ rimDiameter: 15, rimWidth: 8, offset: "10 mm" });
    expect(valueAt(document, ["wheel", "backspacing"])).toBeUndefined();
    expect(valueAt(document, ["knuckle"])).toBe(valueAt(subject.document, ["knuckle"]));
  });

  it("is told of each line as the truck that has it on is read", () => {
    const list =
      "name,tire.size,tire.diameter,tire.sectionWidth,wheel.rimDiameter,wheel.rimWidth,wheel.backspacing,wheel.offset\n" +
      "Back,P255/60R15,,,15,8 1/2,5,\nBy offset,P215/60R15,,,15,7 in,,10 mm\nBare,,28,9,15,8,4,\nTire alone,P225/60R15,,,,,,\n";
    for (const fit of read(list)) {
      const made = readSetup(JSON.stringify(withFit(subject.document, fit, subject)), "test", null);
      if (!made.ok) throw new Error(`${fit.name}: ${made.issues[0]!.mend}`);
      const { tire, wheel } = fitBlocks(fit, subject.setup);
      expect(made.value.setup.wheel, fit.name).toMatchObject(wheel);
      const { loadedRadius: _, ...told } = tire;
      expect(made.value.setup.tire, fit.name).toMatchObject(told);
    }
  });

  it("goes on without a line that is taken off, and is none without its last", () => {
    const list = 'name;tire.size\n"Low; narrow";P215/60R15\n\nUsual;P235/70R15\n';
    const shorter = withoutLine(list, 0);
    expect(read(shorter).map(({ name }) => name)).toEqual(["Usual"]);
    expect(withoutLine(shorter, 0)).toBe("");
    expect(read(withoutLine(list, 1)).map(({ name }) => name)).toEqual(["Low; narrow"]);
  });

  it("may tell tires alone, or have quotes and semicolons", () => {
    const fits = read('tire.size;name\nP215/60R15;"Low; narrow"\nP235/70R15;Usual\n');
    expect(fits.map(({ name, wheel }) => [name, wheel])).toEqual([
      ["Low; narrow", null],
      ["Usual", null],
    ]);
  });

  it.each(["half-ton-on-air.json", "compact-front-steer.json"])(
    "written out of %s to be filled in is that wheel and tire on a truck in either unit",
    (name) => {
      const wanted = windowSubject(name).subject;
      const [own] = read(fitsList(wanted.document));
      const made = readSetup(JSON.stringify(withFit(subject.document, own!, subject)), "test", null);
      if (!made.ok) throw new Error(made.issues[0]!.mend);
      expect(made.value.setup.wheel).toEqual({
        ...wanted.setup.wheel,
        center: made.value.setup.wheel.center,
      });
      expect(made.value.setup.tire).toEqual(wanted.setup.tire);
    },
  );

  it.each([
    ["tire.size\nP215/60R15", "one of them name"],
    ["name,tire.size\n", "no rows"],
    ["name,price\nA,3", 'no column "price"'],
    ["name,wheel.color\nA,red", "no column"],
    ["name,wheel.rimWidth\nA,wide", "row 1 under the header, rimWidth"],
    ['name,tire.size\n"A,3', "never closed"],
  ])("refuses %j with what to mend", (text, said) => {
    expect(mend(text)).toContain(said);
  });
});

describe("a wheel and tire added to a shop's list", () => {
  const typed = { size: "P235/70R15", rimWidth: "8", by: "backspacing", at: "4 1/2", name: "Deep" } as const;
  const naming = () => "as it is";
  const add = (list: string, change: Partial<TypedFit> = {}, bareUnits: "in" | "mm" = "in") =>
    addFit(list, { ...typed, ...change }, bareUnits, subject, naming);
  const added = (list: string, change: Partial<TypedFit> = {}, bareUnits: "in" | "mm" = "in") => {
    const got = add(list, change, bareUnits);
    if (!got.ok) throw new Error(JSON.stringify(got.faults));
    return got;
  };

  it("is the first line of a new list, and one more of a list in other columns that stays what it was", () => {
    const [first] = read(added("").list);
    expect(first).toMatchObject({
      name: "Deep",
      tire: { typed: { size: "P235/70R15" } },
      wheel: { typed: { rimDiameter: "15 in", rimWidth: "8 in", backspacing: "4 1/2 in" } },
    });
    const before = 'tire.size;Name\nP215/60R15;"Low; narrow"\nP235/75R15;Usual\n';
    const after = read(added(before, { by: "offset", at: "-12 mm" }).list);
    expect(after.slice(0, 2)).toEqual(read(before));
    expect(after[2]).toMatchObject({ name: "Deep", wheel: { typed: { offset: "-12 mm" } } });
  });

  it("takes a name and an offset that begin with +, and leaves those of the list as they were", () => {
    const { list, name } = added("name,wheel.offset\n=Old,+12 mm\n", {
      by: "offset",
      at: "+15 mm",
      name: "+15 deep",
    });
    expect(name).toBe("+15 deep");
    const twice = read(added(list).list);
    expect(twice.map((fit) => fit.name)).toEqual(["=Old", "+15 deep", "Deep"]);
    expect(twice.slice(0, 2).map(({ wheel }) => valueAt(wheel!.typed, ["offset"]))).toEqual([
      "+12 mm",
      "+15 mm",
    ]);
  });

  it("takes bare lengths in the units shown, and arithmetic", () => {
    const [one] = read(added("", { rimWidth: "203.2", at: "100 + 14.3" }, "mm").list);
    const made = readSetup(JSON.stringify(withFit(subject.document, one!, subject)), "test", null);
    if (!made.ok) throw new Error(made.issues[0]!.mend);
    const { rimWidth, offset } = made.value.setup.wheel;
    expect(rimWidth).toBeCloseTo(203.2, 6);
    // Backspacing is from the inboard edge of a rim an inch wider than where the beads sit.
    expect(offset).toBeCloseTo(114.3 - (203.2 + 25.4) / 2, 6);
  });

  it("is called what it is where it has no name", () => {
    expect(added("", { name: " " }).name).toBe("as it is");
  });

  it("keeps what was measured of the tire that is on the truck already", () => {
    const { size, loadedRadius } = valueAt(subject.document, ["tire"]) as Record<string, string>;
    expect(loadedRadius).toBeDefined();
    const [own] = read(added("", { size: size! }).list);
    expect(valueAt(withFit(subject.document, own!, subject), ["tire"])).toMatchObject({ size, loadedRadius });
    const [other] = read(added("", { size: "P215/60R15" }).list);
    expect(valueAt(withFit(subject.document, other!, subject), ["tire"])).toEqual({ size: "P215/60R15" });
  });

  it.each<[Partial<TypedFit>, keyof FitFaults, string]>([
    [{ size: "" }, "size", "required"],
    [{ size: "big" }, "size", "as on the sidewall"],
    [{ rimWidth: "wide" }, "rimWidth", ""],
    [{ rimWidth: "-8" }, "rimWidth", "more than 0"],
    [{ rimWidth: "8 ± 1/16" }, "rimWidth", "without ±"],
    [{ at: "" }, "at", "required"],
    [{ size: "P235/70R05" }, "size", "as on the sidewall"],
  ])("refuses %j at its own field", (change, field, said) => {
    const got = add("", change);
    expect(got.ok).toBe(false);
    if (!got.ok) expect(got.faults[field], JSON.stringify(got.faults)).toContain(said);
  });

  it("refuses a second line of one name, and a list that has no names", () => {
    expect(add(added("").list)).toMatchObject({ faults: { name: expect.stringContaining("already") } });
    expect(add("tire.size\nP215/60R15\n")).toMatchObject({ faults: { list: expect.any(String) } });
  });
});
