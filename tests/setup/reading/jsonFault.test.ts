import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findJsonFault } from "../../../src/setup/reading/jsonFault.ts";
import { MAX_DEPTH } from "../../../src/setup/reading/limits.ts";
import { exampleDocument } from "../fixtures.ts";

function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** Only the platform's parser is asked for grammar, so repeated keys and depth (ours alone) are set aside. */
function agreesWithPlatform(text: string): void {
  const fault = findJsonFault(text);
  if (fault && /twice|nested/.test(fault.mend)) return;
  expect(fault === null, `${JSON.stringify(text)}: ${fault?.mend}`).toBe(parses(text));
}

describe("findJsonFault", () => {
  it.each([
    ["", 0, "the file is empty; a setup starts with {"],
    ["  \n", 3, "the file is empty; a setup starts with {"],
    ["\ufeff{}", 0, "the file starts with a byte order mark; save it as plain UTF-8"],
    ["// a truck\n{}", 0, "JSON has no comments; delete it"],
    ['{"a": 1, /* b */ "c": 2}', 9, "JSON has no comments; delete it"],
    ['{"a": 1 # b\n}', 8, "JSON has no comments; delete it"],
    ['{"a": 1,}', 7, "delete the comma before }"],
    ['{"a": [1, 2, ]}', 11, "delete the comma before ]"],
    ["{a: 1}", 1, "put the key in double quotes"],
    ["{'a': 1}", 1, 'use double quotes (")'],
    ["{“a”: 1}", 1, 'use straight double quotes (")'],
    ['{"a" 1}', 5, "put a colon between the key and its value"],
    ['{"a": 1 "b": 2}', 8, "put a comma or } here"],
    ['{"a": [1, 2}', 11, "expected ] here instead of }"],
    ['{"a": 5 5/8}', 7, 'put a length with a fraction or a unit in double quotes, like "5 5/8 in"'],
    ['{"a": 5/8}', 7, 'put a length with a fraction or a unit in double quotes, like "5 5/8 in"'],
    ['{"a": 5in}', 7, 'put a length with a fraction or a unit in double quotes, like "5 5/8 in"'],
    ['{"a": 5"}', 7, 'put a length with a fraction or a unit in double quotes, like "5 5/8 in"'],
    ['{"a": "5 5/8""}', 12, 'write an inch mark inside text as \\" or as in'],
    ['{"a": 05}', 7, "write the number without a zero in front"],
    ['{"a": 5.}', 7, "this number is not finished; write it like 5.25"],
    ['{"a": .5}', 6, "write numbers like 0.25 or -4, without + and with a digit before the point"],
    ['{"a": +4}', 6, "write numbers like 0.25 or -4, without + and with a digit before the point"],
    ['{"a": NaN}', 6, "NaN is not a value; write a finite number or take the key out"],
    ['{"a": True}', 6, "write true"],
    ['{"a": rack}', 6, "put text in double quotes"],
    ['{"a": }', 6, "a value is missing here"],
    ['{"a":', 5, "the file ends where a value is missing"],
    ['{"a": 1', 7, "the { opened on line 1 is not closed; add }"],
    ['{\n"a": [\n1', 10, "the [ opened on line 2 is not closed; add ]"],
    ['{"a": "b\n"}', 6, "this text is not closed on its line; put a double quote at its end"],
    ['{"a": "\\x"}', 7, 'a backslash starts an escape; write \\\\ for a backslash and \\" for an inch mark'],
    ["{} {}", 3, "there is text after the end of the setup; delete it"],
    ['{"a": 1, "b": 2, "a": 3}', 17, 'the key "a" stands here twice; keep one'],
    ['{"a": 1, "\\u0061": 3}', 9, 'the key "a" stands here twice; keep one'],
  ])("finds in %j at character %d: %s", (text, at, mend) => {
    expect(findJsonFault(text)).toEqual({ at, mend });
  });

  it(`takes ${MAX_DEPTH} levels and refuses one more`, () => {
    const nested = (levels: number) => `${"[".repeat(levels)}${"]".repeat(levels)}`;
    expect(findJsonFault(nested(MAX_DEPTH))).toBeNull();
    expect(findJsonFault(nested(MAX_DEPTH + 1))?.mend).toMatch(/nested/);
    expect(findJsonFault("[".repeat(1e6))?.mend).toMatch(/nested/);
  });

  it("takes what JSON.parse takes and refuses what it refuses, on whole documents", () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), (text) => {
        expect(parses(text)).toBe(true);
        agreesWithPlatform(text);
      }),
      { seed: 8259, numRuns: 500 },
    );
  });

  it("agrees with JSON.parse on a setup with one character dropped, added or changed", () => {
    const text = JSON.stringify(
      { ...exampleDocument(), more: [true, null, -1.5e-3, '\u00e9\\ " \u0007\u0085'] },
      null,
      1,
    );
    const at = fc.nat(text.length - 1);
    const character = fc.constantFrom(..."{}[],:\"'\\/ \n\t0159.-+eEuntrx\u0000\u007f\u2028é".split(""), "");
    fc.assert(
      fc.property(at, fc.nat(1), character, (place, dropped, added) => {
        agreesWithPlatform(text.slice(0, place) + added + text.slice(place + dropped));
      }),
      { seed: 8259, numRuns: 2000 },
    );
  });

  it("agrees with JSON.parse on short scraps", () => {
    const scraps = fc.string({
      unit: fc.constantFrom(...'{}[],:"\\01.-eE ntruefalsNI\n'.split("")),
      maxLength: 10,
    });
    fc.assert(fc.property(scraps, agreesWithPlatform), { seed: 8259, numRuns: 5000 });
  });
});
