import { expect, it } from "vitest";
import { worstHereText } from "../../../src/studies/wording/stageTexts.ts";

it("a pose shown is called the worst where it rubs, the nearest where it clears, so far where the check was cut short", () => {
  expect(worstHereText(true, false)).toBe("This is where it is worst");
  expect(worstHereText(false, false)).toBe("This is where it comes nearest");
  expect(worstHereText(true, true)).toBe("This is where it is worst so far");
});
