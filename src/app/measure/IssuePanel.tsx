import "./issuePanel.css";
import { useState } from "react";
import { keyText } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { useStation } from "../state/address.ts";
import { shownDocument } from "../state/selectors.ts";
import { shownIssues } from "../state/shownIssues.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { goToField } from "./fields/fieldAsked.ts";
import { IssueItem } from "./IssueItem.tsx";
import { awayKey, followsFromReadings, whichBar } from "./whichBar.ts";
import { ReadingsBar, ToTheWorksheet } from "./worksheet/ReadingsBar.tsx";
import { useContradicting } from "./worksheet/useContradicting.ts";
import { useWorksheetView } from "./worksheet/worksheetView.ts";

type IssueBarProps = {
  issues: readonly SetupIssue[];
  /** Another line may come in its place, which is announced then: one problem is not told twice. */
  isLookedInto: boolean;
};

/** The first of a document's issues in one line; the fields in the setup say the rest. */
function IssueBar({ issues, isLookedInto }: IssueBarProps) {
  const [first, ...others] = issues;
  const hasTruck = useWorkbench((s) => s.truck !== null);
  const document = useWorkbench(shownDocument);
  const isOfDocument = useWorkbench((s) => s.issues.length > 0);
  const ofReadings = isOfDocument && first && followsFromReadings(first, document);
  return (
    <section className="issue-bar" role={isLookedInto ? undefined : "alert"} aria-label="Problems">
      <ul>{first && <IssueItem issue={first} document={document} goToField={goToField} />}</ul>
      <p>
        {others.length > 0 && `And ${others.length} more, at their fields. `}
        {hasTruck && "Still showing the last setup that worked."}
        {ofReadings && <ToTheWorksheet />}
      </p>
    </section>
  );
}

/** What stands in a field and does not read, told where the fields are not shown: the answer is without it. */
function useUnread(): readonly SetupIssue[] {
  const isElsewhere = useStation() !== "measure";
  const drafts = useWorkbench((s) => s.drafts);
  const variant = useWorkbench((s) => s.variant);
  const file = useWorkbench((s) => s.file);
  if (!isElsewhere) return [];
  return Object.values(drafts)
    .filter((draft) => draft.variant === null || draft.variant === variant)
    .map(({ path, text, mend }) => ({ file, key: keyText(path), value: text, mend }));
}

/** What keeps a setup from being shown: every issue with its place and its mend. The last good truck stays. */
export function IssuePanel() {
  const refusal = useWorkbench((s) => s.refusal);
  const ofDocument = useWorkbench(shownIssues);
  const hasTruck = useWorkbench((s) => s.truck !== null);
  const document = useWorkbench((s) => (s.refusal ? s.refusal.document : shownDocument(s)));
  const dismiss = useWorkbench((s) => s.dismissRefusal);
  const unread = useUnread();
  const found = useContradicting();
  const isFields = useWorksheetView((s) => s.isFields);
  const isAtWorksheet = useStation() === "measure" && !isFields;
  const [away, setAway] = useState<string | null>(null);
  const issues = refusal?.issues ?? [...ofDocument, ...unread];
  if (issues.length === 0) return null;
  const file = issues[0]?.file ?? "";
  // While something is typed its field says what is wrong: here one line tells, off the page's flow.
  if (refusal === null) {
    const inTheWay = found?.inTheWay ?? null;
    const bar = whichBar({ issues: ofDocument, unread, document, inTheWay, isAtWorksheet, away });
    if (bar === null) return null;
    const [first] = ofDocument;
    const isLookedInto = found === null && first !== undefined && followsFromReadings(first, document);
    // Looked into and found to stay, it is a new one: it is announced then.
    if (bar === "issues")
      return <IssueBar key={String(isLookedInto)} issues={issues} isLookedInto={isLookedInto} />;
    return <ReadingsBar inTheWay={inTheWay!} onDismiss={() => setAway(awayKey(ofDocument[0]!))} />;
  }
  return (
    <section className="issues" role="alert" aria-labelledby="issues-title">
      <h2 id="issues-title">
        {file} {issues.length === 1 ? "has 1 problem" : `has ${issues.length} problems`}
      </h2>
      <ul>
        {issues.map((issue, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two issues may read the same; the list is replaced whole
          <IssueItem key={i} issue={issue} document={document} />
        ))}
      </ul>
      {hasTruck && (
        <p className="issues-foot">
          Still showing the last setup that worked.
          {refusal && (
            <button type="button" className="button" onClick={dismiss}>
              Dismiss
            </button>
          )}
        </p>
      )}
    </section>
  );
}
