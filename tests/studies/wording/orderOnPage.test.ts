import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readCatalog } from "../../../src/setup/catalogs/readCatalog.ts";
import { catalogChoice } from "../../../src/studies/wording/catalogChoice.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { orderChanges, orderPageRemarks } from "../../../src/studies/wording/orderOnPage.ts";
import { picksNote } from "../../../src/studies/wording/orderPicks.ts";
import { orderedDocument, sheetOf } from "../order/orderedTruck.ts";

const remarks = (order: object, patch: object = {}) => {
  const sheet = sheetOf(orderedDocument(order, patch));
  return orderPageRemarks(sheet, formatOf(sheet.setup));
};

describe("an order on the page", () => {
  it("says once how many numbers differ and by which button, then each in the words of its field", () => {
    const told = remarks(
      { upperBallJoint: { item: "Plover 41", taper: null }, finish: null },
      { knuckle: { hubFace: 6 }, hardware: { rotor: { thickness: 1 } } },
    );
    expect(told).toEqual([
      "2 numbers differ from the truck’s, which answers go by: “Put the order into the truck…” changes them.",
      "Hub-face distance: 5 1/2 in ordered, 6 in on the truck",
      "Rotor thickness: 1 1/4 in ordered, 1 in on the truck",
      "The order does not say: Finish.",
    ]);
    expect(remarks({}, { knuckle: { hubFace: 6 } })[0]).toBe(
      "1 number differs from the truck’s, which answers go by: “Put the order into the truck…” changes it.",
    );
  });

  it("tells what a ball joint's radius comes of: half the diagonal of its housing, not half its width", () => {
    const sheet = sheetOf(orderedDocument({}, { hardware: { upperBallJoint: { radius: 1 } } }));
    // Plover 41: 2 in across and 1 1/2 in high; a 3-4-5 triangle of half sizes.
    const { label, from, to, why } = orderChanges(sheet, formatOf(sheet.setup))[0]!;
    expect([label, from, to]).toEqual(["Upper ball joint housing radius", "1 in", "1 1/4 in"]);
    expect(why).toMatch(
      /whole housing, 2 in across and 1 1\/2 in high: from the middle to the housing’s corner/,
    );
    expect(orderPageRemarks(sheet, formatOf(sheet.setup))[1]).toBe(
      `${label}: ${to} ordered, ${from} on the truck (${why})`,
    );
    const other = sheetOf(orderedDocument({}, { knuckle: { hubFace: 6 } }));
    expect(orderChanges(other, formatOf(other.setup)).map((change) => change.why)).toEqual([""]);
  });

  it("says on a closed group what of its parts is chosen, by its numbers, or not", () => {
    const upper = { of: "upper", item: "Plover 41", isTyped: true };
    const lower = { of: "lower", item: null, isTyped: false };
    expect(picksNote([upper, lower])).toBe("upper Plover 41, lower not chosen");
    expect(picksNote([{ of: undefined, item: null, isTyped: true }])).toBe("by its numbers");
    expect(picksNote([{ of: undefined, item: undefined, isTyped: false }])).toBe("not given");
  });

  it("uses no word of the setup file, whatever is open, misfits or differs", () => {
    const told = [
      ...remarks({}),
      ...remarks(
        {
          upperBallJoint: null,
          lowerBallJoint: { item: "none such" },
          hub: null,
          steeringArm: null,
          drop: 9,
        },
        { hardware: null },
      ),
    ].join(" ");
    expect(told).toMatch(/The order does not say: Upper ball joint, stud taper; /);
    expect(told).not.toMatch(/\bblocks?\b|written|[a-z][A-Z]|\w\.[a-z]/);
  });
});

describe("a part to choose from a catalog", () => {
  const choices = (file: string, kind: "ballJoints" | "brakes" | "hubs") => {
    const read = readCatalog(readFileSync(`shared/catalogs/${file}.json`, "utf8"), file);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return read.value[kind]!.map((item) => catalogChoice(item, { units: "in" }));
  };

  it("is told by its name and its own numbers", () => {
    expect(choices("ball-joints", "ballJoints").slice(0, 2)).toEqual([
      "Plover 41 · taper 1.5 in/ft · stud 1 3/4 in · housing 2 in",
      "Plover 62 · taper 2 in/ft · stud 2 1/8 in · housing 2 1/4 in",
    ]);
    expect(choices("brakes", "brakes")[1]).toBe(
      "Kestrel 11 six · rotor 11 1/4 in · 6x5 1/2 · rims from 15 in",
    );
    expect(choices("hubs", "hubs")[0]).toBe(
      "Heron 5x5 · 5x5 · inner bearing 1 1/4 in · outer bearing 3/4 in",
    );
  });

  it("leaves out what its catalog does not say", () => {
    const joint = { taper: null, studLength: 25.4, housingDiameter: null, housingHeight: null };
    expect(catalogChoice({ name: "A", source: null, part: joint }, { units: "in" })).toBe("A · stud 1 in");
  });
});
