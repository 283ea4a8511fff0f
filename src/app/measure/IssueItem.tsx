import { type KeyPath, parseKeyText } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { fieldName } from "../../studies/wording/fieldName.ts";
import { keyWords } from "../words/keyWords.ts";

export type IssueItemProps = {
  issue: SetupIssue;
  /** The setup that it is of, so that its place can be told in the words of the form. Default none. */
  document?: unknown;
  /** Goes to its field. Default none: the setup is not on the board. */
  goToField?: (path: KeyPath) => void;
};

/** One issue: where, what was found there, how to mend it; in the words of the form, not in keys of the file. */
export function IssueItem({ issue, document, goToField }: IssueItemProps) {
  const path = parseKeyText(issue.key);
  const place = path ? fieldName(path, document) : issue.key;
  // What is not there, and what is no single value, is no news: the mend says what is wanted.
  const value = issue.value === "nothing" || /^[[{]/.test(issue.value) ? "" : issue.value;
  // Of a key that no field has, the mend must name keys.
  const mend = place.endsWith("”") ? issue.mend : keyWords(issue.mend);
  return (
    <li>
      {place !== "" && (
        <strong className="issue-key">
          {goToField && path ? (
            <button type="button" className="link-button" onClick={() => goToField(path)}>
              {place}
            </button>
          ) : (
            place
          )}
        </strong>
      )}
      {place !== "" && value !== "" && " is "}
      {value !== "" && <q className="issue-value">{value.replace(/^"(.*)"$/, "$1")}</q>}
      {(place !== "" || value !== "") && ": "}
      {/[.?!]$/.test(mend) ? mend : `${mend}.`}
    </li>
  );
}
