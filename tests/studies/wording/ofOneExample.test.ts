import { expect, it } from "vitest";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { exampleDoubts, ofOneExample } from "../../../src/studies/wording/answerWords.ts";
import { exampleTruck } from "./referee/cases.ts";

const { setup } = exampleTruck("half-ton-on-air.json", null).model;

/** A truck with so many numbers of an example. */
function told(letter: string, count: number, isAsItCame: boolean, of = "Some half-ton") {
  const fields = Array.from({ length: count }, (_, i): KeyPath => ["truck", "body", i]);
  const mixed: Setup = { ...setup, fromExample: { of, fields, isAsItCame, mine: [], mineInAll: [] } };
  return { letter, truck: { setup: mixed }, doubts: exampleDoubts(mixed) };
}
const textsOf = (both: readonly ReturnType<typeof told>[]) =>
  ofOneExample(both).map(({ doubts }) => doubts.map(({ text }) => text).join(" "));

it("an example beside itself on another wheel is told in the same words of both", () => {
  const [a, b] = textsOf([told("A", 84, true), told("B", 82, false)]);
  expect(a).toBe(b);
  expect(a).toMatch(/^Both are of the example “Some half-ton”, an invented truck: /);
});

it("counts that differ stand in one sentence, each with its letter", () => {
  const [a, b] = textsOf([told("A", 40, false), told("B", 38, false)]);
  expect(a).toBe(b);
  expect(a).toMatch(/^Of A 40 and of B 38 numbers are still the example's \(“Some half-ton”\)/);
});

it("two examples, a truck alone, and a truck of its own beside an example keep their own words", () => {
  const alone = told("A", 84, true);
  for (const both of [
    [alone],
    [alone, told("B", 82, false, "Another")],
    [alone, { ...alone, letter: "B", truck: { setup: { ...setup, fromExample: null } }, doubts: [] }],
  ])
    expect(ofOneExample(both)).toBe(both);
});
