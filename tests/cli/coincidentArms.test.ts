import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { exampleSetup } from "../reference/demoModel.ts";
import { captured } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const LONG_BED = new URL("../../shared/long-bed-steering-box.json", import.meta.url);
const document = JSON.parse(readFileSync(LONG_BED, "utf8"));
const { steering } = document.truck;
steering.idler.end = steering.pitman.end;
const file = folder.write("coincident.json", document);

test("the example itself has pitman-arm steering", () => {
  expect(exampleSetup("long-bed-steering-box.json").truck.steering.type).toBe("pitman");
});

test.each([
  ["pose"],
  ["check"],
  ["sweep", "--steps", "3"],
  ["map"],
  ["envelope", "--out", "never-written.stl"],
  ["geometry"],
  ["align"],
  ["limits"],
  ["air"],
  ["floor"],
])("%s refuses arms whose ends stand in one place, naming the key and the mend", (verb, ...options) => {
  const { code, out, error } = captured([verb, file, ...options]);
  expect([code, out]).toEqual([2, ""]);
  expect(error).toContain("truck.steering.idler.end");
  expect(error).toContain("the center link between them has no length; measure both ends again");
  expect(error.trimEnd().split("\n")).toHaveLength(1);
});
