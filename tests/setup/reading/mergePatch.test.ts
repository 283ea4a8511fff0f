import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergePatch } from "../../../src/setup/reading/mergePatch.ts";

/** RFC 7396, Appendix A, "Example Test Cases", in its order: original, patch, result (written down from memory). */
const RFC_7396_APPENDIX_A: readonly (readonly [original: unknown, patch: unknown, result: unknown])[] = [
  [{ a: "b" }, { a: "c" }, { a: "c" }],
  [{ a: "b" }, { b: "c" }, { a: "b", b: "c" }],
  [{ a: "b" }, { a: null }, {}],
  [{ a: "b", b: "c" }, { a: null }, { b: "c" }],
  [{ a: ["b"] }, { a: "c" }, { a: "c" }],
  [{ a: "c" }, { a: ["b"] }, { a: ["b"] }],
  [{ a: { b: "c" } }, { a: { b: "d", c: null } }, { a: { b: "d" } }],
  [{ a: [{ b: "c" }] }, { a: [1] }, { a: [1] }],
  [
    ["a", "b"],
    ["c", "d"],
    ["c", "d"],
  ],
  [{ a: "b" }, ["c"], ["c"]],
  [{ a: "foo" }, null, null],
  [{ a: "foo" }, "bar", "bar"],
  [{ e: null }, { a: 1 }, { e: null, a: 1 }],
  [[1, 2], { a: "b", c: null }, { a: "b" }],
  [{}, { a: { bb: { ccc: null } } }, { a: { bb: {} } }],
];

/** JSON without the keys that are refused and without null, so that a patch says all there is. */
const plainJson = fc.letrec((tie) => ({
  value: fc.oneof({ maxDepth: 3 }, fc.integer(), fc.string(), fc.boolean(), tie("list"), tie("object")),
  list: fc.array(tie("value"), { maxLength: 3 }),
  object: fc.dictionary(fc.constantFrom("a", "b", "c", "d"), tie("value")),
})).value;

describe("mergePatch", () => {
  it.each(RFC_7396_APPENDIX_A)(
    "does as RFC 7396 Appendix A: %j with %j gives %j",
    (original, patch, result) => {
      expect(mergePatch(original, patch)).toEqual({ ok: true, value: result });
    },
  );

  it("changes neither argument", () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (target, patch) => {
        const before = JSON.stringify([target, patch]);
        mergePatch(target, patch);
        expect(JSON.stringify([target, patch])).toBe(before);
      }),
      { seed: 7396, numRuns: 500 },
    );
  });

  it("done twice does no more than once", () => {
    fc.assert(
      fc.property(plainJson, plainJson, (target, patch) => {
        const once = mergePatch(target, patch);
        expect(once.ok && mergePatch(once.value, patch)).toEqual(once);
      }),
      { seed: 7396, numRuns: 500 },
    );
  });

  it("with an empty patch gives an object back as it was", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom("a", "b", "c"), fc.jsonValue()), (target) => {
        expect(mergePatch(target, {})).toEqual({ ok: true, value: target });
      }),
      { seed: 7396, numRuns: 300 },
    );
  });

  it.each([
    ['{"__proto__":{"polluted":1}}', "__proto__"],
    ['{"a":{"constructor":{"prototype":{"polluted":1}}}}', "a.constructor"],
    ['{"a":[0,{"prototype":1}]}', "a[1].prototype"],
    ['{"a":{"__proto__":null}}', "a.__proto__"],
  ])("refuses the patch %s and leaves every object's prototype alone", (patch, key) => {
    expect(mergePatch({ a: {} }, JSON.parse(patch))).toMatchObject({ ok: false, key });
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
