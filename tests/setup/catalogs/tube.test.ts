import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { isOfTube, withTube } from "../../../src/setup/catalogs/tube.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { valueAt } from "../../../src/setup/types/keyPath.ts";

const document: unknown = JSON.parse(readFileSync("shared/tubular-knuckle.json", "utf8"));
const AT = ["build", "members", 2] as const;
const member = valueAt(document, AT);
const tube = { diameter: 40, wall: 4.7752, material: "1026 DOM tube" };

it("a member takes a tube's diameter, wall and material, and keeps its name and joints", () => {
  const written = withTube(member, tube, "in");
  expect(written).toMatchObject({ kind: "tube", diameter: "40 mm", wall: "0.188" });
  const setup = resolveSetup(setAt(document, AT, written), "truck.json");
  if (!setup.ok) throw new Error(JSON.stringify(setup.issues));
  const { name, from, to } = member as Record<string, unknown>;
  const near = { diameter: expect.closeTo(40, 9), wall: expect.closeTo(4.7752, 9) };
  expect(setup.value.build!.members[2]).toEqual({ kind: "tube", name, from, to, ...tube, ...near });
  expect(withTube(member, tube, "mm")).toMatchObject({ diameter: "40", wall: "4.7752" });
});

it("a tube that tells no material leaves the member's", () => {
  expect(withTube(member, { ...tube, material: null }, "in")).not.toHaveProperty("material");
  expect(withTube({ material: "own" }, { ...tube, material: null }, "in")).toMatchObject({ material: "own" });
});

it("a member is known as of a tube by size and material, however they are typed", () => {
  const made = { diameter: "40 mm ± 0.1 mm", wall: 0.188, material: "1026 DOM tube" };
  expect(isOfTube(made, tube, "in")).toBe(true);
  expect(isOfTube(made, { ...tube, material: null }, "in")).toBe(true);
  expect(isOfTube({ ...made, wall: "3/16" }, tube, "in")).toBe(false);
  expect(isOfTube({ ...made, material: "1020 DOM tube" }, tube, "in")).toBe(false);
  expect(isOfTube({ ...made, wall: "" }, tube, "in")).toBe(false);
  expect(isOfTube({}, tube, "in")).toBe(false);
});
