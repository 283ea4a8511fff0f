import { lengthAt } from "../../setup/reading/typedPair.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { ReadingSize } from "../../setup/types/readingTypes.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { RIM_FLANGE_WIDTH } from "../../units/wheelOffset.ts";
import type { MeasuredTruck } from "./measured.ts";
import { tireFromCalipers } from "./tireFromCalipers.ts";

/** What a size tells, by its place in the setup: a length, or rows of them, mm. */
export interface SizeValue {
  readonly path: KeyPath;
  readonly value: number | readonly (readonly [number, number])[];
  /** Places that do not go with it. */
  readonly removes: readonly KeyPath[];
}

/** What the sizes say of truck, wheel and tire. @param document as it is so far */
export function sizeValues(
  { sizes }: MeasuredTruck,
  document: unknown,
  units: LengthUnit,
): readonly SizeValue[] {
  const read = new Map<ReadingSize, number>(sizes.map(({ size, at }) => [size, at]));
  const found: SizeValue[] = [];
  const length = (path: KeyPath, value: number, removes: readonly KeyPath[] = []) =>
    found.push({ path, value, removes });
  const wheelbase = read.get("wheelbase");
  if (wheelbase !== undefined) length(["truck", "wheelbase"], wheelbase);

  const rim = lengthAt(document, ["wheel", "rimWidth"], units);
  const wheel = wheelFromStraightedge(
    read.get("wheel.backspacing") ?? null,
    read.get("wheel.lipToLip") ?? null,
  );
  if (wheel.rimWidth !== null) length(["wheel", "rimWidth"], wheel.rimWidth);
  if (wheel.backspacing !== null) length(["wheel", "backspacing"], wheel.backspacing, [["wheel", "offset"]]);

  const diameter = read.get("tire.diameter");
  if (diameter !== undefined)
    found.push(...tireValues(diameter, read, document, units, wheel.rimWidth ?? rim));
  return found;
}

function tireValues(
  diameter: number,
  read: ReadonlyMap<ReadingSize, number>,
  document: unknown,
  units: LengthUnit,
  rimWidth: number | null,
): readonly SizeValue[] {
  const section = read.get("tire.sectionWidth");
  const drop = read.get("tire.shoulderDrop");
  const isSized =
    typeof valueAt(document, ["tire", "size"]) === "string" && valueAt(document, ["tire", "size"]) !== "";
  const one = (key: string, value: number): SizeValue => ({
    path: ["tire", key],
    value,
    removes: [
      ["tire", "size"],
      ["tire", "profile"],
    ],
  });
  // A size on the sidewall tells more than a diameter alone.
  if (section === undefined) return isSized ? [] : [one("diameter", diameter)];
  const tread = read.get("tire.treadWidth");
  const rimDiameter = lengthAt(document, ["wheel", "rimDiameter"], units);
  const whole = { diameter, sectionWidth: section, treadWidth: tread ?? null, shoulderDrop: drop ?? 0 };
  const made =
    drop === undefined || rimDiameter === null || rimWidth === null
      ? null
      : tireFromCalipers(whole, { rimDiameter, rimWidth });
  if (made?.ok)
    return [
      {
        path: ["tire", "profile"],
        value: made.profile,
        removes: ["size", "diameter", "sectionWidth", "treadWidth"].map((key) => ["tire", key]),
      },
    ];
  return [
    one("diameter", diameter),
    one("sectionWidth", section),
    ...(tread === undefined || tread > section ? [] : [one("treadWidth", tread)]),
  ];
}

/** A wheel by straightedge, mm; null = not read. */
export interface StraightedgeWheel {
  /** Between the flanges, where the beads sit. */
  readonly rimWidth: number | null;
  /** Mounting face to inboard rim edge. */
  readonly backspacing: number | null;
}

/**
 * The wheel from a straightedge over its inboard lip (mounting face to straightedge: the backspacing) and over both lips.
 * The beads sit inside the lips by a flange on each side. @param lipToLip outside to outside
 */
export function wheelFromStraightedge(
  backspacing: number | null,
  lipToLip: number | null,
): StraightedgeWheel {
  const rimWidth = lipToLip === null ? null : lipToLip - 2 * RIM_FLANGE_WIDTH;
  return { rimWidth: rimWidth !== null && rimWidth > 0 ? rimWidth : null, backspacing };
}
