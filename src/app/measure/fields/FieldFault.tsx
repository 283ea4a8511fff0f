import { isWithin, type KeyPath } from "../../../setup/types/keyPath.ts";
import { shownIssues } from "../../state/shownIssues.ts";
import type { Suggestion } from "../../state/suggestion.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keyWords } from "../../words/keyWords.ts";
import { suggestionWords } from "./fieldWords.ts";

export type FieldFaultProps = {
  id: string;
  path: KeyPath;
  /** One sentence without a full stop. */
  mend: string;
  /** The text is a draft: the setup still has the value from before. */
  isDraft: boolean;
};

const NONE: readonly Suggestion[] = [];

/** What is wrong with a field and how to mend it, with buttons for values that would do. */
export function FieldFault({ id, path, mend, isDraft }: FieldFaultProps) {
  const issues = useWorkbench(shownIssues);
  const suggestions = issues.find((issue) => issue.path && isWithin(issue.path, path))?.suggestions ?? NONE;
  const state = workbench.getState();
  return (
    <div className="fault">
      <p id={id}>
        <span aria-hidden="true">✕ </span>
        {sentence(keyWords(mend))}
        {isDraft && " Until then the value from before holds."}
      </p>
      {suggestions.map((suggestion) => (
        <button
          key={`${suggestion.kind} ${suggestion.path.join(".")}`}
          type="button"
          className="fault-offer"
          onClick={() => state.applySuggestion(suggestion)}
        >
          {suggestionWords(state, suggestion, path)}
        </button>
      ))}
    </div>
  );
}

function sentence(mend: string): string {
  const first = mend.charAt(0).toUpperCase() + mend.slice(1);
  return /[.?!]$/.test(first) ? first : `${first}.`;
}
