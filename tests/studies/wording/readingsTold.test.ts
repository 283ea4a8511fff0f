import { describe, expect, it } from "vitest";
import { agreeSentence } from "../../../src/studies/wording/readingsTold.ts";

describe("a worksheet with no place of the truck measured", () => {
  it("names what is read already, so that it agrees with the count beside it", () => {
    expect(agreeSentence([], [])).toBe("No place on the truck has been measured yet.");
    expect(agreeSentence([], ["Tire size"])).toBe(
      "Read so far: tire size; no place on the truck has been measured yet.",
    );
  });
});
