import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { fieldsWith, formFields } from "../../../src/app/measure/formFields.ts";

const shared = join(import.meta.dirname, "..", "..", "..", "shared");
const document: unknown = JSON.parse(readFileSync(join(shared, "half-ton-limits.json"), "utf8"));
const all = formFields(document);
const paths = (sought: string) => fieldsWith(all, sought).map(({ path }) => path.join("."));

describe("a field sought by a part of its name", () => {
  it.each([
    ["backsp", "wheel.backspacing"],
    ["hub face", "knuckle.hubFace"],
    ["inner tie rod end", "truck.steering.innerEnd"],
    ["Lip points", "truck.body.0.points"],
    ["front pivot upper", "truck.upperArm.frontPivot"],
  ])("%s leads to %s first", (sought, path) => {
    expect(paths(sought)[0]).toBe(path);
  });

  it("is found by what it means, after those that are called so", () => {
    const found = paths("rim");
    const named = found.map((path) => all.find((one) => one.path.join(".") === path)!);
    const isCalled = named.map(({ group, name }) => /rim/i.test(`${group} ${name}`));
    expect(found.length).toBeGreaterThan(2);
    expect(isCalled).toEqual([...isCalled].sort((a, b) => Number(b) - Number(a)));
    expect(isCalled).toContain(false);
  });

  it("leads to what is given in its stead, after those that the form has", () => {
    const offset = fieldsWith(all, "offset").find(({ path }) => path.join(".") === "wheel.offset")!;
    expect(offset.goesTo).toEqual(["wheel", "backspacing"]);
    expect(offset.instead).toBe("Backspacing");
    const width = fieldsWith(all, "section width")[0]!;
    expect([width.name, width.goesTo]).toEqual(["Section width", ["tire", "size"]]);
    expect(fieldsWith(all, "lip height")[0]!.goesTo).toEqual(["stances", 0, "travel"]);
    expect(fieldsWith(all, "steering linkage")[0]!.goesTo).toEqual(["truck", "steering"]);
    for (const one of all) {
      const isItself = one.goesTo.join(".") === one.path.join(".");
      expect(one.instead === "" || !isItself).toBe(true);
      if (isItself || one.instead === "") continue;
      expect(all.some(({ path, instead }) => instead === "" && path.join(".") === one.goesTo.join("."))).toBe(
        true,
      );
    }
  });

  it("is first what has a word that begins so, and never the kind of a part", () => {
    const named = paths("lip").map((path) => all.find((one) => one.path.join(".") === path)!);
    expect(named[0]!.name).toContain("fender lip");
    expect(named.findIndex(({ name }) => name.startsWith("Caliper"))).toBeGreaterThan(
      named.findLastIndex(({ group, name }) => /\blip\b/.test(`${group} ${name}`)),
    );
    expect(all.some(({ path }) => path.at(-1) === "kind")).toBe(false);
  });

  it("is none where nothing was typed, or nothing is called so", () => {
    expect(paths("  ")).toEqual([]);
    expect(paths("sunroof")).toEqual([]);
  });

  it("stands there once, a block that the setup does not have as one, points of a line as their line", () => {
    const keys = all.map(({ path }) => path.join("."));
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toContain("build");
    expect(keys.filter((key) => key.startsWith("build"))).toEqual(["build"]);
    expect(keys.filter((key) => key.startsWith("truck.body.0.points"))).toEqual(["truck.body.0.points"]);
    expect(keys.some((key) => /^(variants|format|readings|fromExample)/.test(key))).toBe(false);
  });
});
