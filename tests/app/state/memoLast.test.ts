import { describe, expect, it } from "vitest";
import { memoLast } from "../../../src/app/state/memoLast.ts";

describe("memoLast", () => {
  it("gives the very same answer for the very same arguments, without asking again", () => {
    let asked = 0;
    const pair = memoLast((a: object, n: number) => {
      asked += 1;
      return [a, n];
    });
    const truck = {};
    const first = pair(truck, 1);
    expect(pair(truck, 1)).toBe(first);
    expect(asked).toBe(1);
  });

  it("asks again when an argument is another one, even one that looks alike", () => {
    const boxed = memoLast((a: object) => ({ a }));
    const first = boxed({});
    expect(boxed({})).not.toBe(first);
  });

  it("remembers as many as it is asked to, those asked for last", () => {
    const boxed = memoLast((n: number) => ({ n }), 2);
    const [one, two] = [boxed(1), boxed(2)];
    expect([boxed(1), boxed(2), boxed(1)]).toEqual([one, two, one]);
    expect(boxed(1)).toBe(one);
    expect(boxed(2)).toBe(two);
    boxed(3);
    expect(boxed(2)).toBe(two);
    expect(boxed(1)).not.toBe(one);
  });

  it("takes NaN for NaN", () => {
    const boxed = memoLast((n: number) => ({ n }));
    expect(boxed(Number.NaN)).toBe(boxed(Number.NaN));
  });
});
