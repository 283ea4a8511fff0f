import type { SetupIssue } from "./types.ts";

/** An issue on one line: `FILE: KEY: VALUE: mend`; the key or value is left out where there is none. */
export function formatIssue(issue: SetupIssue): string {
  return [issue.file, issue.key, issue.value, issue.mend]
    .filter((part) => part !== "")
    .map((part) => part.replace(/[\p{Cc}\u2028\u2029]+/gu, " "))
    .join(": ");
}
