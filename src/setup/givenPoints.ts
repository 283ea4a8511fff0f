import { parseLength } from "../units/parseLength.ts";
import { bodyNamesOf, bodyPointOf, isMark, TRUCK_POINTS } from "./blocks/readings/readingPoint.ts";
import { exampleFields } from "./exampleMarks.ts";
import { IssueList } from "./reading/issueList.ts";
import { MAX_LENGTH } from "./reading/limits.ts";
import { takeWithin } from "./takeWithin.ts";
import { isWithin, type KeyPath, valueAt } from "./types/keyPath.ts";
import { KnownParts } from "./types/knownParts.ts";
import { type PointName, WHEEL_POINTS } from "./types/readingTypes.ts";
import type { Point } from "./types/truckTypes.ts";
import type { LengthUnit } from "./types/types.ts";

/** Where a point that readings name stands in a document; null = nowhere, or in a body part that is not there yet. */
export function pathOfPoint(name: PointName, document: unknown): KeyPath | null {
  const part = bodyPointOf(name);
  if (part === null)
    return isMark(name) || WHEEL_POINTS.some((one) => one === name) ? null : ["truck", ...name.split(".")];
  const index = bodyNamesOf(document).indexOf(part.part);
  if (index < 0) return null;
  return ["truck", "body", index, part.key, ...(part.at === null ? [] : [part.at])];
}

/**
 * The points of the truck that a document gives, mm, by the names readings use; what is empty, wrong or still an example's
 * is left out. Whatever else is wrong in the document.
 * @param names body points and others to look for besides the places of the truck
 */
export function givenPoints(
  document: unknown,
  units: LengthUnit,
  names: readonly PointName[],
): ReadonlyMap<PointName, Point> {
  const notMine = exampleFields(document);
  const plain = takeWithin(document, new IssueList(""), new KnownParts()).document;
  const given = new Map<PointName, Point>();
  for (const name of new Set<PointName>([...TRUCK_POINTS, ...names])) {
    const path = pathOfPoint(name, document);
    if (path === null || notMine.some((field) => isWithin(path, field) || isWithin(field, path))) continue;
    const point = pointOf(valueAt(plain, path), units);
    if (point !== null) given.set(name, point);
  }
  return given;
}

function pointOf(typed: unknown, units: LengthUnit): Point | null {
  if (!Array.isArray(typed) || typed.length !== 3) return null;
  const lengths = typed.flatMap((one: unknown) => {
    const read = typeof one === "number" || typeof one === "string" ? parseLength(one, units) : null;
    return read?.ok && Math.abs(read.mm) <= MAX_LENGTH ? [read.mm] : [];
  });
  const [x, y, z] = lengths;
  return x === undefined || y === undefined || z === undefined ? null : [x, y, z];
}
