import { describe, expect, it } from "vitest";
import { requireFinite, requirePositive } from "../../src/geometry/requireFinite.ts";

describe("bounds of a walk", () => {
  it("are taken where all are finite", () => {
    expect(() => requireFinite("march")).not.toThrow();
    expect(() => requireFinite("march", 0, -1e300, 5e-324)).not.toThrow();
  });

  it.each([[[Number.NaN]], [[0, Number.POSITIVE_INFINITY]], [[1, 2, Number.NEGATIVE_INFINITY]]])(
    "are refused with the function's name and what was given: %j",
    (values) => {
      expect(() => requireFinite("march", ...values)).toThrow(
        new RangeError(`march: needs finite bounds, got ${values.join(", ")}`),
      );
    },
  );
});

describe("a tolerance", () => {
  it("is taken where a walk can get below it", () => {
    for (const value of [5e-324, 0.1, 1e300]) expect(() => requirePositive("check", value)).not.toThrow();
  });

  it.each([0, -0, -1, Number.NaN, Number.POSITIVE_INFINITY])("of %d is refused", (value) => {
    expect(() => requirePositive("check", value)).toThrow(
      new RangeError(`check: needs a finite tolerance of more than 0, got ${value}`),
    );
  });
});
