import { parseAngle } from "../../../units/angle.ts";
import { formatLength } from "../../../units/formatLength.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { splitWithin } from "../../../units/withinText.ts";

import type { BlockReading } from "../../reading/blockReading.ts";
import {
  LEAST_WITHIN,
  LEAST_WITHIN_ANGLE,
  MAX_ALL_STATIONS,
  MAX_READ,
  MAX_READ_POINTS,
} from "../../reading/limits.ts";
import { DEFAULT_READING_WITHIN } from "../../types/readingDefaults.ts";
import {
  type PointName,
  READING_KINDS,
  type Reading,
  type ReadingKind,
  type ReadingSide,
  type Station,
} from "../../types/readingTypes.ts";
import { refuseImpossible } from "./impossible.ts";
import { isMark, readPoint } from "./readingPoint.ts";
import type { ReadingAsTyped, ReadingsAsTyped } from "./readings.ts";

/**
 * The sound readings in mm and radians, each with its place in the list; those not read yet or left out on trial are passed
 * over. What does not read is an issue of `reading`. What reads and no truck can have, alone or with the others, is one of
 * `impossible`: it is left out, and the others stand. More than one reading of the same is welcome.
 * @param bodyNames names of the body parts the setup has
 */
export function resolveReadings(
  typed: ReadingsAsTyped,
  bodyNames: readonly string[],
  reading: BlockReading,
  impossible: BlockReading,
): readonly Reading[] {
  const readings = typed.flatMap((one, index) => {
    if (!reading.isSound(index)) return [];
    const inside = reading.inside(index);
    const read = resolveReading(one, index, bodyNames, inside, impossible.inside(index));
    return read !== null && inside.isSound() && isTaken(one, read) ? [read] : [];
  });
  refuseTooMany(readings, typed, reading);
  const possible = readings.filter(({ index }) => reading.isSound(index) && impossible.isSound(index));
  for (const { reading: wrong, mend } of refuseImpossible(possible, (mm) =>
    formatLength(mm, { units: reading.units }),
  ))
    impossible.issue([wrong.index, "is"], typed[wrong.index]!.is, mend);
  return possible.filter(({ index }) => impossible.isSound(index));
}

/** Whether anything is to be made of a reading: it is read, and not left out on trial. */
function isTaken(typed: ReadingAsTyped, read: Reading): boolean {
  if (typed.leftOut === true) return false;
  if (read.kind === "stations")
    return typed.stick?.offset !== "" && typed.stick?.height !== "" && read.stations.some(Boolean);
  return !("is" in read) || typed.is !== undefined;
}

/** Adds an issue for the first reading that goes to one point too many. */
function refuseTooMany(readings: readonly Reading[], typed: ReadingsAsTyped, reading: BlockReading): void {
  const points = new Set<PointName>();
  let stations = 0;
  for (const one of readings) {
    if (one.kind === "stations") stations += one.stations.length;
    if (one.kind === "between") for (const point of one.points) points.add(point);
    else if ("point" in one) points.add(one.point);
    if (one.kind === "plumb") points.add(one.mark);
    const isTooMany = points.size > MAX_READ_POINTS || stations > MAX_ALL_STATIONS;
    if (!isTooMany) continue;
    const mend =
      stations > MAX_ALL_STATIONS
        ? `makes more than ${MAX_ALL_STATIONS} stations in all; leave some out`
        : `is one of more than ${MAX_READ_POINTS} different points and marks; a truck needs two dozen`;
    reading.issue([one.index], typed[one.index], mend);
    return;
  }
}

function resolveReading(
  asTyped: ReadingAsTyped,
  index: number,
  bodyNames: readonly string[],
  reading: BlockReading,
  impossible: BlockReading,
): Reading | null {
  const kinds = READING_KINDS.filter((key) => asTyped[key] !== undefined);
  const [kind, second] = kinds;
  if (kind === undefined || second !== undefined) {
    const mend = kind
      ? `a reading is of one thing; remove ${kinds.slice(1).join(" and ")}`
      : `required: what was read, one of ${READING_KINDS.join(", ")}`;
    reading.issue(kind === undefined ? [] : [second!], kind === undefined ? asTyped : asTyped[second!], mend);
    return null;
  }
  const typed = withinApart(asTyped, reading);
  refuseStrayKeys(typed, kind, reading);
  const side = sideOf(typed, kind, reading);
  const within = withinOf(typed, kind, reading);
  const base = { index, side, within };
  const point = (text: string, ...path: (string | number)[]): PointName => {
    const read = readPoint(text, bodyNames);
    if (!read.ok) reading.issue(path, text, read.mend);
    return read.ok ? read.name : "";
  };
  switch (kind) {
    case "between": {
      const [a, b] = typed.between!;
      const points = [point(a, kind, 0), point(b, kind, 1)] as const;
      if (points[0] !== "" && points[0] === points[1] && side !== "across")
        reading.issue(
          [kind, 1],
          b,
          'is the same point; name two, or give "side": "across" for left to right',
        );
      return { ...base, kind, points, is: readLength(typed, "positive", reading, impossible) };
    }
    case "height":
    case "offset":
    case "ahead": {
      const from = typed.from ?? "centerline";
      const sign = kind === "height" ? "notNegative" : "any";
      return {
        ...base,
        kind,
        point: point(typed[kind]!, kind),
        from,
        is: readLength(typed, sign, reading, impossible),
      };
    }
    case "angle":
      return { ...base, kind, arm: typed.angle!, is: readAngle(typed, reading, impossible) };
    case "size":
      return { ...base, kind, of: typed.size!, is: readLength(typed, "positive", reading, impossible) };
    case "plumb": {
      const mark = typed.mark === undefined ? "" : point(typed.mark, "mark");
      if (typed.mark === undefined)
        reading.issue(["mark"], undefined, "required: a name for the mark on the floor, such as A");
      else if (mark !== "" && !isMark(mark))
        reading.issue(
          ["mark"],
          typed.mark,
          "is a point of the truck; call the mark on the floor something else",
        );
      return { ...base, kind, point: point(typed.plumb!, kind), mark };
    }
    case "stations":
      return { ...base, kind, ...resolveStations(typed, reading) };
  }
}

/** A reading whose `is` tells its uncertainty too (`8 1/2 ± 1/16`), the two apart. */
function withinApart(typed: ReadingAsTyped, reading: BlockReading): ReadingAsTyped {
  const split = typeof typed.is === "string" ? splitWithin(typed.is) : null;
  if (split === null) return typed;
  if (!split.ok) {
    reading.issue(["is"], typed.is, split.mend);
    return { ...typed, is: split.value };
  }
  if (typed.within !== undefined)
    reading.issue(["within"], typed.within, "stands after the ± already; remove one of them");
  return { ...typed, is: split.value, within: split.within };
}

function resolveStations(typed: ReadingAsTyped, reading: BlockReading) {
  const { stick, stations } = typed;
  if (stick === undefined)
    reading.issue(
      ["stick"],
      undefined,
      'required: where the stick lies, such as { "offset": 38, "height": 20 }',
    );
  if (stations!.length === 0) reading.issue(["stations"], stations, "must have at least one station");
  return {
    part: typed.part ?? "fender lip",
    stick: {
      offset: stick && stick.offset !== "" ? reading.length(stick.offset, "stick", "offset") : 0,
      height: stick && stick.height !== "" ? reading.length(stick.height, "stick", "height") : 0,
    },
    stations: stations!.map((one, i): Station | null =>
      one.includes("") ? null : reading.point(one, "stations", i),
    ),
  };
}

/** Keys that go with some kinds alone. */
const GOES_WITH: readonly (readonly [keyof ReadingAsTyped, readonly ReadingKind[]])[] = [
  ["from", ["offset"]],
  ["mark", ["plumb"]],
  ["part", ["stations"]],
  ["stick", ["stations"]],
  ["is", ["between", "height", "offset", "ahead", "angle", "size"]],
];

function refuseStrayKeys(typed: ReadingAsTyped, kind: ReadingKind, reading: BlockReading): void {
  for (const [key, kinds] of GOES_WITH)
    if (typed[key] !== undefined && !kinds.includes(kind))
      reading.issue([key], typed[key], `goes with ${kinds.join(", ")}; remove it`);
}

function sideOf({ side = "left" }: ReadingAsTyped, kind: ReadingKind, reading: BlockReading): ReadingSide {
  if (side === "across" && kind !== "between")
    reading.issue(["side"], side, 'goes with between alone; write "left" or "right"');
  return side;
}

function withinOf(typed: ReadingAsTyped, kind: ReadingKind, reading: BlockReading): number {
  if (typed.within === undefined)
    return kind === "size" ? DEFAULT_READING_WITHIN.size[typed.size!] : DEFAULT_READING_WITHIN[kind];
  const isAngle = kind === "angle";
  const read = isAngle ? parseAngle(typed.within) : parseLength(typed.within, reading.units);
  if (!read.ok) {
    reading.issue(["within"], typed.within, read.mend);
    return 1;
  }
  const value = "mm" in read ? read.mm : read.rad;
  if (!(value > 0)) reading.issue(["within"], typed.within, "must be more than 0");
  else if (value < (isAngle ? LEAST_WITHIN_ANGLE : LEAST_WITHIN))
    reading.issue(
      ["within"],
      typed.within,
      "is finer than anything a shop reads; give one standard deviation",
    );
  else if (value > (isAngle ? 1 : MAX_READ))
    reading.issue(["within"], typed.within, "says nothing any more; check the number and its unit");
  return value;
}

function readLength(
  typed: ReadingAsTyped,
  sign: "any" | "positive" | "notNegative",
  reading: BlockReading,
  impossible: BlockReading,
): number {
  if (typed.is === undefined) return 0;
  const read = parseLength(typed.is, reading.units);
  if (!read.ok) {
    reading.issue(["is"], typed.is, read.mend);
    return 0;
  }
  if (sign === "positive" && !(read.mm > 0)) impossible.issue(["is"], typed.is, "must be more than 0");
  else if (sign === "notNegative" && read.mm < 0)
    impossible.issue(
      ["is"],
      typed.is,
      "must be 0 or more: nothing of a truck is under the floor it stands on",
    );
  else if (Math.abs(read.mm) > MAX_READ)
    impossible.issue(["is"], typed.is, "is more than any truck has (10 m); check the number and its unit");
  return read.mm;
}

function readAngle(typed: ReadingAsTyped, reading: BlockReading, impossible: BlockReading): number {
  if (typed.is === undefined) return 0;
  const read = parseAngle(typed.is);
  if (!read.ok) reading.issue(["is"], typed.is, read.mend);
  else if (Math.abs(read.rad) >= Math.PI / 3)
    impossible.issue(
      ["is"],
      typed.is,
      "must be more than -60 and less than 60 degrees: no arm stands steeper",
    );
  return read.ok ? read.rad : 0;
}
