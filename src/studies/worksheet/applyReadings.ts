import { bodyPointOf, TRUCK_POINTS } from "../../setup/blocks/readings/readingPoint.ts";
import {
  asExample,
  exampleFields,
  exampleOf,
  isRead,
  withExampleAt,
  withMine,
} from "../../setup/exampleMarks.ts";
import { pathOfPoint } from "../../setup/givenPoints.ts";
import { setAt } from "../../setup/reading/setAt.ts";
import { isWithin, type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { ASSUMED_LAYOUT, isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { tapeText } from "../../units/plainLengthText.ts";
import { ASSUMED_SIZES } from "../measure/assumedTruck.ts";
import type { Measured, MeasuredPoint, Standing } from "../measure/measured.ts";
import { sizeValues } from "../measure/sizeValues.ts";
import { ASSUMED, ownTruckDocument } from "./ownTruck.ts";
import { RIGHT_INNER_END, withMeasured, withReadings } from "./withReadings.ts";

/**
 * A copy of a setup document in which points, wheel and tire are as measured; the same document where nothing differs. What is
 * still empty is filled from the assumed layout and marked as its numbers (`fromExample`), so that no answer is drawn green for
 * them: from then on the document is a worksheet as the page begins one, whose numbers follow its readings while what its
 * owner typed stays (`withReadings`). What a setup says of its own stays unless readings tell it. Take the copy of a
 * document with its variant applied to a variant with `editShown`.
 */
export function applyReadings(document: unknown, measured: Measured, units: LengthUnit): unknown {
  if (isOnAssumedLayout(document)) return withReadings(document);
  const points = measured.points.filter(({ side }) => side === "left");
  const { whole, filled } = onLayout(document, points, units);
  const sizes = sizeValues(measured, document, units).flatMap(({ path, removes }) => [path, ...removes]);
  const toldBy = (...standings: readonly Standing[]) => [
    ...sizes,
    ...points.flatMap((point) => axesOf(whole, point, standings)),
  ];
  const isRightRead = measured.points.some(
    ({ point, side }) => point === "steering.innerEnd" && side === "right",
  );
  const open = [...filled, ...toldBy("measured", "partly"), ...(isRightRead ? [RIGHT_INNER_END] : [])];
  const told = withMeasured(whole, measured, units, (path) => !open.some((one) => isWithin(path, one)));
  if (filled.length === 0) return told;
  if (exampleOf(document) !== null)
    return filled
      .filter((path) => !isRead(told, path))
      .reduce((all: unknown, path) => withExampleAt(all, path, ASSUMED_LAYOUT), told);
  // Readings that tell a number only in part leave it the owner's.
  return withReadings(withMine(asExample(told, ASSUMED_LAYOUT), ownPlaces(document, toldBy("measured"))));
}

/** Places of a point's coordinates that stand so. */
function axesOf(
  document: unknown,
  { point, standing }: MeasuredPoint,
  standings: readonly Standing[],
): readonly KeyPath[] {
  const path = pathOfPoint(point, document);
  if (path === null) return [];
  return standing.flatMap((one, axis) => (standings.includes(one) ? [[...path, axis]] : []));
}

/** Where a document has numbers that no reading tells; its readings are its own as a whole. */
function ownPlaces(document: unknown, told: readonly KeyPath[]): readonly KeyPath[] {
  const ownIn = (path: KeyPath): readonly KeyPath[] => {
    const value = valueAt(document, path);
    if (isOpen(value) || told.some((one) => isWithin(path, one))) return [];
    const isInPart = Array.isArray(value) && (hasOpen(value) || told.some((one) => isWithin(one, path)));
    return isInPart ? value.flatMap((_, i) => ownIn([...path, i])) : [path];
  };
  const fields = exampleFields(asExample(document, ASSUMED_LAYOUT)).filter(([block]) => block !== "readings");
  return [["readings"], ...fields.flatMap(ownIn)];
}

function isOpen(value: unknown): boolean {
  return value === undefined || value === "";
}

function hasOpen(value: unknown): boolean {
  return isOpen(value) || (Array.isArray(value) && value.some(hasOpen));
}

/** A document with the assumed layout in what is still empty of it, and where that is. */
function onLayout(
  document: unknown,
  points: readonly MeasuredPoint[],
  units: LengthUnit,
): { readonly whole: unknown; readonly filled: readonly KeyPath[] } {
  const type = valueAt(document, ["truck", "steering", "type"]) === "pitman" ? "pitman" : "rack";
  const layout = ownTruckDocument({ units, steering: type, isFull: false });
  const filled: KeyPath[] = [];
  let whole = document;
  const write = (path: KeyPath, value: unknown) => {
    whole = setAt(whole, path, value);
    filled.push(path);
  };
  const fill = (path: KeyPath, assumed: unknown = valueAt(layout, path)): void => {
    const here = valueAt(whole, path);
    if (Array.isArray(here) && Array.isArray(assumed)) here.map((_, i) => fill([...path, i], assumed[i]));
    else if (typeof assumed === "object" && assumed !== null && !Array.isArray(assumed))
      for (const [key, inner] of Object.entries(assumed)) fill([...path, key], inner);
    else if (isOpen(here) && assumed !== undefined) write(path, assumed);
  };
  for (const key of ["upperArm", "lowerArm", "steering"]) fill(["truck", key]);
  for (const key of ["knuckle", "travel"]) fill([key]);
  for (const key of ["rimDiameter", "rimWidth"]) fill(["wheel", key]);
  // What has no place in a setup of another kind stays out.
  const has = (...path: KeyPath) => !hasOpen(valueAt(document, path));
  if (!has("wheel", "offset")) fill(["wheel", "backspacing"]);
  if (has("tire", "diameter"))
    fill(["tire", "sectionWidth"], tapeText(ASSUMED_SIZES["tire.sectionWidth"], units));
  else if (!has("tire", "profile")) fill(["tire", "size"]);

  const isAssumed = ({ standing }: MeasuredPoint) => standing.every((one) => one === "assumed");
  const onBody = points.filter(({ point }) => bodyPointOf(point) !== null);
  const isNew = points.some((one) => TRUCK_POINTS.some((name) => name === one.point) && isAssumed(one));
  // A truck that is its owner's own and says nothing of a body has none.
  if (isNew || !onBody.every(isAssumed))
    for (const { point, at } of onBody) {
      const { part, key, at: place } = bodyPointOf(point)!;
      if (place === null || key !== "points") continue;
      const body = (valueAt(whole, ["truck", "body"]) ?? []) as readonly unknown[];
      const index = Number(pathOfPoint(point, whole)?.[2] ?? body.length);
      if (index === body.length) {
        const radius = tapeText(ASSUMED.lipRadius, units);
        whole = setAt(whole, ["truck", "body"], [...body, { name: part, kind: "path", radius, points: [] }]);
        filled.push(["truck", "body", index]);
      }
      const list = ["truck", "body", index, "points"] as const;
      const there = valueAt(whole, list);
      if (!Array.isArray(there) || there.length > place) continue;
      // As long as the farthest point asks for; each gets its own place as its reading is put in.
      const more = Array.from({ length: place + 1 - there.length }, () =>
        at.map((mm) => tapeText(mm, units)),
      );
      whole = setAt(whole, list, [...there, ...more]);
      filled.push(...more.map((_, i) => [...list, there.length + i]));
    }
  return { whole, filled };
}
