import { expect, it, test } from "vitest";
import { backspacingFromOffset, offsetFromBackspacing } from "../../src/units/wheelOffset.ts";

// Backspacing = (w + 2f)/2 + offset/25.4 in, worked by hand; f = 0.5 in is common practice, no source.
// Positive offset = mounting face outboard of the center plane: ISO 3911, from memory.
test.each([
  [7, 0, 4.0],
  [8, -19, 3.752],
  [8.5, 25, 5.7343],
  [9, 12, 5.4724],
  [10, -44, 3.7677],
])("a %d in rim with %d mm offset has %d in of backspacing", (rimInches, offset, backspacingInches) => {
  const backspacing = backspacingFromOffset(offset, rimInches * 25.4);
  expect(Math.abs(backspacing / 25.4 - backspacingInches)).toBeLessThan(1e-4);
  expect(Math.abs(offsetFromBackspacing(backspacingInches * 25.4, rimInches * 25.4) - offset)).toBeLessThan(
    25.4e-4,
  );
});

it("more backspacing moves the mounting face outboard by as much", () => {
  expect(offsetFromBackspacing(120, 203.2) - offsetFromBackspacing(110, 203.2)).toBeCloseTo(10, 12);
});

// Overall width 1 in over the rim width: common practice, no source, ±0.25 in.
it("half the overall width is the backspacing of a wheel without offset", () => {
  expect(backspacingFromOffset(0, 203.2)).toBeCloseTo((203.2 + 25.4) / 2, 12);
});
