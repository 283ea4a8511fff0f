import { readFileSync } from "node:fs";
import { effectiveDocument } from "../../../src/setup/editing/effectiveDocument.ts";
import { readSetup } from "../../../src/setup/readSetup.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { type TruckToVary, truckWith } from "../../../src/studies/window/truckOverField.ts";
import { windowField } from "../../../src/studies/window/windowField.ts";

const SHARED = new URL("../../../shared/", import.meta.url);

/** A truck to vary, and put together as it stands. */
export interface Subject {
  readonly subject: TruckToVary;
  readonly model: Model;
}

/** An example truck to vary. @param change to its document, before it is read */
export function windowSubject(
  file: string,
  variant: string | null = null,
  change: (document: Record<string, unknown>) => object = (document) => document,
): Subject {
  const typed: unknown = JSON.parse(readFileSync(new URL(file, SHARED), "utf8"));
  return subjectOf(change(typed as Record<string, unknown>), file, variant);
}

/** A document as typed, to vary. */
export function subjectOf(document: object, file = "test", variant: string | null = null): Subject {
  const read = readSetup(JSON.stringify(document), file, variant);
  if (!read.ok) throw new TypeError(read.issues.map((i) => `${i.key}: ${i.mend}`).join("; "));
  const { setup } = read.value;
  const made = modelOf(setup, file);
  if (!made.ok) throw new TypeError(made.issues.map((i) => `${i.key}: ${i.mend}`).join("; "));
  const subject = { document: effectiveDocument(document, variant), setup, file, isAligned: false };
  return { subject, model: made.value };
}

/** How much more than the allowance the worst gap is with some fields at other values, by a plain check; mm. */
export function checkedMargin(
  subject: TruckToVary,
  ...settings: readonly (readonly [key: string, value: number])[]
): number {
  const fields = settings.map(([key, value]) => {
    const found = windowField(subject.document, subject.setup, key, subject.file);
    if (!found.ok) throw new TypeError(found.issues[0]!.mend);
    return [found.value, value] as const;
  });
  const made = truckWith(subject, fields);
  if (!made.ok) return Number.NEGATIVE_INFINITY;
  const { worst } = checkClearance(made.value);
  return (worst?.gap ?? Number.POSITIVE_INFINITY) - made.value.setup.allowance;
}
