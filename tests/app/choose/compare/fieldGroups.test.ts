import { describe, expect, it } from "vitest";
import { fieldGroups, type NamedField } from "../../../../src/app/choose/compare/fieldGroups.ts";

const FIELDS: readonly NamedField[] = [
  { key: "knuckle.span", group: "Knuckle", name: "Ball joint span" },
  { key: "knuckle.hubFace", group: "Knuckle", name: "Hub-face distance" },
  { key: "wheel.backspacing", group: "Wheel", name: "Backspacing" },
];

describe("fields to choose among", () => {
  const keysOf = (sought: string) =>
    fieldGroups(FIELDS, sought).map(([group, inIt]) => [group, inIt.map(({ key }) => key)]);

  it("stand there once each: arrow keys go past what is changed most often", () => {
    expect(keysOf("")).toEqual([
      ["Changed most often", ["knuckle.hubFace", "wheel.backspacing"]],
      ["Knuckle", ["knuckle.span"]],
    ]);
  });

  it("stand in their blocks where one is sought, those changed most often too", () => {
    expect(keysOf("knuckle")).toEqual([["Knuckle", ["knuckle.span", "knuckle.hubFace"]]]);
    expect(keysOf(" HUB dist ")).toEqual([["Knuckle", ["knuckle.hubFace"]]]);
    expect(keysOf("nothing such")).toEqual([]);
  });

  it("begin with their blocks where none is among those changed most often", () => {
    expect(fieldGroups(FIELDS.slice(0, 1), "").map(([group]) => group)).toEqual(["Knuckle"]);
  });
});
