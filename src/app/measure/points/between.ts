import { bareTyped } from "../../../setup/reading/typedPair.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { tapeText } from "../../../units/plainLengthText.ts";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";

/**
 * A point on the line through two, as the file holds points: at `share` 0 the first, at 1 the second. Rounded to 1/16 in,
 * or in a file in millimeters to the millimeter. A coordinate that is no length is taken from the first.
 */
export function between(
  from: readonly unknown[],
  to: readonly unknown[],
  share: number,
  units: FileUnits,
): readonly unknown[] {
  return from.map((value, i) => {
    const [a, b] = [lengthOf(value, units), lengthOf(to[i], units)];
    if (a === null || b === null) return value;
    return tapeText(a + share * (b - a), units);
  });
}

function lengthOf(typed: unknown, units: FileUnits): number | null {
  const value = bareTyped(typed);
  const length = typeof value === "number" || typeof value === "string" ? parseLength(value, units) : null;
  return length?.ok ? length.mm : null;
}

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
