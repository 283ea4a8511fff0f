import { type BoltPattern, parseBoltPattern } from "../../../units/boltPattern.ts";
import { parseThread, type ThreadCallout } from "../../../units/threadCallout.ts";
import { notationField } from "../../fields/fields.ts";

/** A bolt pattern as typed, such as `5x5`. */
export function boltPatternField(description: string) {
  return notationField(description, parseBoltPattern);
}

/** A thread as typed, such as `5/8-18`. */
export function threadField(description: string) {
  return notationField(description, parseThread);
}

/** null = none typed. */
export function boltPatternOf(typed: string | undefined): BoltPattern | null {
  if (typed === undefined) return null;
  const parsed = parseBoltPattern(typed);
  if (!parsed.ok) throw new TypeError(`boltPatternOf: shape was not checked: ${parsed.mend}`);
  return parsed.pattern;
}

/** null = none typed. */
export function threadOf(typed: string | undefined): ThreadCallout | null {
  if (typed === undefined) return null;
  const parsed = parseThread(typed);
  if (!parsed.ok) throw new TypeError(`threadOf: shape was not checked: ${parsed.mend}`);
  return parsed.thread;
}
