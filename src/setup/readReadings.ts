import { bodyNamesOf } from "./blocks/readings/readingPoint.ts";
import { readingsField } from "./blocks/readings/readings.ts";
import { resolveReadings } from "./blocks/readings/resolveReadings.ts";
import { choiceMend } from "./fields/fields.ts";
import { BlockReading } from "./reading/blockReading.ts";
import { IssueList } from "./reading/issueList.ts";
import { REFUSED_KEY_MEND, refusedKeys } from "./reading/mergePatch.ts";
import { tooMuch } from "./reading/tooMuch.ts";
import { addShapeIssues } from "./shapeIssues.ts";
import { valueAt } from "./types/keyPath.ts";
import type { Reading } from "./types/readingTypes.ts";
import type { LengthUnit, SetupIssue } from "./types/types.ts";

/** The readings of a document, as far as they are sound. */
export interface ReadReadings {
  /** null = the document does not say, so that no reading can be told. */
  readonly units: LengthUnit | null;
  readonly readings: readonly Reading[];
  /** What does not read of the others, in the order found. */
  readonly issues: readonly SetupIssue[];
  /** Readings that read and no truck can have, alone or with the others: left out, each with its mend. */
  readonly leftOut: readonly SetupIssue[];
}

/**
 * Reads the readings of a document whatever else is missing or wrong in it: a truck is measured before it is a setup. Never
 * throws; does not change the document.
 * @param shown the document, with the variant applied that is asked for
 * @param file the file as the user named it, for the issues
 */
export function readReadings(shown: unknown, file: string): ReadReadings {
  const issues = new IssueList(file);
  const none = (units: LengthUnit | null = null): ReadReadings => ({
    units,
    readings: [],
    issues: issues.all(),
    leftOut: [],
  });
  const much = tooMuch(shown);
  if (much !== null) {
    issues.add(much.path, valueAt(shown, much.path), much.mend);
    return none();
  }
  const [refused] = refusedKeys(shown);
  if (refused) {
    issues.add(refused, valueAt(shown, refused), REFUSED_KEY_MEND);
    return none();
  }
  const units = valueAt(shown, ["units"]);
  if (units !== "in" && units !== "mm") {
    issues.add(["units"], units, choiceMend(units, ["in", "mm"]));
    return none();
  }
  const typed = valueAt(shown, ["readings"]);
  if (typed === undefined) return none(units);
  const shape = readingsField.safeParse(typed);
  if (!shape.success) addShapeIssues(issues, shown, shape.error, ["readings"]);
  if (!Array.isArray(typed)) return none(units);
  const impossible = issues.another();
  const readings = resolveReadings(
    typed,
    bodyNamesOf(shown),
    new BlockReading(units, new Map(), issues, ["readings"]),
    new BlockReading(units, new Map(), impossible, ["readings"]),
  );
  return { units, readings, issues: issues.all(), leftOut: impossible.all() };
}
