import type { Vec3 } from "../../geometry/vec.ts";
import { lengthAt } from "../../setup/reading/typedPair.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { PointName, ReadingSize } from "../../setup/types/readingTypes.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { parseAngle } from "../../units/angle.ts";
import { offsetFromBackspacing, RIM_FLANGE_WIDTH } from "../../units/wheelOffset.ts";
import { ASSUMED_SIZES } from "./assumedTruck.ts";
import { inKnuckle, knuckleFrom } from "./knuckleFrom.ts";
import type { Measured, Standing } from "./measured.ts";
import { tireFromCalipers } from "./tireFromCalipers.ts";

/** A value that readings tell besides the points, by its place in the setup. mm, radians of an angle. */
export interface FoundValue {
  readonly path: KeyPath;
  readonly value: number | Vec3 | readonly (readonly [number, number])[];
  readonly kind: "length" | "angle" | "lengths";
  /** Readings tell it; false = it goes by something that is assumed. */
  readonly isMeasured: boolean;
  /** Only where the setup has nothing of its own there. */
  readonly onlyIfOpen: boolean;
  /** Places that do not go with it. */
  readonly removes?: readonly KeyPath[];
}

/** A value that sizes tell: a length, or rows of them. */
export type SizeValue = FoundValue & { readonly value: number | readonly (readonly [number, number])[] };

/** What the sizes say of truck, wheel and tire. @param document as it is so far */
export function sizeValues({ sizes }: Measured, document: unknown, units: LengthUnit): readonly SizeValue[] {
  const read = new Map<ReadingSize, number>(sizes.map(({ size, at }) => [size, at]));
  const found: SizeValue[] = [];
  const length = (path: KeyPath, value: number, removes: readonly KeyPath[] = []) =>
    found.push({ path, value, kind: "length", isMeasured: true, onlyIfOpen: false, removes });
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
  if (section === undefined) {
    // A size on the sidewall tells more than a diameter alone.
    if (isSized) return [];
    return [
      {
        path: ["tire", "diameter"],
        value: diameter,
        kind: "length",
        isMeasured: true,
        onlyIfOpen: false,
        removes: [
          ["tire", "size"],
          ["tire", "profile"],
        ],
      },
    ];
  }
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
        kind: "lengths",
        isMeasured: true,
        onlyIfOpen: false,
        removes: ["size", "diameter", "sectionWidth", "treadWidth"].map((key) => ["tire", key]),
      },
    ];
  const one = (key: string, value: number): SizeValue => ({
    path: ["tire", key],
    value,
    kind: "length",
    isMeasured: true,
    onlyIfOpen: false,
    removes: [
      ["tire", "size"],
      ["tire", "profile"],
    ],
  });
  return [
    one("diameter", diameter),
    one("sectionWidth", section),
    ...(tread === undefined || tread > section ? [] : [one("treadWidth", tread)]),
  ];
}

/**
 * The knuckle as it stands between its joints, for a setup that has none of its own yet. A pin angle that the setup has of its
 * own was read beside the steering axis, and gives the wheel's camber; without one the wheel is taken as upright. A hub face
 * of its own gives the pin's height.
 */
export function knuckleValues(
  { points }: Measured,
  { document, isOpen }: { readonly document: unknown; readonly isOpen: (path: KeyPath) => boolean },
  units: LengthUnit,
): readonly FoundValue[] {
  const at = (name: PointName) => points.find(({ point, side }) => point === name && side === "left");
  const [lower, upper] = [at("lowerArm.ballJoint"), at("upperArm.ballJoint")];
  const [wheel, tieRod] = [at("wheelCenter"), at("tieRodOuter")];
  if (!lower || !upper) return [];
  if (!(upper.at[2] - lower.at[2] > 1)) return [];
  const isTold = (point: { readonly standing: readonly Standing[] }, axes: readonly number[]) =>
    axes.every((axis) => point.standing[axis] === "measured" || point.standing[axis] === "given");
  const [joints, outward] = [
    isTold(lower, [1, 2]) && isTold(upper, [1, 2]),
    wheel !== undefined && isTold(wheel, [1, 2]),
  ];
  const rimWidth = lengthAt(document, ["wheel", "rimWidth"], units) ?? ASSUMED_SIZES["wheel.lipToLip"] - 25.4;
  const backspacing = lengthAt(document, ["wheel", "backspacing"], units);
  const offset =
    lengthAt(document, ["wheel", "offset"], units) ??
    offsetFromBackspacing(backspacing ?? ASSUMED_SIZES["wheel.backspacing"], rimWidth);
  const wheelCenter = wheel?.at ?? lower.at;
  const own = <T>(key: string, value: T | null) => (isOpen(["knuckle", key]) ? null : value);
  const angle = parseAngle(valueAt(document, ["knuckle", "pinAngle"]) as string | number);
  const ownAngle = own("pinAngle", angle.ok ? angle.rad : null);
  const ownFace = own("hubFace", lengthAt(document, ["knuckle", "hubFace"], units));
  const stands = knuckleFrom(
    { lowerJoint: lower.at, upperJoint: upper.at, wheelCenter },
    ownAngle,
    ownFace,
    offset,
  );
  const one = (
    key: string,
    value: number | Vec3,
    isMeasured: boolean,
    kind: "length" | "angle" = "length",
  ): FoundValue => ({
    path: ["knuckle", key],
    value,
    kind,
    isMeasured,
    onlyIfOpen: true,
  });
  return [
    one("span", stands.span, joints),
    one("pinAngle", stands.pinAngle, false, "angle"),
    ...(wheel
      ? [
          one("pinHeight", stands.pinHeight, joints && outward && ownAngle !== null),
          one("hubFace", stands.hubFace, joints && outward && backspacing !== null),
        ]
      : []),
    ...(tieRod
      ? [
          one(
            "steeringArm",
            inKnuckle(tieRod.at, lower.at, upper.at, stands.pinAngle),
            joints && isTold(tieRod, [0, 1, 2]) && isTold(lower, [0]) && isTold(upper, [0]),
          ),
        ]
      : []),
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
