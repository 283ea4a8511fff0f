import { describe, expect, it } from "vitest";
import { keyWords } from "../../../src/app/words/keyWords.ts";
import { setupFields } from "../../../src/setup/fieldCatalogue.ts";

/** A key of the setup file as no person says it. */
const RAW = /\b[a-z]+[A-Z]\w*/;

describe("a field's help", () => {
  it("calls other fields what the form calls them", () => {
    expect(keyWords("overall width is rimWidth + 1 in")).toBe("overall width is rim width + 1 in");
    expect(keyWords("must be more than half of wheel.rimDiameter")).toBe(
      "must be more than half of rim diameter",
    );
    expect(keyWords("must be more than min")).toBe("must be more than min");
  });

  it("holds no raw key, for any field of a setup", () => {
    const raw = setupFields()
      .flatMap(({ meaning, default: held }) => [meaning, held ?? ""])
      .filter((text) => RAW.test(keyWords(text)));
    expect(raw).toEqual([]);
    // The check would find one: some texts of the schema do name keys.
    expect(setupFields().some(({ meaning }) => RAW.test(meaning))).toBe(true);
  });
});
