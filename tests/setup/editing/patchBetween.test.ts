import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { editShown, patchBetween } from "../../../src/setup/editing/editShown.ts";
import { isSameJson } from "../../../src/setup/editing/writtenValues.ts";
import { mergePatch } from "../../../src/setup/reading/mergePatch.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";

/** Objects as setups are: no null, since a merge patch cannot set one. */
const object = fc.letrec<{ object: Record<string, unknown>; value: unknown }>((tie) => ({
  object: fc.dictionary(fc.constantFrom("a", "b", "c", "d"), tie("value"), {
    maxKeys: 4,
    noNullPrototype: true,
  }),
  value: fc.oneof(
    { maxDepth: 4 },
    fc.integer({ min: 0, max: 3 }),
    fc.constantFrom("5 5/8", "x"),
    fc.array(fc.integer({ min: 0, max: 2 }), { maxLength: 3 }),
    tie("object"),
  ),
})).object;

const patched = (from: unknown, patch: unknown) => {
  const result = mergePatch(from, patch);
  if (!result.ok) throw new Error(`refused ${result.key}`);
  return result.value;
};

/** The patch with one of its leaves left out, in every way there is. */
function lesser(patch: Record<string, unknown>): Record<string, unknown>[] {
  return Object.entries(patch).flatMap(([key, value]) => {
    const { [key]: _, ...others } = patch;
    const isObject = typeof value === "object" && value !== null && !Array.isArray(value);
    return [
      others,
      ...(isObject ? lesser(value as Record<string, unknown>).map((one) => ({ ...patch, [key]: one })) : []),
    ];
  });
}

describe("the patch between two documents", () => {
  it("turns the one into the other", () => {
    fc.assert(
      fc.property(object, object, (from, to) => {
        expect(isSameJson(patched(from, patchBetween(from, to)), to)).toBe(true);
      }),
      { seed: 1955, numRuns: 1500 },
    );
  });

  it("is the least: without any one of its keys it no longer does", () => {
    fc.assert(
      fc.property(object, object, (from, to) => {
        for (const less of lesser(patchBetween(from, to))) {
          expect(isSameJson(patched(from, less), to)).toBe(false);
        }
      }),
      { seed: 1955, numRuns: 1500 },
    );
  });

  it("has the value as typed, null for a key to take out, and lists whole", () => {
    const from = {
      wheel: { backspacing: "4 1/4", rimWidth: 8 },
      points: [
        [1, 2],
        [3, 4],
      ],
    };
    const to = {
      wheel: { offset: "0", rimWidth: 8 },
      points: [
        [1, 2],
        [3, 5],
      ],
    };
    expect(patchBetween(from, to)).toEqual({
      wheel: { backspacing: null, offset: "0" },
      points: [
        [1, 2],
        [3, 5],
      ],
    });
    expect(patchBetween(from, from)).toEqual({});
  });
});

describe("an edit while a variant is shown", () => {
  const document = {
    knuckle: { hubFace: "6 1/8", span: 10.5 },
    variants: [{ name: "narrow", patch: { knuckle: { hubFace: "5 5/8" } } }],
  };
  const editedPatch = (path: readonly string[], value: unknown) =>
    (editShown(document, "narrow", (shown) => setAt(shown, path, value)) as typeof document).variants[0]
      ?.patch;

  it("goes to its patch and leaves the setup below as it is", () => {
    const after = editShown(document, "narrow", (shown) =>
      setAt(shown, ["knuckle", "span"], 11),
    ) as typeof document;
    expect(after.knuckle).toBe(document.knuckle);
    expect(after.variants[0]?.patch).toEqual({ knuckle: { hubFace: "5 5/8", span: 11 } });
  });

  it("back to the setup's own value takes the key out of the patch", () => {
    expect(editedPatch(["knuckle", "hubFace"], "6 1/8")).toEqual({});
  });

  it("that changes nothing gives back the very same document", () => {
    expect(editShown(document, "narrow", (shown) => setAt(shown, ["knuckle", "hubFace"], "5 5/8"))).toBe(
      document,
    );
  });
});
