import "./issuePanel.css";
import { keyText } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { useStation } from "../state/address.ts";
import { shownDocument } from "../state/selectors.ts";
import { shownIssues } from "../state/shownIssues.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { goToField } from "./fields/fieldAsked.ts";
import { IssueItem } from "./IssueItem.tsx";
import { ReadingsBar } from "./worksheet/ReadingsBar.tsx";

/** The first of a document's issues in one line; the fields in the setup say the rest. */
function IssueBar({ issues }: { issues: readonly SetupIssue[] }) {
  const [first, ...others] = issues;
  const hasTruck = useWorkbench((s) => s.truck !== null);
  const document = useWorkbench(shownDocument);
  return (
    <section className="issue-bar" role="alert" aria-label="Problems">
      <ul>{first && <IssueItem issue={first} document={document} goToField={goToField} />}</ul>
      <p>
        {others.length > 0 && `And ${others.length} more, at their fields. `}
        {hasTruck && "Still showing the last setup that worked."}
      </p>
    </section>
  );
}

/** What follows from readings is told where they are, in their names. */
function isOfReadings({ key }: SetupIssue, document: unknown): boolean {
  return isOnAssumedLayout(document) && !key.startsWith("readings");
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
  const issues = refusal?.issues ?? [...ofDocument, ...unread];
  if (issues.length === 0) return null;
  const file = issues[0]?.file ?? "";
  // While something is typed its field says what is wrong: here one line tells, off the page's flow.
  if (refusal === null)
    return isOfReadings(issues[0]!, document) ? <ReadingsBar /> : <IssueBar issues={issues} />;
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
