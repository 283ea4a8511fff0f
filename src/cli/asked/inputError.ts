import { describeValue } from "../../setup/reading/describeValue.ts";
import { formatIssue } from "../../setup/reading/issueList.ts";
import type { Result, SetupIssue } from "../../setup/types/types.ts";
import type { Model } from "../../studies/model/model.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { formatLength } from "../../units/formatLength.ts";

/** What the program says to the shell. Only an answer says 0 or 1. */
export const ExitCode = {
  Fine: 0,
  /** Something rubs, or a limit is passed. */
  Rubs: 1,
  /** What cannot be read, written, solved or understood; one line on standard error. */
  NoAnswer: 2,
} as const;

export type ExitCode = (typeof ExitCode)[keyof typeof ExitCode];

/** What `ExitCode.NoAnswer` means, for the help. */
export const NO_ANSWER = "no answer: bad input or usage, a failed read or write";

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

/** Why a truck cannot be aligned: it does not stand at its targets' stance, or not with that toe. @param travel mm */
export function stanceError(file: string, { setup }: Model, travel: number): InputError {
  const height = formatLength(travel, formatOf(setup));
  const mend = `the front end does not reach travel ${height} with the wheels straight ahead and that toe; choose a stance it reaches, or less toe`;
  const value = JSON.stringify(setup.alignment.targets?.stance ?? null);
  return new InputError([{ file, key: "alignment.targets.stance", value, mend }]);
}

/** The value of a result. @throws InputError with every issue found */
export function accepted<T>(result: Result<T>): T {
  if (!result.ok) throw inputError(result.issues);
  return result.value;
}

/** The error of issues, of which there is one at least. */
export function inputError(issues: readonly SetupIssue[]): InputError {
  const [first, ...rest] = issues;
  if (!first) throw new TypeError("inputError: refused without an issue");
  return new InputError([first, ...rest]);
}
