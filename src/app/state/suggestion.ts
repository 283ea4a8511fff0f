import { isSameJson } from "../../setup/editing/writtenValues.ts";
import { fieldAt } from "../../setup/fieldCatalogue.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { bareTyped, withSameWithin } from "../../setup/reading/typedPair.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { parseAngle } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { type FileUnits, MM_PER_INCH } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";

/** A value that would mend an issue. */
export interface Suggestion {
  readonly path: KeyPath;
  /** As the file holds it; undefined = take the key out. */
  readonly value: unknown;
  /** `nearest` = the nearest value that goes together; `before` = what stood there when it last did. */
  readonly kind: "nearest" | "before";
}

/** What is looked at for a value that mends an issue. */
export interface Search {
  /** The document with its variant, which does not go together. */
  readonly shown: unknown;
  /** The document that last did; null = there was none. */
  readonly before: unknown;
  readonly path: KeyPath;
  readonly issue: SetupIssue;
  /** Whether a document goes together. */
  readonly fits: (document: unknown) => boolean;
  /** The fraction that a suggested length is rounded to, away from where it fails. */
  readonly format: LengthFormat;
}

/** Halvings: the border is found to a 30 000th of the way, finer than any fraction it is rounded to. */
const HALVINGS = 15;

/**
 * Values that make the document go together again, nearest first: for one field that was changed, the nearest to what
 * stands there, rounded to the fraction shown and tried; then what stood there before. None where nothing tried goes.
 */
export function nearestThatGoes(search: Search): readonly Suggestion[] {
  const { shown, before, fits } = search;
  const found: Suggestion[] = [];
  const add = (path: KeyPath, suggested: unknown, kind: Suggestion["kind"]) => {
    const held = numberAt(shown, path);
    const bare = held?.kind === "length" ? held.units : held?.kind === "angle" ? "°" : "";
    const value = withSameWithin(valueAt(shown, path), suggested, bare);
    if (found.some((other) => isSameJson(other.value, value))) return;
    const mended = value === undefined ? removeAt(shown, path) : setAt(shown, path, value);
    if (fits(mended)) found.push({ path, value, kind });
  };
  const changed = before === null ? null : changedPath(before, shown);
  const isOneField = changed !== null && changed.length > 0 && changed[0] !== "variants";
  const addBetween = (at: KeyPath) => {
    const now = numberAt(shown, at);
    const was = numberAt(before, at);
    const value = now && was && now.kind === was.kind ? nearestBetween(now, was, search, at) : null;
    if (value !== null) add(at, value, "nearest");
  };
  // What was changed comes first, where it is not the place that the issue names itself.
  const isElsewhere = !search.issue.range || (changed !== null && !isSameJson(changed, search.path));
  if (isOneField && isElsewhere) addBetween(changed);
  const inRange = nearestInRange(search);
  if (inRange !== null) add(search.path, inRange, "nearest");
  // At the end of the issue's range something else may not go, such as a stance that is then out of reach.
  if (isOneField && !isElsewhere && found.length === 0) addBetween(changed);
  if (!isOneField) return found;
  add(changed, valueAt(before, changed), "before");
  return found;
}

/** The end of the issue's own range that is nearest, as the file would write it, rounded inward. */
function nearestInRange({ shown, path, issue, format }: Search): string | null {
  const now = numberAt(shown, path);
  if (!issue.range || now?.kind !== "length") return null;
  const { least, most } = issue.range;
  const [end, inward] = now.amount <= least ? [least, 1 as const] : [most, -1 as const];
  for (const step of stepsOf(format)) {
    const steps = inward > 0 ? Math.floor(end / step) + 1 : Math.ceil(end / step) - 1;
    const mm = steps * step;
    if (mm > least && mm < most) return plainLengthText(mm, now.units, format.units);
  }
  return null;
}

/** Between a value that does not go and one that does: the value nearest the first, rounded toward the second. */
function nearestBetween(bad: Amount, good: Amount, search: Search, path: KeyPath): unknown {
  const written = (amount: number) =>
    bad.kind === "length"
      ? plainLengthText(amount, bad.units, search.format.units)
      : Number(amount.toFixed(6));
  const goes = (amount: number) => search.fits(setAt(search.shown, path, written(amount)));
  if (!goes(good.amount)) return null;
  let [from, to] = [bad.amount, good.amount];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (from + to);
    if (goes(middle)) to = middle;
    else from = middle;
  }
  const toward = Math.sign(good.amount - bad.amount);
  for (const step of bad.kind === "length" ? stepsOf(search.format) : [0.1, 0.01]) {
    const rounded = (toward > 0 ? Math.ceil(to / step - 1e-9) : Math.floor(to / step + 1e-9)) * step;
    const isBetween = toward * (good.amount - rounded) >= 0;
    if (isBetween && goes(rounded)) return written(rounded);
  }
  return written(to);
}

/** mm. The steps a length is rounded to: the one shown, then finer ones where that leaves nothing. */
function stepsOf({ units, fraction }: LengthFormat): readonly number[] {
  if (units === "mm") return [1, 0.1, 0.01];
  if (fraction === "decimal") return [0.01 * MM_PER_INCH, 0.001 * MM_PER_INCH];
  return [MM_PER_INCH / (fraction ?? 16), MM_PER_INCH / 64, MM_PER_INCH / 1000];
}

interface Amount {
  readonly kind: "length" | "angle" | "number";
  /** mm, degrees or the number itself. */
  readonly amount: number;
  readonly units: FileUnits;
}

function numberAt(document: unknown, path: KeyPath): Amount | null {
  const value = bareTyped(valueAt(document, path));
  if (typeof value !== "number" && typeof value !== "string") return null;
  const units = valueAt(document, ["units"]) === "mm" ? "mm" : "in";
  switch (fieldAt(path, document)?.kind) {
    case "length":
    case "signedLength": {
      const length = parseLength(value, units);
      return length.ok ? { kind: "length", amount: length.mm, units } : null;
    }
    case "angle": {
      const angle = parseAngle(value);
      return angle.ok ? { kind: "angle", amount: (angle.rad / Math.PI) * 180, units } : null;
    }
    case "number":
      return typeof value === "number" ? { kind: "number", amount: value, units } : null;
    default:
      return null;
  }
}

/** Keys that are passed over where a change is looked for: what is no part of this truck, or is only said of its fields. */
const NO_PART_OF_IT = ["variants", "fromExample", "confirmed"] as const;

/** The deepest path inside which everything lies that differs, but for `NO_PART_OF_IT`; null = nothing does. */
function changedPath(before: unknown, now: unknown): KeyPath | null {
  const path: (string | number)[] = [];
  let [a, b] = [before, now];
  for (;;) {
    if (a === b || isSameJson(a, b)) return path.length === 0 ? null : path;
    if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return path;
    if (Array.isArray(a) !== Array.isArray(b)) return path;
    const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
    if (path.length === 0) for (const key of NO_PART_OF_IT) keys.delete(key);
    const [here, there] = [a as Record<string, unknown>, b as Record<string, unknown>];
    const differing = [...keys].filter((key) => !isSameJson(here[key], there[key]));
    const only = differing[0];
    if (only === undefined) return path.length === 0 ? null : path;
    if (differing.length > 1) return path; // the block or point as a whole
    path.push(Array.isArray(a) ? Number(only) : only);
    [a, b] = [here[only], there[only]];
  }
}
