import { removeAt, setAt } from "./reading/setAt.ts";
import { pairOf } from "./reading/typedPair.ts";
import { isWithin, type KeyPath, keyText, parseKeyText, valueAt } from "./types/keyPath.ts";

/**
 * Which numbers of a setup are an example's, and which the truck's own. The setup file's `fromExample` says so; what is said
 * of a place holds for all inside it that nothing nearer is said of. Since it stands in the document, it is undone, saved,
 * shared and patched by variants as the numbers themselves are.
 */
const KEY = "fromExample";

/** Blocks that hold places to look at, and nothing of the truck: whatever is put there says of no number whose it is. */
const NOTHING_OF_IT: ReadonlySet<unknown> = new Set(["poses"]);

/** Keys whose values are no numbers of a truck: what things are called, and of which sort they are. */
const NO_NUMBERS: ReadonlySet<string> = new Set([
  ...["$schema", "format", "version", "name", "units", "variants", KEY, "confirmed", "kind", "type", "side"],
  ...["file", "unit", "on", "stance", "frame", "legs", "arm", "triangles"],
  ...["material", "source", "member", "caliperAt", "joint"],
  ...["number", "customer", "item", "finish", "notes", "quantity"],
  ...["between", "plumb", "mark"],
]);

function isNoNumber(key: string): boolean {
  return NO_NUMBERS.has(key) || NOTHING_OF_IT.has(key);
}

/** What starts with a letter and is a measure all the same: a tire's size, a metric thread. */
const LETTERED = /^(?:P|LT|ST|T)\s*\d{3}\s*\/|^M\s*\d+(?:[.,]\d+)?\s*[x×]/i;

/** The name of something, such as a joint a member starts at. */
function isName(text: string): boolean {
  return /^\p{L}/u.test(text) && !LETTERED.test(text);
}

type Marks = Readonly<Record<string, boolean>>;

/** The name of the example a document began as; null = it did not. */
export function exampleOf(document: unknown): string | null {
  const name = valueAt(document, [KEY, "of"]);
  return typeof name === "string" ? name : null;
}

/** Every field of a document that still holds an example's number; a point or a list of points counts once. */
export function exampleFields(document: unknown): readonly KeyPath[] {
  if (exampleOf(document) === null) return [];
  const marks = { ...readMarks(document), ...marksOf(document) };
  return numberFields(document).filter((path) => !isMine(marks, path, valueAt(document, path)));
}

/** Whether what stands at a place, such as one coordinate of a point, is still the example's. */
export function isExampleAt(document: unknown, path: KeyPath): boolean {
  if (exampleOf(document) === null) return false;
  const marks = { ...readMarks(document), ...marksOf(document) };
  return !isMine(marks, path, valueAt(document, path));
}

/** Whether nobody has said of any number that it is the truck's own, and no reading tells one. */
export function isExampleAsItCame(document: unknown): boolean {
  const marks = { ...readMarks(document), ...marksOf(document) };
  return exampleOf(document) !== null && !Object.values(marks).includes(true);
}

/** Whether somebody has said of a place that what stands there is the truck's own; what readings tell is another matter. */
export function isSaidMine(document: unknown, path: KeyPath): boolean {
  return isMine(marksOf(document), path, valueAt(document, path));
}

/** Places of which somebody said that what stands there, and inside them, is the truck's own. */
export function placesSaidMine(document: unknown): readonly KeyPath[] {
  return Object.entries(marksOf(document)).flatMap(([key, isOwn]) =>
    isOwn ? [parseKeyText(key) ?? []] : [],
  );
}

/** Whether readings tell what stands at this very place. */
export function isRead(document: unknown, path: KeyPath): boolean {
  return readMarks(document)[keyText(path)] === true;
}

/**
 * A document in which the numbers at some places, and no others, are worked out of its readings. Where that very number was said to
 * be an example's it no longer is.
 */
export function withRead(document: unknown, paths: readonly KeyPath[]): unknown {
  if (exampleOf(document) === null) return document;
  const read = paths.map(keyText);
  if (read.length === 0) return removeAt(document, [KEY, "read"]);
  const marks = marksOf(document);
  const stale = read.filter((key) => marks[key] === false);
  const told = stale.reduce((all, key) => removeAt(all, [KEY, "mine", key]), document);
  return setAt(told, [KEY, "read"], read);
}

/** Every field of a document that holds a number, a measure or points. */
function numberFields(document: unknown, at: KeyPath = []): readonly KeyPath[] {
  if (Array.isArray(document)) {
    if (!document.some((entry) => isObject(entry))) return document.length === 0 ? [] : [at];
    return document.flatMap((entry, i) => numberFields(entry, [...at, i]));
  }
  if (pairOf(document) !== null) return [at];
  if (isObject(document))
    return Object.entries(document).flatMap(([key, value]) =>
      isNoNumber(key) ? [] : numberFields(value, [...at, key]),
    );
  const isMeasure = typeof document === "string" && /\d/.test(document) && !isName(document);
  return typeof document === "number" || isMeasure ? [at] : [];
}

/** A document that began as an example, as it came: also what its variants say is the example's. */
export function asExample(document: unknown, name: string): unknown {
  const marked = setAt(document, [KEY], { of: name });
  const variants = valueAt(document, ["variants"]);
  if (!Array.isArray(variants)) return marked;
  return variants.reduce((all: unknown, variant, i) => {
    const mine = numberFields(valueAt(variant, ["patch"])).map((path) => [keyText(path), false]);
    return setAt(all, ["variants", i, "patch", KEY], { mine: Object.fromEntries(mine) });
  }, marked);
}

/** A document in which what stands at some places, and inside them, is the truck's own; the same one if it began as none. */
export function withMine(document: unknown, places: readonly KeyPath[]): unknown {
  const paths = places.filter(([block]) => !NOTHING_OF_IT.has(block));
  if (exampleOf(document) === null || paths.length === 0) return document;
  const kept = Object.entries(marksOf(document)).filter(
    ([key]) => !paths.some((path) => isWithin(parseKeyText(key) ?? [], path)),
  );
  const mine = {
    ...Object.fromEntries(kept),
    ...Object.fromEntries(paths.map((path) => [keyText(path), true])),
  };
  return setAt(document, [KEY, "mine"], mine);
}

/**
 * A document in which what stands at a place is an example's. Of one that began as none all else is the truck's own. What its
 * variants give there of their own stays so. @param name of the example, where the document began as none
 */
export function withExampleAt(document: unknown, path: KeyPath, name: string): unknown {
  const patches = (valueAt(document, ["variants"]) ?? []) as readonly { readonly patch?: object }[];
  const keys = [document, ...patches.map(({ patch }) => patch)].flatMap((one) => Object.keys(one ?? {}));
  const own = keys.filter((key) => !isNoNumber(key)).map((key) => [key, true]);
  const marks =
    exampleOf(document) !== null ? marksOf(document) : (Object.fromEntries(own) as Record<string, boolean>);
  const kept = Object.entries(marks).filter(([key]) => !isWithin(parseKeyText(key) ?? [], path));
  const of = exampleOf(document) ?? name;
  const said = valueAt(document, [KEY]);
  const marked = setAt(document, [KEY], {
    ...(isObject(said) ? said : {}),
    of,
    mine: { ...Object.fromEntries(kept), [keyText(path)]: false },
  });
  return patches.reduce((all: unknown, { patch }, i) => {
    const known = marksOf(patch);
    const stays = numberFields(patch).filter(
      (one) => isWithin(one, path) && isMine({ ...marks, ...known }, one, valueAt(patch, one)),
    );
    if (stays.length === 0) return all;
    const mine = { ...known, ...Object.fromEntries(stays.map((one) => [keyText(one), true])) };
    return setAt(all, ["variants", i, "patch", KEY, "mine"], mine);
  }, marked);
}

/** A document after a change of it: what differs is the truck's own. */
export function withChangesMine(before: unknown, after: unknown): unknown {
  if (exampleOf(after) === null || before === after) return after;
  return withMine(after, differing(before, after, []));
}

/** A document whose list has other positions now: what was said of its entries goes with them. @param moved null = gone */
export function withMarksMoved(
  document: unknown,
  list: KeyPath,
  moved: (index: number) => number | null,
): unknown {
  if (exampleOf(document) === null) return document;
  const entries = Object.entries(marksOf(document)).flatMap(([key, isOwn]): [string, boolean][] => {
    const path = parseKeyText(key);
    const index = path?.[list.length];
    if (!path || !isWithin(path, list) || typeof index !== "number") return [[key, isOwn]];
    const next = moved(index);
    return next === null ? [] : [[keyText([...list, next, ...path.slice(list.length + 1)]), isOwn]];
  });
  return setAt(document, [KEY, "mine"], Object.fromEntries(entries));
}

function marksOf(document: unknown): Marks {
  const mine = valueAt(document, [KEY, "mine"]);
  return isObject(mine) ? (mine as Marks) : {};
}

/** Places that readings tell, in the same form. */
function readMarks(document: unknown): Marks {
  const read = valueAt(document, [KEY, "read"]);
  return Array.isArray(read) ? Object.fromEntries(read.map((key) => [String(key), true])) : {};
}

function isMine(marks: Marks, path: KeyPath, value: unknown): boolean {
  // What is said of one coordinate is nearer than what is said of its point.
  const key = `${keyText(path)}[`;
  if (Array.isArray(value) && value.length > 0 && Object.keys(marks).some((one) => one.startsWith(key)))
    return value.every((entry, i) => isMine(marks, [...path, i], entry));
  for (let end = path.length; end > 0; end--) {
    const said = marks[keyText(path.slice(0, end))];
    if (said !== undefined) return said;
  }
  return false;
}

/** The deepest places at which a document differs from what it was, as it is now. */
function differing(before: unknown, after: unknown, at: KeyPath): readonly KeyPath[] {
  if (Object.is(before, after)) return [];
  const [was, is] = [pairOf(before), pairOf(after)];
  if (is !== null) return was?.value === is.value && was.within === is.within ? [] : [at];
  if (isObject(after) && isObject(before))
    return Object.keys(after).flatMap((key) =>
      isNoNumber(key) ? [] : differing(before[key], after[key], [...at, key]),
    );
  if (Array.isArray(after) && Array.isArray(before))
    return after.flatMap((entry, i) => differing(before[i], entry, [...at, i]));
  return at.length === 0 ? [] : [at];
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
