import { useMemo } from "react";
import { useStore } from "zustand";
import { fieldAt } from "../../setup/fieldCatalogue.ts";
import type { SetupField } from "../../setup/fields/setupField.ts";
import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { fieldDraft, fieldIssue, fieldText, isOfVariant, shownDocument } from "./selectors.ts";
import type { Draft } from "./typedDocument.ts";
import { useWorkbench } from "./useWorkbench.ts";
import { workbench } from "./workbench.ts";

/** A field of the setup as a form shows it. */
export interface FieldState {
  /** What the catalogue knows of it; null = no such field in what is on the board. */
  readonly field: SetupField | null;
  /** What stands in it, a draft before the value. */
  readonly text: string;
  readonly draft: Draft | null;
  readonly issue: SetupIssue | null;
  /** The variant shown differs from the setup here. */
  readonly isOfVariant: boolean;
  /** Puts a text in; arithmetic is worked out. */
  edit(text: string): void;
  step(direction: 1 | -1, count?: number): void;
  /** Back to the default. */
  remove(): void;
  discardDraft(): void;
}

/** Follows one field and nothing else: an edit elsewhere draws nothing here anew. */
export function useField(path: KeyPath): FieldState {
  const key = keyText(path);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says all of the path, and a new list of the same keys is no other path
  const at = useMemo(() => path, [key]);
  const text = useWorkbench((s) => fieldText(s, at));
  const draft = useWorkbench((s) => fieldDraft(s, at));
  const issue = useWorkbench((s) => fieldIssue(s, at));
  const differs = useWorkbench((s) => isOfVariant(s, at));
  // Of which sort a block is decides what its fields are.
  const sort = useWorkbench((s) => JSON.stringify(fieldAt(at, shownDocument(s))?.when ?? null));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the catalogue's answer changes with the sort alone
  const field = useMemo(() => fieldAt(at, shownDocument(workbench.getState())), [at, sort]);
  return useMemo(() => {
    const { editField, stepField, removeField, discardDraft } = workbench.getState();
    return {
      field,
      text,
      draft,
      issue,
      isOfVariant: differs,
      edit: (typed: string) => editField(at, typed),
      step: (direction: 1 | -1, count?: number) => stepField(at, direction, count),
      remove: () => removeField(at),
      discardDraft: () => discardDraft(at),
    };
  }, [at, field, text, draft, issue, differs]);
}

/** Whether there is a step to take back. */
export function useCanUndo(): boolean {
  return useStore(workbench.temporal, (history) => history.pastStates.length > 0);
}

/** Whether there is a step to take again. */
export function useCanRedo(): boolean {
  return useStore(workbench.temporal, (history) => history.futureStates.length > 0);
}
