import { isSameJson } from "../editing/writtenValues.ts";
import { exampleFields } from "../exampleMarks.ts";
import { isWithin, type KeyPath, valueAt } from "../types/keyPath.ts";
import { type ReadingAsk, SHORT_LINES, WORKSHEET_LINES, type WorksheetLine } from "./worksheetLines.ts";

/** A line of the worksheet as a document has it. */
export interface LineState {
  /** null = the reading is none of the list's: somebody added it to the file. */
  readonly line: WorksheetLine | null;
  /** What is read; null = a field of the setup is filled, or it is of several numbers. */
  readonly ask: ReadingAsk | null;
  /** A reading of several numbers: a lip along a level stick, a plumb bob and its mark; null = of one. */
  readonly gauge: Gauge | null;
  /** Where the number stands: in `readings`, or the field itself; the reading itself where it has several. */
  readonly path: KeyPath;
  readonly isRead: boolean;
  /** How often the same was asked for before it on the sheet; 0 = this is the first. */
  readonly again: number;
}

export type Gauge = "stick" | "plumb";

/** How far a worksheet is. */
export interface Progress {
  /** Lines that are read, each counted once however often it was. */
  readonly read: number;
  /** Lines that a first verdict needs. */
  readonly needed: number;
  /** How many more until there is one; 0 = there are enough. */
  readonly missing: number;
  /** Those of them that no others can stand for, by their keys. */
  readonly musts: readonly string[];
  /** Lines of the worksheet in all. */
  readonly listed: number;
}

/** Keys of a reading that say what is read. */
const ASKS = ["between", "height", "offset", "from", "ahead", "angle", "size", "side"] as const;

/** What a reading of the file is of; null for one that is no single number, or none at all. */
export function askOf(reading: unknown): ReadingAsk | null {
  const entries = ASKS.flatMap((key): [string, unknown][] => {
    const value = valueAt(reading, [key]);
    const isDefault = (key === "side" && value === "left") || (key === "from" && value === "centerline");
    return value === undefined || isDefault ? [] : [[key, value]];
  });
  const isOne = ["between", "height", "offset", "ahead", "angle", "size"].some((key) =>
    entries.some(([one]) => one === key),
  );
  return isOne ? (Object.fromEntries(entries) as unknown as ReadingAsk) : null;
}

/** The worksheet of a document, in the order of going round a truck; what is read once more follows its first reading. */
export function worksheetOf(document: unknown): readonly LineState[] {
  const list = valueAt(document, ["readings"]);
  const readings: readonly unknown[] = Array.isArray(list) ? list : [];
  const asked = readings.map(askOf);
  const notMine = exampleFields(document);
  const left = new Set(asked.keys());
  const states: LineState[] = [];
  const take = (ask: ReadingAsk, line: WorksheetLine | null) => {
    let again = 0;
    for (const index of left) {
      if (!isSameJson(asked[index], ask)) continue;
      left.delete(index);
      const isRead = !isEmpty(valueAt(readings[index], ["is"]));
      states.push({ line, ask, gauge: null, path: ["readings", index, "is"], isRead, again });
      again += 1;
    }
  };
  const takeGauge = (wanted: Gauge) =>
    readings.forEach((reading, index) => {
      if (gaugeOf(reading) !== wanted) return;
      const isRead = wanted === "stick" ? isStickRead(reading) : true;
      states.push({ line: null, ask: null, gauge: wanted, path: ["readings", index], isRead, again: 0 });
    });
  const isFull = hasFullList(asked);
  for (const line of WORKSHEET_LINES) {
    if ("reading" in line.asks) take(line.asks.reading, line);
    else if (line.isShort || isFull) states.push(fieldState(document, line, line.asks.field, notMine));
  }
  takeGauge("stick");
  takeGauge("plumb");
  for (const index of [...left]) {
    const ask = asked[index];
    if (ask && left.has(index)) take(ask, null);
  }
  return states;
}

function gaugeOf(reading: unknown): Gauge | null {
  if (Array.isArray(valueAt(reading, ["stations"]))) return "stick";
  return valueAt(reading, ["plumb"]) === undefined ? null : "plumb";
}

/** Whether a stick has its place and at least one station is read along it. */
function isStickRead(reading: unknown): boolean {
  const stations = valueAt(reading, ["stations"]) as readonly unknown[];
  const isWhole = (one: unknown) => Array.isArray(one) && one.length === 3 && !one.some(isEmpty);
  return (
    !["offset", "height"].some((key) => isEmpty(valueAt(reading, ["stick", key]))) && stations.some(isWhole)
  );
}

/** Whether a document's worksheet is more than the shortest list. */
function hasFullList(asked: readonly (ReadingAsk | null)[]): boolean {
  return WORKSHEET_LINES.some(
    ({ isShort, asks }) =>
      !isShort && "reading" in asks && asked.some((ask) => isSameJson(ask, asks.reading)),
  );
}

function fieldState(
  document: unknown,
  line: WorksheetLine,
  path: KeyPath,
  notMine: readonly KeyPath[],
): LineState {
  const isOwn = !notMine.some((field) => isWithin(field, path) || isWithin(path, field));
  return { line, ask: null, gauge: null, path, isRead: isOwn && !isEmpty(valueAt(document, path)), again: 0 };
}

function isEmpty(value: unknown): boolean {
  return value === undefined || value === null || value === "";
}

/** How far the worksheet of a document is on the way to a first verdict. */
export function progressOf(document: unknown): Progress {
  const states = worksheetOf(document);
  const taken = states.filter(({ isRead }) => isRead);
  const read = new Set(taken.map(keyOf));
  const isRead = (size: string) =>
    taken.some(({ ask }) => ask !== null && "size" in ask && ask.size === size);
  const list = valueAt(document, ["readings"]);
  // Read at stations along a stick, the lip is told by one reading.
  const hasStations = Array.isArray(list) && list.some((one) => gaugeOf(one) === "stick" && isStickRead(one));
  const musts = WORKSHEET_LINES.filter(
    ({ isMust, key, insteadBy }) =>
      isMust && !read.has(key) && !insteadBy.some(isRead) && !(hasStations && key.startsWith("lip")),
  ).map(({ key }) => key);
  const needed = SHORT_LINES.length;
  const listed = new Set(states.map(keyOf)).size;
  return { read: read.size, needed, missing: Math.max(needed - read.size, musts.length, 0), musts, listed };
}

/** Names what a line reads: its readings of the same thing share it. */
function keyOf({ line, ask, path }: LineState): string {
  return line?.key ?? JSON.stringify(ask ?? path);
}

/** The readings that a worksheet asks for and a document does not have yet, empty, as the file holds them. */
export function readingsToAdd(document: unknown, isFull: boolean): readonly ReadingAsk[] {
  const list = valueAt(document, ["readings"]);
  const asked = Array.isArray(list) ? list.map(askOf) : [];
  return WORKSHEET_LINES.flatMap(({ isShort, asks }) => {
    if (!("reading" in asks) || !(isShort || isFull)) return [];
    return asked.some((ask) => isSameJson(ask, asks.reading)) ? [] : [asks.reading];
  });
}
