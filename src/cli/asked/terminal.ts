import type { ReadBytes } from "../disk/readBytes.ts";
import type { shareOut } from "../threads/shareOut.ts";

/** What a run of the command line reads from and writes to; tests hand in their own. */
export interface Terminal {
  /** Whole texts: a document comes in one. @throws StreamFailure when it is not all out */
  readonly writeOut: (text: string) => void;
  /** @throws StreamFailure */
  readonly writeError: (text: string) => void;
  /** All of standard input, for `-` in place of a file. @throws ReadRefused for more than `mostBytes`, or the system's error */
  readonly readInput: (mostBytes: number) => ReadBytes;
  /** A line for standard error that goes with an answer, once that is out. */
  readonly remark?: (line: string) => void;
  /** Milliseconds, for `--budget`; default: the processor time of this process. */
  readonly clock?: () => number;
  /** Shows how far a long job is, in place of what it showed before; "" clears it. Only where a person watches. */
  readonly showProgress?: (text: string) => void;
  /** Has a long job done by several threads; none = the run's own does it, with the same answer. */
  readonly shareOut?: typeof shareOut;
}
