import fc from "fast-check";
import { expect, it } from "vitest";
import { base36Of, bytesOfBase36 } from "../../../../src/app/shell/share/base36.ts";

it("any bytes come back from digits and capitals", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
      const text = base36Of(bytes);
      expect(text).toMatch(/^[0-9A-Z]*$/);
      expect(bytesOfBase36(text)).toEqual(bytes);
    }),
    { seed: 1955, numRuns: 200 },
  );
});

it("is what the language itself writes of a number of nine bytes", () => {
  const bytes = Uint8Array.from([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  const number = BigInt(`0x${Buffer.from(bytes).toString("hex")}`);
  expect(base36Of(bytes)).toBe(number.toString(36).toUpperCase().padStart(14, "0"));
});

it("takes nothing it never gives", () => {
  for (const text of ["a0", "Z", "ZZ", "ZZZ", "0-", "ZZZZZZZZZZZZZZ", "00000000000000Z"]) {
    expect(() => bytesOfBase36(text), text).toThrow(RangeError);
  }
});
