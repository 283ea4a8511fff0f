import "./issuePanel.css";
import { shownIssues } from "../state/shownIssues.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { IssueItem } from "./IssueItem.tsx";

/** What keeps a setup from being shown: every issue with its place and its mend. The last good truck stays. */
export function IssuePanel() {
  const refusal = useWorkbench((s) => s.refusal);
  const ofDocument = useWorkbench(shownIssues);
  const hasTruck = useWorkbench((s) => s.truck !== null);
  const dismiss = useWorkbench((s) => s.dismissRefusal);
  const issues = refusal?.issues ?? ofDocument;
  if (issues.length === 0) return null;
  const file = issues[0]?.file ?? "";
  return (
    <section className="issues" role="alert" aria-labelledby="issues-title">
      <h2 id="issues-title">
        {file} {issues.length === 1 ? "needs one thing mended" : `needs ${issues.length} things mended`}
      </h2>
      <ul>
        {issues.map((issue, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two issues may read the same; the list is replaced whole
          <IssueItem key={i} issue={issue} />
        ))}
      </ul>
      {hasTruck && (
        <p className="issues-foot">
          The board still shows the last setup that went together.
          {refusal && (
            <button type="button" className="button" onClick={dismiss}>
              Put this note away
            </button>
          )}
        </p>
      )}
    </section>
  );
}
