/** What the program says to the shell. */
export const ExitCode = {
  Fine: 0,
  /** Something rubs, or a limit is passed. */
  Rubs: 1,
  /** Bad input or usage; one line on standard error. */
  BadInput: 2,
} as const;

export type ExitCode = (typeof ExitCode)[keyof typeof ExitCode];
