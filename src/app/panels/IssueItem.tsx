import type { SetupIssue } from "../../setup/types.ts";

export type IssueItemProps = {
  issue: SetupIssue;
};

/** One issue: where, what was found there, how to mend it. */
export function IssueItem({ issue }: IssueItemProps) {
  return (
    <li>
      {issue.key !== "" && <code className="issue-key">{issue.key}</code>}
      {issue.value !== "" && (
        <>
          {issue.key !== "" && " is "}
          <code>{issue.value}</code>
        </>
      )}
      {(issue.key !== "" || issue.value !== "") && ": "}
      {/[.?!]$/.test(issue.mend) ? issue.mend : `${issue.mend}.`}
    </li>
  );
}
