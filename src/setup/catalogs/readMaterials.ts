import { parseQuantity } from "../../units/quantity.ts";
import { describeValue } from "../reading/describeValue.ts";
import { keyText, valueAt } from "../types/keyPath.ts";
import type { Result, SetupIssue } from "../types/types.ts";

/** A material by its published strength, MPa, at room temperature, away from welds. */
export interface Material {
  readonly name: string;
  readonly yield: number;
  readonly ultimate: number;
  /** Where the values are published. */
  readonly source: string;
}

/**
 * The materials of a catalog file that was parsed: `items`, each with `name`, `yield`, `ultimate` as text with a unit, and
 * `source`. @param file its name, for the issues
 */
export function readMaterials(document: unknown, file: string): Result<readonly Material[]> {
  const issues: SetupIssue[] = [];
  const issue = (path: readonly (string | number)[], mend: string) =>
    issues.push({ file, key: keyText(path), value: describeValue(valueAt(document, path)), mend });
  const items = valueAt(document, ["items"]);
  if (valueAt(document, ["kind"]) !== "materials" || !Array.isArray(items)) {
    issue(["kind"], 'must be "materials", with a list of items');
    return { ok: false, issues };
  }
  const materials = items.map((_, i): Material => {
    const text = (key: string) => {
      const value = valueAt(document, ["items", i, key]);
      if (typeof value === "string" && value.trim() !== "") return value;
      issue(["items", i, key], "must be text in double quotes");
      return "";
    };
    const stress = (key: "yield" | "ultimate") => {
      const value = valueAt(document, ["items", i, key]);
      const read = typeof value === "string" ? parseQuantity(value, "stress", "in") : null;
      if (read?.ok && read.value > 0) return read.value;
      issue(["items", i, key], read && !read.ok ? read.mend : 'must be a stress such as "75 ksi"');
      return Number.NaN;
    };
    return {
      name: text("name"),
      yield: stress("yield"),
      ultimate: stress("ultimate"),
      source: text("source"),
    };
  });
  materials.forEach(({ name }, i) => {
    if (materials.findIndex((one) => one.name === name) < i)
      issue(["items", i, "name"], "is the name of another material already");
  });
  return issues.length === 0 ? { ok: true, value: materials } : { ok: false, issues };
}
