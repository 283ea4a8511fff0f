import { visibleText } from "../../units/words.ts";
import type { SetupIssue } from "../types/types.ts";

/** An issue on one line: `FILE: KEY: VALUE: mend`; the key or value is left out where there is none. */
export function formatIssue(issue: SetupIssue): string {
  return [issue.file, issue.key, issue.value, issue.mend]
    .filter((part) => part !== "")
    .map(visibleText)
    .join(": ");
}
