import { parseQuantity } from "../../units/quantity.ts";
import { capIssues, IssueList } from "../reading/issueList.ts";
import { MAX_QUANTITY } from "../reading/limits.ts";
import { addShapeIssues } from "../shapeIssues.ts";
import type { Result } from "../types/types.ts";
import { MATERIALS_DOCUMENT } from "./catalogDocument.ts";

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
  const issues = new IssueList(file);
  const shape = MATERIALS_DOCUMENT.safeParse(document);
  if (!shape.success) {
    addShapeIssues(issues, document, shape.error);
    return { ok: false, issues: capIssues(issues.all(), issues.more) };
  }
  const { items } = shape.data;
  const materials = items.map((item, i): Material => {
    const stress = (key: "yield" | "ultimate") => {
      const read = parseQuantity(item[key], "stress", "in");
      const hasUnit = /[a-z]/i.test(item[key]);
      if (read.ok && read.value > 0 && read.value <= MAX_QUANTITY.stress && hasUnit) return read.value;
      issues.add(["items", i, key], item[key], read.ok ? 'must be a stress such as "75 ksi"' : read.mend);
      return Number.NaN;
    };
    return { name: item.name, yield: stress("yield"), ultimate: stress("ultimate"), source: item.source };
  });
  materials.forEach(({ name, yield: least, ultimate }, i) => {
    if (materials.findIndex((one) => one.name === name) < i)
      issues.add(["items", i, "name"], name, "is the name of another material already");
    if (ultimate < least)
      issues.add(["items", i, "ultimate"], items[i]!.ultimate, "must not be less than yield");
  });
  if (issues.isEmpty) return { ok: true, value: materials };
  return { ok: false, issues: capIssues(issues.all(), issues.more) };
}
