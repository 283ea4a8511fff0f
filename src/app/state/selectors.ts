import { effectiveDocument } from "../../setup/editing/effectiveDocument.ts";
import { variantNames } from "../../setup/editing/resolveShown.ts";
import { fieldAt } from "../../setup/fieldCatalogue.ts";
import { typedPair } from "../../setup/reading/typedPair.ts";
import { isWithin, type KeyPath, keyText, valueAt } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { FileUnits } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import type { LengthStep } from "../../units/stepLength.ts";
import { joinWithin } from "../../units/withinText.ts";
import type { GivenMeshes } from "./givenMeshes.ts";
import { memoLast } from "./memoLast.ts";
import { lengthFormatOf, lengthStepOf } from "./preferences.ts";
import { trucks } from "./truck.ts";
import {
  type DocumentSlice,
  type Draft,
  draftKey,
  fileUnitsOf,
  type TypedDocument,
} from "./typedDocument.ts";
import type { WorkbenchState } from "./workbenchState.ts";

const shown = memoLast((document: TypedDocument, variant: string | null) =>
  effectiveDocument(document, variant),
);

/** The document with the variant asked for; null without a document. The same object until one of them changes. */
export function shownDocument(state: Pick<DocumentSlice, "document" | "variant">): TypedDocument | null {
  return state.document && ((shown(state.document, state.variant) as TypedDocument | null) ?? state.document);
}

/** How lengths are written for the person at the page; the same object until the choice changes. */
export function lengthFormat(state: Pick<WorkbenchState, "document" | "preferences">): LengthFormat {
  return lengthFormatOf(state.preferences.lengths, fileUnitsOf(state.document));
}

/** How far one step of a length goes; the same object until the choice changes. */
export function lengthStep(state: Pick<WorkbenchState, "document" | "preferences">): LengthStep {
  return lengthStepOf(state.preferences.lengths, fileUnitsOf(state.document));
}

/** What the document with its variant holds at a path, as typed; undefined = nothing, so that the default holds. */
export function fieldValue(state: WorkbenchState, path: KeyPath): unknown {
  return valueAt(shownDocument(state), path);
}

/**
 * What stands in a field: its draft, or else its value. A length is in the units shown, exactly and without the unit's
 * name: `5 5/8`, `142.875`, `5 5/8 ± 1/16`; what is typed there without a unit is in them too. "" = left out.
 */
export function fieldText(state: WorkbenchState, path: KeyPath): string {
  const draft = fieldDraft(state, path);
  if (draft) return draft.text;
  const value = fieldValue(state, path);
  const pair = typedPair(value);
  if (pair) return joinWithin(numberText(state, path, pair.value), numberText(state, path, pair.within));
  return typeof value === "number" || typeof value === "string" ? numberText(state, path, value) : "";
}

function numberText(state: WorkbenchState, path: KeyPath, value: number | string): string {
  const document = shownDocument(state);
  const kind = fieldAt(path, document)?.kind;
  if (kind !== "length" && kind !== "signedLength") return String(value);
  return lengthFieldText(value, fileUnitsOf(document), lengthFormat(state));
}

function lengthFieldText(value: number | string, fileUnits: FileUnits, format: LengthFormat): string {
  const length = parseLength(value, fileUnits);
  if (!length.ok) return String(value);
  if (format.units === "in" && format.fraction === "decimal") {
    const inches = Number((length.mm / 25.4).toFixed(9));
    return String(inches + 0);
  }
  return plainLengthText(length.mm, format.units, format.units);
}

/** Text typed there that the file cannot hold, with its mend; null = none. */
export function fieldDraft(state: DocumentSlice, path: KeyPath): Draft | null {
  return state.drafts[draftKey(path[0] === "variants" ? null : state.variant, path)] ?? null;
}

/** The first issue at a field or inside it; null = none. */
export function fieldIssue(state: WorkbenchState, path: KeyPath): SetupIssue | null {
  const key = keyText(path);
  return (
    state.issues.find(
      (issue) => issue.key === key || issue.key.startsWith(`${key}.`) || issue.key.startsWith(`${key}[`),
    ) ?? null
  );
}

/** Whether the variant shown has its own say at a path, or about something it lies in. */
export function isOfVariant(state: DocumentSlice, path: KeyPath): boolean {
  if (state.document === null || state.variant === null) return false;
  return valueAt(shownDocument(state), path) !== valueAt(state.document, path);
}

/** Whether the board holds something that its file does not: an edit, or text that no field can hold. */
export function isDirty(state: WorkbenchState): boolean {
  if (state.document === null) return false;
  return state.saved[state.documentId] !== state.document || Object.keys(state.drafts).length > 0;
}

/** Whether any draft lies at a path or inside it, in the variant shown. */
export function hasDraftIn(state: DocumentSlice, path: KeyPath): boolean {
  return Object.values(state.drafts).some(
    (draft) => draft.variant === state.variant && isWithin(draft.path, path),
  );
}

const faults = memoLast((document: TypedDocument, file: string, meshes: GivenMeshes) => {
  return new Map(
    variantNames(document).flatMap((name): [string, readonly SetupIssue[]][] => {
      const made = trucks.make(document, file, name, meshes);
      return made.ok ? [] : [[name, made.issues]];
    }),
  );
});
const NO_FAULTS: ReadonlyMap<string, readonly SetupIssue[]> = new Map();

/** Variants that cannot be shown, with their issues. Puts each together: for a list of variants, not for every drag event. */
export function variantFaults(state: DocumentSlice): ReadonlyMap<string, readonly SetupIssue[]> {
  return state.document ? faults(state.document, state.file, state.meshes) : NO_FAULTS;
}
