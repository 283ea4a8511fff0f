import fc from "fast-check";
import { expect, it } from "vitest";
import { cachedJson } from "../../../../src/app/shell/storage/lastWords.ts";
import { exampleDocument } from "../../exampleText.ts";

it("writes any plain value as JSON does, the second time too", () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(JSON.parse(cachedJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      expect(cachedJson(value)).toBe(cachedJson(value));
    }),
    { seed: 1961, numRuns: 300 },
  );
  expect(cachedJson({ a: undefined, b: [1, undefined] })).toBe('{"b":[1,null]}');
  expect(JSON.parse(cachedJson(exampleDocument))).toEqual(exampleDocument);
});
