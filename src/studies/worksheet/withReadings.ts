import type { Vec3 } from "../../geometry/vec.ts";
import { isSaidMine, withRead } from "../../setup/exampleMarks.ts";
import { pathOfPoint } from "../../setup/givenPoints.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { lengthAt } from "../../setup/reading/typedPair.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { parseAngle } from "../../units/angle.ts";
import { mmFromInches, unitsFromMm } from "../../units/lengthUnits.ts";
import { parseTireSize } from "../../units/tireSize.ts";
import { offsetFromBackspacing } from "../../units/wheelOffset.ts";
import { type SizeValue, sizeValues } from "../measure/appliedValues.ts";
import { ASSUMED_SIZES } from "../measure/assumedTruck.ts";
import { inKnuckle, knuckleFrom } from "../measure/knuckleFrom.ts";
import type { Measured, MeasuredPoint } from "../measure/measured.ts";
import { measureTruck } from "../measure/measureTruck.ts";
import { worksheetAskOf } from "./worksheetAskOf.ts";

/** A number, or rows of them, to be written into a setup. */
interface Written {
  readonly path: KeyPath;
  readonly value: SizeValue["value"];
  /** Readings tell it; else it is the assumed layout, moved to go with them. */
  readonly isRead: boolean;
}

/** What calipers and straightedge tell, with the places that do not go with it. */
interface Gauged extends Written {
  readonly removes: readonly KeyPath[];
}

/**
 * A setup that began as the assumed layout with its numbers as its readings tell them: points by least squares, the knuckle that
 * holds the wheel where it was read. What no reading tells is the layout moved to go with the others, and stays marked as
 * assumed; what somebody said is the truck's own stays as it is. Any other setup, and one whose units or readings cannot be
 * read, comes back as it was.
 */
export function withReadings(document: unknown): unknown {
  if (!isOnAssumedLayout(document)) return document;
  const { ask, units } = worksheetAskOf(document, []);
  if (ask === null || units === null) return document;
  const measured = measureTruck(ask);
  const gauged = gaugedOf(document, measured, units);
  // The knuckle hangs on the wheel as it was read.
  const worn = putInto(
    gauged.flatMap(({ removes }) => removes).reduce((all: unknown, path) => removeAt(all, path), document),
    gauged,
    units,
  );
  const told = [
    ...pointsOf(document, measured),
    ...knuckleOf(
      worn,
      measured,
      units,
      gauged.some(({ path }) => path[1] === "backspacing"),
    ),
    ...railOf(document, measured),
    ...rimOf(document),
  ].filter(({ path }) => !isSaidMine(document, path));
  const hasRadius = told.some(({ path }) => path === LOADED_RADIUS) || isSaidMine(document, LOADED_RADIUS);
  const changed = putInto(hasRadius ? worn : removeAt(worn, LOADED_RADIUS), told, units);
  const written = [...gauged, ...told];
  return withRead(
    changed,
    written.flatMap(({ path, isRead }) => (isRead ? [path] : [])),
  );
}

function putInto(document: unknown, written: readonly Written[], units: LengthUnit): unknown {
  return written.reduce((all: unknown, { path, value }) => {
    if (typeof value !== "number")
      return setAt(
        all,
        path,
        value.map((row) => row.map((mm) => fileNumber(mm, units))),
      );
    const isAngle = path.at(-1) === "pinAngle";
    return setAt(all, path, isAngle ? rounded((value / Math.PI) * 180, 3) : fileNumber(value, units));
  }, document);
}

/** A tire that stands on the floor has its wheel's center so high; not read, it follows from the tire's size. */
const LOADED_RADIUS: KeyPath = ["tire", "loadedRadius"];

/** Each coordinate of each left point that stands in the setup. */
function pointsOf(document: unknown, { points }: Measured): readonly Written[] {
  return points.flatMap(({ point, side, at, standing }): readonly Written[] => {
    const path = side === "left" ? pathOfPoint(point, document) : null;
    if (path === null || !Array.isArray(valueAt(document, path))) return [];
    return at.map((value, axis) => ({
      path: [...path, axis],
      value,
      isRead: standing[axis] === "measured",
    }));
  });
}

/** The knuckle that goes between the ball joints and holds the wheel's center where it is. */
function knuckleOf(
  document: unknown,
  { points }: Measured,
  units: LengthUnit,
  isBackspacingRead: boolean,
): readonly Written[] {
  const find = (name: string) => points.find(({ point, side }) => point === name && side === "left");
  const lower = find("lowerArm.ballJoint");
  const upper = find("upperArm.ballJoint");
  const wheel = find("wheelCenter");
  if (!lower || !upper) return [];
  const length = (...path: KeyPath) => lengthAt(document, path, units);
  const [rimWidth, backspacing] = [length("wheel", "rimWidth"), length("wheel", "backspacing")];
  const wheelOffset =
    length("wheel", "offset") ??
    (rimWidth !== null && backspacing !== null ? offsetFromBackspacing(backspacing, rimWidth) : null);
  if (!wheel || wheelOffset === null) return spanOf(lower, upper);
  const own = <T>(key: string, value: T | null) => (isSaidMine(document, ["knuckle", key]) ? value : null);
  const angle = parseAngle(valueAt(document, ["knuckle", "pinAngle"]) as string | number);
  const isOut = wheel.standing[1] === "measured" && lower.standing[1] === "measured";
  const ownAngle = own("pinAngle", angle.ok ? angle.rad : null);
  const ownFace = own("hubFace", length("knuckle", "hubFace"));
  const found = knuckleFrom(
    { lowerJoint: lower.at, upperJoint: upper.at, wheelCenter: wheel.at },
    ownAngle,
    ownFace,
    wheelOffset,
  );
  const isUp = wheel.standing[2] === "measured";
  const isOnOwnNumbers = isBackspacingRead || isSaidMine(document, ["wheel", "backspacing"]);
  return [
    ...spanOf(lower, upper),
    { path: ["knuckle", "pinAngle"], value: found.pinAngle, isRead: false },
    { path: ["knuckle", "hubFace"], value: found.hubFace, isRead: isOut && isOnOwnNumbers },
    {
      path: ["knuckle", "pinHeight"],
      value: found.pinHeight,
      isRead:
        isUp &&
        ownAngle !== null &&
        lower.standing[2] === "measured" &&
        (ownFace !== null || (isOut && isOnOwnNumbers)),
    },
    ...(isUp ? [{ path: LOADED_RADIUS, value: wheel.at[2], isRead: true }] : []),
    ...steeringArmOf(find("tieRodOuter"), lower.at, upper.at, found.pinAngle),
  ];
}

function spanOf(lower: MeasuredPoint, upper: MeasuredPoint): readonly Written[] {
  const value = Math.hypot(...lower.at.map((one, i) => upper.at[i]! - one));
  const isRead = [...lower.standing, ...upper.standing].every((one) => one === "measured");
  return [{ path: ["knuckle", "span"], value, isRead }];
}

function steeringArmOf(
  end: MeasuredPoint | undefined,
  lowerJoint: Vec3,
  upperJoint: Vec3,
  pinAngle: number,
): readonly Written[] {
  if (!end) return [];
  const isRead = end.standing.every((one) => one === "measured");
  return inKnuckle(end.at, lowerJoint, upperJoint, pinAngle).map((value, axis) => ({
    path: ["knuckle", "steeringArm", axis],
    value,
    isRead,
  }));
}

/** The frame rail's outer face, where the frame was read across. */
function railOf(document: unknown, { sizes }: Measured): readonly Written[] {
  const frame = sizes.find(({ size }) => size === "frameWidth");
  const max = frame && pathOfPoint('body["frame rail"].max', document);
  return frame && max ? [{ path: [...max, 1], value: frame.at / 2, isRead: true }] : [];
}

/**
 * Wheel by straightedge and tire by calipers. A tire's size that somebody typed stays; what stands there otherwise gives way
 * to the calipers.
 */
function gaugedOf(document: unknown, measured: Measured, units: LengthUnit): readonly Gauged[] {
  const size: KeyPath = ["tire", "size"];
  const isTyped = isSaidMine(document, size) && valueAt(document, size) !== undefined;
  const found = sizeValues(measured, isTyped ? document : removeAt(document, size), units)
    .filter(({ path }) => !(isTyped && path[0] === "tire") && !isSaidMine(document, path))
    .map(({ path, value, removes = [] }): Gauged => ({ path, value, removes, isRead: true }));
  const has = (key: string) => found.some(({ path }) => path[0] === "tire" && path[1] === key);
  if (!has("diameter") || has("sectionWidth")) return found;
  // A tire of a diameter alone is as wide as the assumed one.
  const value = ASSUMED_SIZES["tire.sectionWidth"];
  return [...found, { path: ["tire", "sectionWidth"], value, removes: [], isRead: false }];
}

/** A tire goes on rims of one diameter, which its size names. */
function rimOf(document: unknown): readonly Written[] {
  const size = valueAt(document, ["tire", "size"]);
  const isOwn = isSaidMine(document, ["tire", "size"]);
  const rim = typeof size === "string" && isOwn ? parseTireSize(size) : null;
  return rim ? [{ path: ["wheel", "rimDiameter"], value: mmFromInches(rim.rimCode), isRead: true }] : [];
}

/** To a hundredth of a millimeter: far finer than a tape. */
function fileNumber(mm: number, units: LengthUnit): number {
  return rounded(unitsFromMm(mm, units), units === "in" ? 4 : 2);
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}
