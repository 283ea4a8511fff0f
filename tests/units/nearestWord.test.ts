import { describe, expect, it } from "vitest";
import { nearestWord } from "../../src/units/words.ts";

describe("nearestWord", () => {
  const keys = ["span", "pinHeight", "pinLead", "pinAngle", "hubFace", "steeringArm"];

  it.each([
    ["hubFase", "hubFace"],
    ["hub_face", "hubFace"],
    ["hubface", "hubFace"],
    ["hubFcae", "hubFace"], // neighbors swapped
    ["pinHieght", "pinHeight"],
    ["pinangel", "pinAngle"],
    ["spam", "span"],
  ])("takes %s for %s", (typed, meant) => {
    expect(nearestWord(typed, keys)).toBe(meant);
  });

  it.each(["", "x", "color", "kingpin", "zzzz"])("finds nothing near %j", (typed) => {
    expect(nearestWord(typed, keys)).toBeNull();
  });

  it("prefers the same first letter, then the order given, among equals", () => {
    expect(nearestWord("im", ["mm", "cm", "in", "m"])).toBe("in");
    expect(nearestWord("bat", ["bad", "bar"])).toBe("bad");
  });

  it("never takes a word for one it shares no letter place with", () => {
    expect(nearestWord("a", ["b"])).toBeNull();
    expect(nearestWord("a", [])).toBeNull();
  });
});
