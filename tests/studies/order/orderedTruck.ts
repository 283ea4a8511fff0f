import { readFileSync } from "node:fs";
import { type Catalogs, NO_CATALOGS, readCatalog } from "../../../src/setup/catalogs/readCatalog.ts";
import { mergePatch } from "../../../src/setup/reading/mergePatch.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import type { SetupIssue } from "../../../src/setup/types/types.ts";
import { type OrderSheet, orderSheet } from "../../../src/studies/order/orderSheet.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { orderIssue } from "../../../src/studies/wording/orderMends.ts";

const SHARED = new URL("../../../shared/", import.meta.url);

const text = readFileSync(new URL("ordered-knuckle.json", SHARED), "utf8");

/** What the example has besides that no order asks about is left out. */
const KEPT: ReadonlySet<string> = new Set([
  ...["format", "version", "name", "units", "truck", "knuckle", "wheel", "tire", "hardware"],
  ...["alignment", "travel", "stances", "order", "allowance"],
]);

/** The example truck with a knuckle on order, with a merge patch on its order and one on all of it. */
export function orderedDocument(order: object = {}, patch: object = {}): Record<string, unknown> {
  const example = Object.entries(JSON.parse(text) as object).filter(([key]) => KEPT.has(key));
  const patched = mergePatch(Object.fromEntries(example), { ...patch, order });
  if (!patched.ok) throw new Error(patched.key);
  return patched.value as Record<string, unknown>;
}

/** The catalogs that come with the program. */
const catalogs: Catalogs = Object.assign(
  {},
  NO_CATALOGS,
  ...["ball-joints", "brakes", "hubs"].map((name) => {
    const read = readCatalog(readFileSync(new URL(`catalogs/${name}.json`, SHARED), "utf8"), name);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return read.value;
  }),
);

/** The sheet of a document's order. */
export function sheetOf(document: unknown): OrderSheet {
  const setup = resolveSetup(document, "ordered.json");
  if (!setup.ok) throw new Error(JSON.stringify(setup.issues));
  return orderSheet(setup.value, catalogs, "ordered.json")!;
}

/** What is wrong with a document's order, in words: of its shape, or of what does not go together. */
export function orderIssues(document: unknown): readonly SetupIssue[] {
  const setup = resolveSetup(document, "ordered.json");
  if (!setup.ok) return setup.issues;
  const sheet = orderSheet(setup.value, catalogs, "ordered.json")!;
  return sheet.misfits.map((misfit) => orderIssue(misfit, "ordered.json", formatOf(setup.value)));
}
