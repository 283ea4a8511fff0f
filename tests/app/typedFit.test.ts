import { expect, it } from "vitest";
import { filledFit, nextFit } from "../../src/app/show/shop/typedFit.ts";

const NONE = { size: null, rimWidth: null, by: "backspacing", at: "", name: "" } as const;
const FIRST = { size: "P235/70R15", rimWidth: "8" };
const OTHER = { size: "P205/60R16", rimWidth: "7" };

it("after a wheel of the truck's own tire the form of another truck has that truck's", () => {
  const typed = { ...filledFit(NONE, FIRST), by: "offset", at: "12 mm", name: "Deep" } as const;
  const next = nextFit(typed, FIRST);
  expect(filledFit(next, FIRST)).toEqual({ ...FIRST, by: "offset", at: "", name: "" });
  expect(filledFit(next, OTHER)).toMatchObject(OTHER);
});

it("after a wheel of another tire the next begins with that", () => {
  const next = nextFit({ ...filledFit(NONE, FIRST), size: "P255/60R15" }, FIRST);
  expect(filledFit(next, OTHER)).toMatchObject({ size: "P255/60R15", rimWidth: "7" });
});
