import { isSameJson } from "../../setup/editing/writtenValues.ts";
import { fieldLabel } from "../../setup/fields/fieldLabels.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";

/** What a step may have changed; `DocumentSlice` is one. */
export interface StepState {
  readonly documentId: string;
  readonly document: Readonly<Record<string, unknown>> | null;
  /** What was typed that no field can read, and where. */
  readonly drafts: Readonly<Record<string, { readonly path: KeyPath; readonly text: string }>>;
  readonly meshes: unknown;
}

interface Change {
  readonly path: KeyPath;
  /** undefined = it was not there. */
  readonly from: unknown;
  /** undefined = it is gone. */
  readonly to: unknown;
}

/** Where the setup notes which numbers are still an example's: it follows each edit by itself. */
const MARKS = "fromExample";

/** What a step did, in a few words without a full stop: `Hub-face distance 6 1/8 → 6`. */
export function stepWords(before: StepState, after: StepState): string {
  if (after.documentId !== before.documentId) return `Opened ${setupName(after.document)}`;
  const all = changesBetween(before.document, after.document, []);
  const changes = toldOf(all);
  if (changes.length === 1) return oneChange(changes[0]!, before.document, after.document);
  if (changes.length > 1) return manyChanges(changes, after.document);
  if (all.length > 0) return "Marked numbers as the truck's own";
  if (after.drafts !== before.drafts) return draftWords(before.drafts, after.drafts, after.document);
  return after.meshes !== before.meshes ? "Mesh file opened" : "No change in the setup";
}

function draftWords(
  before: StepState["drafts"],
  after: StepState["drafts"],
  document: StepState["document"],
): string {
  const typed = Object.entries(after).find(([key, draft]) => before[key] !== draft)?.[1];
  return typed === undefined
    ? "Took away what could not be read"
    : `${placeWords(typed.path, document)}: typed “${typed.text}”, which cannot be read`;
}

/**
 * What taking steps back did: `Hub-face distance, back to 6 1/8`; of more than one value what the steps had done.
 * @param left the state that was left; @param back the one that is back @param readingName of a reading, by its place in a document
 */
export function undoneWords(
  left: StepState,
  back: StepState,
  readingName: (document: unknown, at: number) => string,
): string {
  const changes = toldOf(changesBetween(left.document, back.document, []));
  const [change] = changes;
  const isOne = left.documentId === back.documentId && changes.length === 1;
  if (!isOne || change === undefined || [change.from, change.to].some((one) => typeof one === "object"))
    return stepWords(back, left);
  const { path, to } = change;
  const at = path[0] === "readings" ? path[1] : undefined;
  const document = to === undefined ? left.document : back.document;
  const where = typeof at === "number" ? readingName(document, at) : placeWords(path, document);
  return `${where}, ${to === undefined || to === "" ? "empty again" : `back to ${valueWords(to)}`}`;
}

/** What was done of all that changed: what readings put elsewhere follows them. */
function toldOf(all: readonly Change[]): readonly Change[] {
  const read = all.filter(({ path }) => path[0] === "readings");
  return read.length > 0 ? read : all.filter(({ path }) => path[0] !== MARKS);
}

function setupName(document: StepState["document"]): string {
  const name = document?.name;
  return typeof name === "string" && name !== "" ? name : "a setup without a name";
}

function changesBetween(from: unknown, to: unknown, path: KeyPath): readonly Change[] {
  if (from === to || isSameJson(from, to)) return [];
  if (Array.isArray(from) && Array.isArray(to) && from.length === to.length)
    return from.flatMap((one, i) => changesBetween(one, to[i], [...path, i]));
  if (!isObject(from) || !isObject(to)) return [{ path, from, to }];
  const keys = new Set([...Object.keys(from), ...Object.keys(to)]);
  return [...keys].flatMap((key) => changesBetween(from[key], to[key], [...path, key]));
}

function oneChange({ path, from, to }: Change, before: unknown, after: unknown): string {
  const where = placeWords(path, after);
  if (Array.isArray(from) || Array.isArray(to)) {
    const [old, now] = [listed(from), listed(to)];
    const gone = old.filter((one) => !now.some((other) => isSameJson(one, other)));
    const come = now.filter((one) => !old.some((other) => isSameJson(one, other)));
    const named = (item: unknown, list: readonly unknown[]) =>
      itemName(item, list.indexOf(item), fieldLabel([...path.map(keyWord), "*"], ""));
    if (come.length === 1 && gone.length === 0) return `${where}: ${named(come[0], now)} added`;
    if (gone.length === 1 && come.length === 0) return `${where}: ${named(gone[0], old)} removed`;
    return `${where}: ${old.length} before, ${now.length} now`;
  }
  if (to === undefined) return `${placeWords(path, before)} left out`;
  if (isObject(from) || isObject(to)) return from === undefined ? `${where} added` : `${where} changed`;
  return from === undefined
    ? `${where} set to ${valueWords(to)}`
    : `${where} ${valueWords(from)} → ${valueWords(to)}`;
}

/** Several changes as one: by what they have in common. */
function manyChanges(changes: readonly Change[], after: unknown): string {
  const first = changes[0]!.path;
  let shared = first.length - 1;
  for (const { path } of changes) while (shared > 0 && !isStart(first.slice(0, shared), path)) shared -= 1;
  const given = givenOtherwise(changes);
  if (given !== "") return `${placeWords(first.slice(0, -1), after)} given by ${given}`;
  const many = `${changes.length} values`;
  return shared === 0 ? many : `${placeWords(first.slice(0, shared), after)}: ${many}`;
}

/** What a thing is given by now, in place of what it was given by: `tire diameter and section width`; "" where that is not what was done. */
function givenOtherwise(changes: readonly Change[]): string {
  const block = changes[0]!.path.slice(0, -1);
  const come = changes.filter(({ from }) => from === undefined);
  const gone = changes.filter(({ to }) => to === undefined);
  const isInBlock = changes.every(({ path }) => path.length === block.length + 1 && isStart(block, path));
  if (!isInBlock || come.length === 0 || gone.length === 0 || come.length + gone.length < changes.length)
    return "";
  return come.map(({ path }) => uncapitalized(fieldLabel(path.map(keyWord), ""), true)).join(" and ");
}

function isStart(start: KeyPath, path: KeyPath): boolean {
  return start.every((step, i) => path[i] === step);
}

/** Where a path leads, as the form calls it: `front lip, point 4, z`. */
function placeWords(path: KeyPath, document: unknown): string {
  const isPoint = isCoordinate(path, document);
  const items = path.flatMap((step, i): string[] => {
    if (typeof step !== "number" || (i === path.length - 1 && isPoint)) return [];
    const to = path.slice(0, i + 1);
    return [itemName(valueAt(document, to), step, fieldLabel(to.map(keyWord), ""))];
  });
  const end = path.at(-1);
  if (typeof end === "string")
    return [...items, uncapitalized(fieldLabel(path.map(keyWord), ""), items.length > 0)].join(", ");
  if (!isPoint) return items.join(", ");
  const axis = "xyz"[end!];
  const point = path.slice(0, -1);
  if (typeof point.at(-1) === "number") return [...items, axis].join(", ");
  return [...items, `${uncapitalized(fieldLabel(point.map(keyWord), ""), items.length > 0)} ${axis}`].join(
    ", ",
  );
}

function uncapitalized(label: string, isInside: boolean): string {
  return isInside ? label.charAt(0).toLowerCase() + label.slice(1) : label;
}

/** Whether a path ends at one of the three numbers of a point. */
function isCoordinate(path: KeyPath, document: unknown): boolean {
  const list = valueAt(document, path.slice(0, -1));
  return Array.isArray(list) && list.length === 3 && !list.some(isObject);
}

function keyWord(step: string | number): string {
  return typeof step === "number" ? "*" : step;
}

/** @param label what an entry of its list is called */
function itemName(item: unknown, at: number, label: string): string {
  const name = isObject(item) ? item.name : undefined;
  return typeof name === "string" && name !== "" ? name : `${uncapitalized(label, true)} ${at + 1}`;
}

function valueWords(value: unknown): string {
  if (isObject(value) || Array.isArray(value)) return "…";
  return value === "" ? "nothing" : String(value);
}

function listed(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
