import { BufferGeometry } from "three";
import { expect, it } from "vitest";
import { isAlike } from "../../../src/app/stage/useGeometry.ts";

it("takes parts with the same numbers for the same, and any other number, text, length or kind of thing for another", () => {
  const part = (last: number, name = "lip") => ({
    name,
    at: [1, [2, last]],
    profile: Float64Array.of(1, last),
    gone: null,
  });
  expect(isAlike([part(3)], [part(3)])).toBe(true);
  for (const other of [part(4), part(3, "rail"), { ...part(3), gone: 0 }, { ...part(3), more: 1 }])
    expect(isAlike([part(3)], [other])).toBe(false);
  expect(isAlike([1, 2], [1, 2, 3])).toBe(false);
  expect(isAlike([], {})).toBe(false);
  expect(isAlike(Float64Array.of(1), [1])).toBe(false);
  // What is more than plain data is itself alone.
  const made = new BufferGeometry();
  expect(isAlike([made], [made])).toBe(true);
  expect(isAlike([made], [new BufferGeometry()])).toBe(false);
  expect(isAlike(new Map([[1, 2]]), new Map([[1, 3]]))).toBe(false);
});
