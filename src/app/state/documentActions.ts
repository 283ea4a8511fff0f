import { editShown } from "../../setup/editing/editShown.ts";
import { effectiveDocument } from "../../setup/editing/effectiveDocument.ts";
import { readTyped } from "../../setup/editing/readTyped.ts";
import { withChangesMine, withMine } from "../../setup/exampleMarks.ts";
import { fieldAt } from "../../setup/fieldCatalogue.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { bareTyped, withSameWithin } from "../../setup/reading/typedPair.ts";
import { isWithin, type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import { followReadings, withReadings } from "../../studies/worksheet/withReadings.ts";
import type { FileUnits } from "../../units/lengthUnits.ts";
import { stepLength } from "../../units/stepLength.ts";
import { lengthFormatOf, lengthStepOf } from "./preferences.ts";
import { fieldDraft, fieldText, isOfVariant } from "./selectors.ts";
import {
  type DocumentSlice,
  draftKey,
  fileUnitsOf,
  mapDrafts,
  type TypedDocument,
  withDraft,
} from "./typedDocument.ts";
import type { ActionContext, DocumentActions, EditScope } from "./workbenchActions.ts";

export function documentActions({ set, get }: ActionContext): DocumentActions {
  return {
    editField(path, typed, scope = "shown") {
      set((s) => {
        if (s.document === null) return s;
        const target = targetOf(s, path, scope);
        // What stands there already, typed again or left as it was: in other units it would be written anew.
        if (
          target === s.variant &&
          fieldDraft(s, path) === null &&
          typed === fieldText(s, path) &&
          typed !== ""
        )
          return s;
        const shown = effectiveDocument(s.document, target) ?? s.document;
        const units = fileUnitsOf(shown);
        const field = fieldAt(path, shown);
        const bare = lengthFormatOf(s.preferences.lengths, units).units;
        const read = field
          ? readTyped(field, typed, units, bare)
          : { ok: false as const, mend: "there is no such field in a setup" };
        if (!read.ok) {
          const text = typeof typed === "string" ? typed : (JSON.stringify(typed) ?? "");
          return { drafts: withDraft(s.drafts, { variant: target, path, text, mend: read.mend }) };
        }
        return edited(s, target, path, (document) => setAt(document, path, read.value));
      });
    },
    removeField(path, scope = "shown") {
      set((s) => edited(s, targetOf(s, path, scope), path, (document) => removeAt(document, path)));
    },
    stepField(path, direction, count = 1, scope = "shown") {
      const s = get();
      if (s.document === null) return;
      const shown = effectiveDocument(s.document, targetOf(s, path, scope)) ?? s.document;
      const units = fileUnitsOf(shown);
      const field = fieldAt(path, shown);
      const held = valueAt(shown, path);
      const value = bareTyped(held);
      if (!field || (typeof value !== "number" && typeof value !== "string")) return;
      const isLength = field.kind === "length" || field.kind === "signedLength";
      if (isLength) {
        const stepped = stepLength(
          value,
          direction,
          lengthStepOf(s.preferences.lengths, units),
          units,
          count,
        );
        // As a value in the file's units: the text says its unit where it needs one.
        if (stepped !== null) s.editField(path, withSameWithin(held, inUnits(stepped, units), units), scope);
      } else if (field.step !== null && Number.isFinite(Number(value))) {
        const steps = Math.round(Number(value) / field.step) + direction * count;
        const moved = Number((steps * field.step).toFixed(9));
        s.editField(path, withSameWithin(held, moved, field.kind === "angle" ? "°" : ""), scope);
      }
    },
    discardDraft(path, scope = "shown") {
      set((s) => {
        const key = draftKey(targetOf(s, path, scope), path);
        return {
          drafts: mapDrafts(s.drafts, (draft) =>
            draftKey(draft.variant, draft.path) === key ? null : draft,
          ),
        };
      });
    },
    claimFields(paths) {
      set((s) => {
        if (s.document === null) return s;
        return {
          document: editShown(s.document, s.variant, (shown) =>
            withReadings(withMine(shown, paths)),
          ) as TypedDocument,
        };
      });
    },
    applySuggestion({ path, value }) {
      set((s) =>
        edited(s, targetOf(s, path, "shown"), path, (document) =>
          value === undefined ? removeAt(document, path) : setAt(document, path, value),
        ),
      );
    },
  };
}

/**
 * The variant an edit goes to: variants themselves belong to the setup, whatever is shown, and so does what was said to be
 * so, which holds for its value alone; unless the variant has a list of its own.
 */
export function targetOf(s: DocumentSlice, path: KeyPath, scope: EditScope): string | null {
  if (path[0] === "confirmed" && !isOfVariant(s, ["confirmed"])) return null;
  return scope === "base" || path[0] === "variants" ? null : s.variant;
}

/** A change of the document, with the drafts at or inside its path gone: they are overtaken. */
function edited(
  s: DocumentSlice,
  target: string | null,
  path: KeyPath,
  change: (shown: unknown) => unknown,
): Partial<DocumentSlice> {
  if (s.document === null) return {};
  const document = editShown(s.document, target, (shown) =>
    followReadings(shown, withChangesMine(shown, change(shown))),
  ) as TypedDocument;
  const drafts = mapDrafts(s.drafts, (draft) =>
    draft.variant === target && isWithin(draft.path, path) ? null : draft,
  );
  return { document, drafts };
}

/** Text with its unit, so that it says the same whatever bare text means. */
function inUnits(text: string, units: FileUnits): string {
  return /[a-z]$/.test(text) ? text : `${text} ${units}`;
}
