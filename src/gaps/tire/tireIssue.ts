/** A user's mistake in the tire or wheel: which key, and what would be right, one sentence without a full stop. */
export interface TireIssue {
  readonly key: string;
  readonly mend: string;
}

/** A length for a mend, in both units, for the reader's file may be in either. */
export function lengthInBoth(length: number): string {
  return `${length.toFixed(1)} mm (${(length / 25.4).toFixed(2)} in)`;
}
