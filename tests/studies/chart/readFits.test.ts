import { describe, expect, it } from "vitest";
import { readSetup } from "../../../src/setup/readSetup.ts";
import { valueAt } from "../../../src/setup/types/keyPath.ts";
import { fitsList, readFits, withFit } from "../../../src/studies/chart/readFits.ts";
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
