import { isRead, isSaidMine } from "../../setup/exampleMarks.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import { fieldName } from "./fieldName.ts";
import { listWords, lower } from "./nameWords.ts";

/** What the three coordinates of a point say. */
const AXES = ["how far ahead", "how far out", "its height"] as const;

/**
 * What of a field is read while the rest is assumed, in words: `its height is read; how far ahead and how far out are assumed`, `1
 * of 7 points is read, another in part; the others follow`. Null where all of it is assumed.
 * @param document the setup, a variant's patch applied
 */
export function readInPart(path: KeyPath, document: unknown): string | null {
  const told = ownEntries(path, document);
  if (told === null || told.every((one) => one === "none")) return null;
  if (isPoints(path, document)) {
    const [whole, part, none] = countsOf(told);
    const count = whole === 0 ? part : whole;
    const read = `${count} of ${told.length} points ${count === 1 ? "is" : "are"} read`;
    const another = part === 1 ? "another" : `another ${part}`;
    const inPart = part === 0 ? "" : whole === 0 ? " in part" : `, ${another} in part`;
    return `${read}${inPart}${none === 0 ? "" : "; the others follow"}`;
  }
  const axes = (isOwn: boolean) => AXES.filter((_, axis) => (told[axis] === "all") === isOwn);
  return `${clause(axes(true), "read")}; ${clause(axes(false), "assumed")}`;
}

/**
 * What is still assumed of a field, inside a list: `upper ball joint`, `lower ball joint, only how far ahead`, `points, 7 of 7, 1 of
 * them only in part`.
 */
export function assumedName(path: KeyPath, document: unknown): string {
  const name = lower(fieldName(path, document));
  const told = ownEntries(path, document);
  if (told === null || told.every((one) => one === "none")) return name;
  if (isPoints(path, document)) {
    const [whole, part] = countsOf(told);
    const inPart = part === 0 ? "" : `, ${part} of them only in part`;
    return `${name}, ${told.length - whole} of ${told.length}${inPart}`;
  }
  return `${name}, only ${listWords(AXES.filter((_, axis) => told[axis] !== "all"))}`;
}

function isPoints(path: KeyPath, document: unknown): boolean {
  return Array.isArray(valueAt(document, [...path, 0]));
}

function countsOf(told: readonly Told[]): readonly [all: number, part: number, none: number] {
  const count = (how: Told) => told.filter((one) => one === how).length;
  return [count("all"), count("part"), count("none")];
}

/** Of a list of points how many are not read all over; null = it is none. */
export function assumedCount(
  path: KeyPath,
  document: unknown,
): { readonly assumed: number; readonly all: number } | null {
  const own = ownEntries(path, document);
  return own && { assumed: own.filter((one) => one !== "all").length, all: own.length };
}

/** What is not measured yet, as a line: `Still assumed: …`. */
export function stillAssumed(fields: readonly KeyPath[], document: unknown): string {
  if (fields.length === 0) return "Nothing is assumed any more.";
  return `Still assumed: ${fields.map((path) => assumedName(path, document)).join("; ")}.`;
}

function clause(words: readonly string[], done: string): string {
  return `${listWords(words)} ${words.length === 1 ? "is" : "are"} ${done}`;
}

/** How much of a number, or of a point, is read or typed. */
type Told = "all" | "part" | "none";

/** Of each coordinate of a point, or each point of a list, how much of it is read or typed; null = it is a single number. */
function ownEntries(path: KeyPath, document: unknown): readonly Told[] | null {
  const value = valueAt(document, path);
  if (!Array.isArray(value)) return null;
  const toldOf = (at: KeyPath, one: unknown): Told => {
    if (!Array.isArray(one)) return isRead(document, at) || isSaidMine(document, at) ? "all" : "none";
    const told = one.map((entry, i) => toldOf([...at, i], entry));
    const [first = "none"] = told;
    return told.every((entry) => entry === first) ? first : "part";
  };
  return value.map((one, i) => toldOf([...path, i], one));
}
