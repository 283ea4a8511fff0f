import { expect, it } from "vitest";
import { turnedText } from "../../../src/app/measure/fields/turnedText.ts";
import { evaluateLength } from "../../../src/units/lengthExpression.ts";

const TYPED = [
  "5 7/8",
  "5-7/8",
  "5.875",
  "149.2 mm",
  '5 7/8"',
  "5 3/4 + 1/8",
  "(5 1/2 - 1/16)/2",
  "7/8",
  "-1/4",
  "0",
];

it.each(TYPED)("%s, read the other way, is kept as the same length with the other sign", (typed) => {
  const [plain, kept] = [evaluateLength(typed, "in"), evaluateLength(turnedText(typed), "in")];
  if (!plain.ok || !kept.ok) throw new Error("both are lengths");
  expect(kept.mm).toBeCloseTo(0 - plain.mm, 9);
});

it.each([...TYPED, "5 7/8 im", "", "-5 7/8 ± 1/16"])("%s turned twice is what was typed", (typed) => {
  expect(turnedText(turnedText(typed))).toBe(typed);
});

it("keeps how well it is known beside it", () => {
  expect(turnedText("5 7/8 ± 1/16")).toBe("-5 7/8 ± 1/16");
});
