import { variantIndex } from "../../setup/editing/effectiveDocument.ts";
import { variantNames } from "../../setup/editing/resolveShown.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { valueAt } from "../../setup/types/keyPath.ts";
import { freeName } from "./freeName.ts";
import { mapDrafts, type TypedDocument, withDraft } from "./typedDocument.ts";
import type { ActionContext, VariantActions } from "./workbenchActions.ts";

export function variantActions({ set, get }: ActionContext): VariantActions {
  return {
    chooseVariant(variant) {
      if (variant === null || variantNames(get().document).includes(variant)) set({ variant });
    },
    duplicateAsVariant(name, values = []) {
      const { document, variant, beginGesture, endGesture, isGesturing } = get();
      const free = freeName(name.trim() === "" ? "variant" : name.trim(), variantNames(document));
      if (document === null) return free;
      if (!isGesturing) beginGesture();
      set((s) => {
        const at = variant === null ? -1 : variantIndex(document, variant);
        const patch = at < 0 ? {} : (valueAt(document, ["variants", at, "patch"]) ?? {});
        const list = valueAt(document, ["variants"]);
        const variants = [...(Array.isArray(list) ? list : []), { name: free, patch }];
        const drafts = Object.values(s.drafts).reduce(
          (all, draft) => (draft.variant === variant ? withDraft(all, { ...draft, variant: free }) : all),
          s.drafts,
        );
        return { document: setAt(document, ["variants"], variants) as TypedDocument, variant: free, drafts };
      });
      for (const { path, value } of values) get().applySuggestion({ path, value, kind: "nearest" });
      if (!isGesturing) endGesture();
      return free;
    },
    renameVariant(from, to) {
      const { document } = get();
      const at = variantIndex(document, from);
      const name = to.trim();
      if (at < 0 || name === from) return null;
      if (name === "") return "a variant needs a name";
      if (variantNames(document).includes(name)) return `there is a variant ${JSON.stringify(name)} already`;
      set((s) => ({
        document: setAt(s.document, ["variants", at, "name"], name) as TypedDocument,
        variant: s.variant === from ? name : s.variant,
        drafts: mapDrafts(s.drafts, (draft) =>
          draft.variant === from ? { ...draft, variant: name } : draft,
        ),
      }));
      return null;
    },
    removeVariant(name) {
      set((s) => {
        const at = variantIndex(s.document, name);
        if (at < 0) return s;
        return {
          document: removeAt(s.document, ["variants", at]) as TypedDocument,
          variant: s.variant === name ? null : s.variant,
          drafts: mapDrafts(s.drafts, (draft) => (draft.variant === name ? null : draft)),
        };
      });
    },
  };
}
