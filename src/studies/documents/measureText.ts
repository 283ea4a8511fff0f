import { measureAskOf } from "../measure/measureAskOf.ts";
import { measureTruck } from "../measure/measureTruck.ts";
import { WORKSHEET_CANDIDATES } from "../worksheet/candidates.ts";
import { jsonText } from "./documentText.ts";
import { measureJson } from "./measureJson.ts";

/**
 * What `measure --json` prints of a setup, letter for letter.
 * @param document as typed; @param variant null = none
 * @returns null where it has no readings that can be read
 */
export function measureText(document: unknown, variant: string | null): string | null {
  const { ask, units, issues, leftOut } = measureAskOf(document, "", variant, WORKSHEET_CANDIDATES);
  if (issues.length > 0 || ask === null || units === null || ask.readings.length === 0) return null;
  return jsonText(measureJson(measureTruck(ask), leftOut, units));
}
