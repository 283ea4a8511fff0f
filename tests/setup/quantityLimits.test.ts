import { expect, it } from "vitest";
import { resolveSetup } from "../../src/setup/resolveSetup.ts";
import { exampleDocuments, type SetupJson } from "../fuzz/exampleDocuments.ts";
import { type Json, withValue } from "../fuzz/jsonPaths.ts";

const example: Json = exampleDocuments.get("half-ton-limits")!;

it.each<[string, string | number, string]>([
  ["masses.corner", 1e300, "is more weight than any truck has; check the number and its unit"],
  ["masses.unsprung", "1000000 kg", "is more weight than any truck has; check the number and its unit"],
  ["airSpring.greatestPressure", 1e9, "is more pressure than any truck has; check the number and its unit"],
])("%s = %s is refused by its size", (key, value, mend) => {
  const document = withValue(example, key.split("."), value);
  const read = resolveSetup(document, "truck.json");
  expect(read.ok ? [] : read.issues.map((issue) => [issue.key, issue.mend])).toEqual([[key, mend]]);
});

it("what a truck has goes", () => {
  const { masses } = example as unknown as { masses: SetupJson };
  expect(masses).toBeDefined();
  expect(resolveSetup(withValue(example, ["masses", "corner"], "2400 lb"), "truck.json").ok).toBe(true);
});
