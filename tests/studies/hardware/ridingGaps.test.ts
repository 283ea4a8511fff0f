import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { GAP } from "../../../src/gaps/partGap.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import { readSetup } from "../../../src/setup/readSetup.ts";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import type { TogetherPair } from "../../../src/studies/model/pairs.ts";

const FILE = "half-ton-limits.json";
const document: unknown = JSON.parse(readFileSync(`shared/${FILE}`, "utf8"));

function toBarrel(changed: unknown): TogetherPair {
  const read = readSetup(JSON.stringify(changed), FILE);
  const model = read.ok ? modelOf(read.value.setup, FILE) : read;
  if (!model.ok) throw new TypeError(model.issues[0]!.mend);
  const pair = model.value.pairs.find(({ name }) => name === "caliper to barrel");
  if (pair?.kind !== "together") throw new TypeError("it has a caliper");
  return pair;
}

it("what is mounted on the hub has its gap worked out anew when wheel, tire or it changes, and kept when the knuckle does", () => {
  const changes: readonly (readonly [KeyPath, unknown, changes: boolean])[] = [
    [["knuckle", "pinAngle"], 9.75, false],
    [["knuckle", "hubFace"], "6 1/4", false],
    // The barrel is as long at either place.
    [["wheel", "backspacing"], 4.25, false],
    [["wheel", "barrelDiameter"], 13.5, true],
    [["hardware", "caliper", "max"], ["5 7/8", "-3/4", "2 3/4"], true],
  ];
  const before = toBarrel(document).row[GAP.gap]!;
  for (const [path, value, isOther] of changes) {
    const pair = toBarrel(setAt(document, path, value));
    // Asked before the row, it is worked out by itself.
    const own = pair.roughGap(Number.POSITIVE_INFINITY, 1e-6);
    expect(Math.abs(pair.row[GAP.gap]! - own)).toBeLessThan(2e-6);
    expect(Math.abs(own - before) > 1e-3).toBe(isOther);
  }
});
