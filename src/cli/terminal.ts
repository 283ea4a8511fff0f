/** What a run of the command line reads from and writes to; tests hand in their own. */
export interface Terminal {
  readonly writeOut: (text: string) => void;
  readonly writeError: (text: string) => void;
  /** All of standard input, for `-` in place of a file. */
  readonly readInput: () => Uint8Array;
  /** Shows how far a long job is, in place of what it showed before; "" clears it. Only where a person watches. */
  readonly showProgress?: (text: string) => void;
}
