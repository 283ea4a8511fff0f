import { editShown } from "../../setup/editing/editShown.ts";
import { withMarksMoved, withMine } from "../../setup/exampleMarks.ts";
import { setAt } from "../../setup/reading/setAt.ts";
import { isWithin, type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import { followReadings } from "../../studies/worksheet/withReadings.ts";
import { targetOf } from "./documentActions.ts";
import { type DocumentSlice, mapDrafts, type TypedDocument } from "./typedDocument.ts";
import type { ActionContext, EditScope, ListActions } from "./workbenchActions.ts";

/** Where an item goes when its list changes; null = it is gone. */
type NewPosition = (index: number) => number | null;

export function listActions({ set }: ActionContext): ListActions {
  const change = (
    path: KeyPath,
    scope: EditScope,
    changeList: (list: readonly unknown[]) => readonly unknown[],
    moved: NewPosition,
    added?: number,
  ) =>
    set((s) => {
      const target = targetOf(s, path, scope);
      const drafts = movedDrafts(s.drafts, target, path, moved);
      if (s.document === null) return s;
      const document = editShown(s.document, target, (shown) => {
        const list = valueAt(shown, path);
        const before = Array.isArray(list) ? list : [];
        const after = changeList(before);
        if (after === before) return shown;
        const changed = withMarksMoved(setAt(shown, path, after), path, moved);
        const mine =
          added === undefined ? changed : withMine(changed, [[...path, Math.min(added, before.length)]]);
        return followReadings(shown, mine);
      }) as TypedDocument;
      return { document, drafts };
    });
  return {
    insertItem(path, index, item, scope = "shown") {
      change(
        path,
        scope,
        (list) => [...list.slice(0, index), item, ...list.slice(index)],
        (i) => (i < index ? i : i + 1),
        index,
      );
    },
    moveItem(path, from, to, scope = "shown") {
      change(
        path,
        scope,
        (list) => {
          if (from === to || !(from in list) || !(to in list)) return list;
          const others = list.filter((_, i) => i !== from);
          return [...others.slice(0, to), list[from], ...others.slice(to)];
        },
        (i) => movedPosition(i, from, to),
      );
    },
    removeItem(path, index, scope = "shown") {
      change(
        path,
        scope,
        (list) => (index in list ? list.filter((_, i) => i !== index) : list),
        (i) => (i === index ? null : i > index ? i - 1 : i),
      );
    },
    renamePart(from, to) {
      set((s) => {
        if (s.document === null || from === to) return s;
        const selection = s.selection?.part === from ? { ...s.selection, part: to } : s.selection;
        const hiddenParts = s.hiddenParts.map((name) => (name === from ? to : name));
        return { document: withPartRenamed(s.document, from, to), selection, hiddenParts };
      });
    },
  };
}

function movedPosition(i: number, from: number, to: number): number {
  if (i === from) return to;
  if (from < to) return i > from && i <= to ? i - 1 : i;
  return i >= to && i < from ? i + 1 : i;
}

function movedDrafts(
  drafts: DocumentSlice["drafts"],
  target: string | null,
  list: KeyPath,
  moved: NewPosition,
): DocumentSlice["drafts"] {
  return mapDrafts(drafts, (draft) => {
    const index = draft.path[list.length];
    if (draft.variant !== target || !isWithin(draft.path, list) || typeof index !== "number") return draft;
    const next = moved(index);
    if (next === index) return draft;
    return next === null ? null : { ...draft, path: [...list, next, ...draft.path.slice(list.length + 1)] };
  });
}

function withPartRenamed(document: TypedDocument, from: string, to: string): TypedDocument {
  const variants = valueAt(document, ["variants"]);
  const count = Array.isArray(variants) ? variants.length : 0;
  const bodies: KeyPath[] = [
    ["truck", "body"],
    ...Array.from({ length: count }, (_, i): KeyPath => ["variants", i, "patch", "truck", "body"]),
  ];
  return bodies.reduce<TypedDocument>((renamed, path) => {
    const body = valueAt(renamed, path);
    if (!Array.isArray(body)) return renamed;
    return body.reduce<TypedDocument>(
      (one, part, i) =>
        valueAt(part, ["name"]) === from ? (setAt(one, [...path, i, "name"], to) as TypedDocument) : one,
      renamed,
    );
  }, document);
}
