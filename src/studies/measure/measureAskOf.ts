import { bodyNamesOf } from "../../setup/blocks/readings/readingPoint.ts";
import { effectiveDocument } from "../../setup/editing/effectiveDocument.ts";
import { givenPoints } from "../../setup/givenPoints.ts";
import { RIM_DIAMETER_RANGE } from "../../setup/reading/limits.ts";
import { readReadings } from "../../setup/readReadings.ts";
import { valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit, SetupIssue } from "../../setup/types/types.ts";
import { parseLength } from "../../units/parseLength.ts";
import type { Ask } from "./ask.ts";
import { ASSUMED_SIZES } from "./assumedTruck.ts";
import { pointsOf } from "./equations.ts";
import type { MeasureAsk } from "./measureProblem.ts";
import { TAPE_READINGS } from "./tapeReadings.ts";

/** What a document asks to be measured from, and what is wrong with readings that are not in it. */
export interface DocumentToMeasure {
  /** null = its units are not known, so that no number of it can be told. */
  readonly ask: MeasureAsk | null;
  readonly units: LengthUnit | null;
  readonly issues: readonly SetupIssue[];
  /** Readings that no truck can have, alone or with the others: left out, each with its mend. */
  readonly leftOut: readonly SetupIssue[];
}

/** A 15 in rim: what is assumed where the setup does not say (common practice, no source). */
const ASSUMED_RIM = 381;

/**
 * Reads what a truck is measured from out of a document, whatever else of it is missing or wrong. Never throws.
 * @param file the file as the user named it, for the issues
 * @param candidates readings that could be taken next; default all that can be reached with a tape
 */
export function measureAskOf(
  document: unknown,
  file: string,
  variant: string | null = null,
  candidates: readonly Ask[] = TAPE_READINGS,
): DocumentToMeasure {
  const whole = readReadings(document, file);
  if (whole.units === null) return { ask: null, ...whole };
  const shown = effectiveDocument(document, variant);
  if (shown === null) {
    const none = { file, key: "variants", value: JSON.stringify(variant), mend: "there is no such variant" };
    return { ask: null, units: null, issues: [none], leftOut: [] };
  }
  const { units, readings, issues, leftOut } = variant === null ? whole : readReadings(shown, file);
  if (units === null) return { ask: null, units, issues, leftOut };
  const length = (path: readonly string[], otherwise: number) => {
    const typed = valueAt(shown, path);
    const read = typeof typed === "number" || typeof typed === "string" ? parseLength(typed, units) : null;
    return read?.ok && read.mm > 0 && read.mm <= RIM_DIAMETER_RANGE.most ? read.mm : otherwise;
  };
  const ask: MeasureAsk = {
    readings,
    given: givenPoints(shown, units, readings.flatMap(pointsOf)),
    steering: valueAt(shown, ["truck", "steering", "type"]) === "pitman" ? "pitman" : "rack",
    hasBody: bodyNamesOf(shown).length > 0,
    rim: {
      rimDiameter: length(["wheel", "rimDiameter"], ASSUMED_RIM),
      rimWidth: length(["wheel", "rimWidth"], ASSUMED_SIZES["wheel.lipToLip"] - 25.4),
    },
    candidates,
  };
  return { ask, units, issues, leftOut };
}
