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
