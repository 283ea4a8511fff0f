import type { SetupIssue } from "../../setup/types.ts";

export type IssueItemProps = {
  issue: SetupIssue;
};

/** One issue: where, what was found there, how to mend it. */
export function IssueItem({ issue }: IssueItemProps) {
  const { key, mend } = issue;
  // How the reader says that a key is not there; the mend says so too.
  const value = issue.value === "nothing" ? "" : issue.value;
  return (
    <li>
      {key !== "" && <code className="issue-key">{key}</code>}
      {key !== "" && value !== "" && " is "}
      {value !== "" && <code>{value}</code>}
      {(key !== "" || value !== "") && ": "}
      {/[.?!]$/.test(mend) ? mend : `${mend}.`}
    </li>
  );
}
