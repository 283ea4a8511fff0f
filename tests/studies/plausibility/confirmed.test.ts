import { describe, expect, it } from "vitest";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { confirmationOf } from "../../../src/studies/plausibility/unusual.ts";
import { unusualIn } from "../../../src/studies/plausibility/unusualIn.ts";
import { ROWS } from "./rows.ts";
import { changed, halfTon, modelFrom } from "./trucks.ts";

const HUB_FACE = ["knuckle", "hubFace"] as const;
const SO = { check: "hubFace", at: "knuckle.hubFace", length: "60 in" };
const open = (document: object, variant: string | null = null) =>
  unusualIn(modelFrom(document, variant)).open.map(({ check }) => check);

describe("an unusual value that somebody said is so", () => {
  const odd = changed(halfTon, [HUB_FACE, 60]);

  it("is told of no longer, and then what it explained is", () => {
    expect(open(odd)).toEqual(["hubFace"]);
    const said = changed(odd, [["confirmed"], [SO]]);
    expect(open(said)).toEqual(["lipTrack"]);
    expect(unusualIn(modelFrom(said)).confirmed.map(({ unusual, entry }) => [unusual.check, entry])).toEqual([
      ["hubFace", 0],
    ]);
  });

  it("is told of again at any other value, key or check", () => {
    const said = (entry: object, hubFace: unknown = 60) =>
      open(changed(odd, [HUB_FACE, hubFace], [["confirmed"], [entry]]));
    expect(said(SO, "60 1/16")).toEqual(["hubFace"]);
    expect(said({ ...SO, length: 61 })).toEqual(["hubFace"]);
    expect(said({ ...SO, at: "knuckle.span" })).toEqual(["hubFace"]);
    expect(said({ ...SO, check: "size" })).toEqual(["hubFace"]);
    expect(said({ check: "hubFace", at: "knuckle.hubFace", angle: 60 })).toEqual(["hubFace"]);
  });

  it("is one truck's: a variant is looked over as its own", () => {
    const variants = [
      { name: "odd too", patch: { wheel: { backspacing: 15 } } },
      { name: "another hub face", patch: { knuckle: { hubFace: 70 } } },
      { name: "plain", patch: { knuckle: { hubFace: 6 } } },
    ];
    const said = changed(odd, [["confirmed"], [SO]], [["variants"], variants]);
    expect(open(said, "odd too")).toEqual(["backspacing"]);
    expect(open(said, "another hub face")).toEqual(["hubFace"]);
    expect(open(said, "plain")).toEqual([]);
  });

  it("can be said of everything that a check finds, by what it says to write", () => {
    for (const { what, trips } of ROWS) {
      const model = modelFrom(trips);
      const { open: before } = unusualIn(model);
      const entries = before.map((one) => confirmationOf(one, model.setup.units));
      const after = unusualIn(modelFrom(changed(trips, [["confirmed"], entries])));
      expect(after.confirmed.length, what).toBe(before.length);
    }
  });

  it.each([
    [{ check: "hubface", at: "x", length: 1 }, "confirmed[0].check", 'did you mean "hubFace"?'],
    [
      { check: "hubFace", at: "knuckle.hubFace" },
      "confirmed[0].length",
      "as length, as angle or as number, one of them",
    ],
    [{ ...SO, angle: 3 }, "confirmed[0].length", "as length, as angle or as number, one of them"],
  ])("is an issue where it cannot be read: %j", (entry, key, mend) => {
    const read = resolveSetup(changed(odd, [["confirmed"], [entry]]), "test.json");
    const issues = read.ok ? [] : read.issues;
    expect(issues.map((issue) => issue.key)).toEqual([key]);
    expect(issues[0]!.mend).toContain(mend);
  });
});
