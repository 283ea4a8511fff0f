import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";
import { between } from "./between.ts";

/**
 * A new point of a list after one of its points, as the file holds it: halfway to the next, or past the last as far as the
 * last two are apart; a list without points gets one of zeros.
 */
export function pointAfter(list: readonly unknown[], index: number, columns: number): readonly unknown[] {
  const units = fileUnitsOf(shownDocument(workbench.getState()));
  const here = list[index];
  if (!Array.isArray(here)) return Array.from({ length: columns }, () => 0);
  const next = list[index + 1];
  if (Array.isArray(next)) return between(here, next, 0.5, units);
  const before = list[index - 1];
  return Array.isArray(before) ? between(before, here, 2, units) : here;
}
