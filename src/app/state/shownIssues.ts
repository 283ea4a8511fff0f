import { effectiveDocument } from "../../setup/editing/effectiveDocument.ts";
import { type KeyPath, parseKeyText } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import type { GivenMeshes } from "./givenMeshes.ts";
import { memoLast } from "./memoLast.ts";
import { lengthFormatOf } from "./preferences.ts";
import { nearestThatGoes, type Suggestion } from "./suggestion.ts";
import { trucks } from "./truck.ts";
import { fileUnitsOf, type TypedDocument } from "./typedDocument.ts";
import type { GoodDocument, WorkbenchState } from "./workbenchState.ts";

/** An issue of the document on the board, with what would mend it. */
export interface ShownIssue extends SetupIssue {
  /** Where it is; null where no single place of the document is. */
  readonly path: KeyPath | null;
  /** Values that would mend it, best first; each is applied by `applySuggestion`. */
  readonly suggestions: readonly Suggestion[];
}

const NO_ISSUES: readonly ShownIssue[] = [];

/**
 * The issues of the document on the board. Suggestions take some trucks to be tried, so they come when no gesture is going
 * on. The same list until something it follows from changes.
 */
export function shownIssues(state: WorkbenchState): readonly ShownIssue[] {
  if (state.issues.length === 0 || state.document === null) return NO_ISSUES;
  const { issues, document, file, variant, meshes, good, isGesturing } = state;
  return withSuggestions(
    issues,
    document,
    file,
    variant,
    meshes,
    isGesturing ? null : good,
    isGesturing,
    state.preferences.lengths,
  );
}

const withSuggestions = memoLast(
  (
    issues: readonly SetupIssue[],
    document: TypedDocument,
    file: string,
    variant: string | null,
    meshes: GivenMeshes,
    good: GoodDocument | null,
    isGesturing: boolean,
    lengths: WorkbenchState["preferences"]["lengths"],
  ): readonly ShownIssue[] => {
    const shown = effectiveDocument(document, variant) ?? document;
    const before = good && effectiveDocument(good.document, good.variant);
    const fits = (candidate: unknown) => trucks.make(candidate as TypedDocument, file, null, meshes).ok;
    const format = lengthFormatOf(lengths, fileUnitsOf(shown));
    return issues.map((issue) => {
      const path = parseKeyText(issue.key);
      const isPlace = path !== null && path.length > 0 && path[0] !== "variants";
      const suggestions =
        isGesturing || !isPlace ? [] : nearestThatGoes({ shown, before, path, issue, fits, format });
      return { ...issue, path: isPlace ? path : null, suggestions };
    });
  },
);
