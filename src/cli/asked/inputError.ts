import { describeValue } from "../../setup/reading/describeValue.ts";
import { formatIssue } from "../../setup/reading/formatIssue.ts";
import type { SetupIssue } from "../../setup/types/types.ts";

/** Most keys named after the first issue; the file shows the rest when these are mended. */
const MOST_KEYS = 8;

/** Bad input: everything found wrong, told on one line. */
export class InputError extends Error {
  override readonly name = "InputError";

  constructor(issues: readonly [SetupIssue, ...SetupIssue[]]) {
    super(issueLine(issues));
  }

  /** A mistake in one option: its value as typed (null = it takes none), and the mend. */
  static ofOption(file: string, option: string, value: string | null, mend: string): InputError {
    return new InputError([{ file, key: option, value: value === null ? "" : describeValue(value), mend }]);
  }

  /** A file that cannot be read at all. */
  static ofFile(file: string, mend: string): InputError {
    return new InputError([{ file, key: "", value: "", mend }]);
  }
}

/** The first issue in full, and how many more there are, with their keys. */
function issueLine([first, ...rest]: readonly [SetupIssue, ...SetupIssue[]]): string {
  const line = formatIssue(first);
  if (rest.length === 0) return line;
  const keys = [...new Set(rest.map((issue) => issue.key).filter((key) => key !== ""))];
  const named = keys.slice(0, MOST_KEYS).join(", ") + (keys.length > MOST_KEYS ? ", …" : "");
  return `${line} (and ${rest.length} more${named === "" ? "" : `: ${named}`})`;
}
