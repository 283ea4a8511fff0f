import type { Vec3 } from "../../geometry/vec.ts";
import { isSaidMine, withRead } from "../../setup/exampleMarks.ts";
import { pathOfPoint } from "../../setup/givenPoints.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { bareTyped, lengthAt } from "../../setup/reading/typedPair.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { Reading } from "../../setup/types/readingTypes.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { parseAngle } from "../../units/angle.ts";
import { mmFromInches, unitsFromMm } from "../../units/lengthUnits.ts";
import { parseTireSize } from "../../units/tireSize.ts";
import { offsetFromBackspacing } from "../../units/wheelOffset.ts";
import { ASSUMED_SIZES } from "../measure/assumedTruck.ts";
import { inKnuckle, knuckleFrom } from "../measure/knuckleFrom.ts";
import type { Measured, MeasuredPoint, MeasuredTruck } from "../measure/measured.ts";
import { measureTruck } from "../measure/measureTruck.ts";
import { type SizeValue, sizeValues } from "../measure/sizeValues.ts";
import { worksheetAskOf } from "./worksheetAskOf.ts";

/** A number, or a list of them, to be written into a setup. mm, radians of an angle. */
export interface Written {
  readonly path: KeyPath;
  readonly value: SizeValue["value"] | Vec3;
  /** Readings tell it; else it is the assumed layout, moved to go with them. */
  readonly isRead: boolean;
}

/** What calipers and straightedge tell, with the places that do not go with it. */
interface Gauged extends Written {
  readonly removes: readonly KeyPath[];
}

/** Whether what stands at a place of a setup stays, whatever readings tell. */
export type Keeps = (path: KeyPath) => boolean;

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
  return withMeasured(document, measureTruck(ask), units, (path) => isSaidMine(document, path));
}

/**
 * Whether somebody typed another number where readings tell one, as a wheel that is tried on: such a truck is not the one that stood
 * there to be measured.
 */
export function isTypedOver(document: unknown): boolean {
  if (!isOnAssumedLayout(document)) return false;
  const { ask, units } = worksheetAskOf(document, []);
  if (ask === null || units === null) return false;
  const { gauged, told } = toldBy(document, measureTruck(ask), units, () => false);
  return [...gauged, ...told].some(({ path, isRead }) => isRead && isSaidMine(document, path));
}

/** A setup with the numbers that its readings make, but for those it keeps; what readings alone tell is marked as read, where it has marks. */
export function withMeasured(
  document: unknown,
  measured: Measured,
  units: LengthUnit,
  keeps: Keeps,
): unknown {
  const { worn, gauged, told } = toldBy(document, measured, units, keeps);
  const untold = ONLY_READ.filter((path) => !keeps(path) && !told.some((one) => one.path === path));
  const changed = putInto(
    untold.reduce((all, path) => removeAt(all, path), worn),
    told,
    units,
  );
  const written = [...gauged, ...told];
  return withRead(
    changed,
    written.flatMap(({ path, isRead }) => (isRead ? [path] : [])),
  );
}

/** What a truck as measured writes into a setup: wheel and tire, and points, knuckle and the rest of the setup that wears them. */
export function toldBy(
  document: unknown,
  measured: MeasuredTruck & Partial<Pick<Measured, "residuals">>,
  units: LengthUnit,
  keeps: Keeps = (path) => isSaidMine(document, path),
): { readonly worn: unknown; readonly gauged: readonly Gauged[]; readonly told: readonly Written[] } {
  const gauged = gaugedOf(document, measured, units, keeps);
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
      keeps,
      keeps(BACKSPACING) || gauged.some(({ path }) => path[1] === "backspacing"),
    ),
    ...railOf(document, measured),
    ...rimOf(document, keeps),
  ].filter(({ path }) => !keeps(path));
  return { worn, gauged, told };
}

function putInto(document: unknown, written: readonly Written[], units: LengthUnit): unknown {
  return written.reduce((all: unknown, { path, value }) => {
    if (path.at(-1) === "pinAngle") return setAt(all, path, rounded((Number(value) / Math.PI) * 180, 3));
    return setAt(all, path, fileNumbers(value, units));
  }, document);
}

const BACKSPACING: KeyPath = ["wheel", "backspacing"];

/** A tire that stands on the floor has its wheel's center so high; not read, it follows from the tire's size. */
const LOADED_RADIUS: KeyPath = ["tire", "loadedRadius"];

/** Where the right inner end of a steering box stands; not read, it is the left one's mirror image. */
export const RIGHT_INNER_END: KeyPath = ["truck", "steering", "innerEndRight"];

/** Places that follow from others where no reading tells them. */
const ONLY_READ = [LOADED_RADIUS, RIGHT_INNER_END];

/** Each coordinate of each left point that stands in the setup, and the right inner end of a steering box. */
export function pointsOf(document: unknown, { points }: MeasuredTruck): readonly Written[] {
  const isBox = valueAt(document, ["truck", "steering", "type"]) === "pitman";
  return points.flatMap(({ point, side, at, standing }): readonly Written[] => {
    if (side === "right") {
      if (!isBox || point !== "steering.innerEnd") return [];
      const isRead = standing.every((one) => one === "measured");
      return [{ path: RIGHT_INNER_END, value: [at[0], -at[1], at[2]], isRead }];
    }
    const path = pathOfPoint(point, document);
    if (path === null || !Array.isArray(valueAt(document, path))) return [];
    return at.map((value, axis) => ({
      path: [...path, axis],
      value,
      isRead: standing[axis] === "measured",
    }));
  });
}

const JOINTS = ["lowerArm.ballJoint", "upperArm.ballJoint"] as const;

/** mm. Joints nearer than this are no knuckle's. */
const LEAST_SPAN = 1;

/** The knuckle that goes between the ball joints and holds the wheel's center where it is. */
function knuckleOf(
  document: unknown,
  { points, residuals = [] }: MeasuredTruck & Partial<Pick<Measured, "residuals">>,
  units: LengthUnit,
  keeps: Keeps,
  isOnOwnNumbers: boolean,
): readonly Written[] {
  const find = (name: string) => points.find(({ point, side }) => point === name && side === "left");
  const [lower, upper] = [find(JOINTS[0]), find(JOINTS[1])];
  const wheel = find("wheelCenter");
  if (!lower || !upper || distanceOf(lower, upper) < LEAST_SPAN) return [];
  const isTaped = residuals.some(({ reading }) => isSpan(reading));
  const length = (...path: KeyPath) => lengthAt(document, path, units);
  const [rimWidth, backspacing] = [length("wheel", "rimWidth"), length("wheel", "backspacing")];
  const wheelOffset =
    length("wheel", "offset") ??
    (rimWidth !== null && backspacing !== null ? offsetFromBackspacing(backspacing, rimWidth) : null);
  if (!wheel || wheelOffset === null) return spanOf(lower, upper, isTaped);
  const own = <T>(key: string, value: T | null) => (keeps(["knuckle", key]) ? value : null);
  const angle = parseAngle(bareTyped(valueAt(document, ["knuckle", "pinAngle"])) as string | number);
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
  return [
    ...spanOf(lower, upper, isTaped),
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

/** Whether a reading is of the left joints' distance itself. */
function isSpan(reading: Reading): boolean {
  return (
    reading.kind === "between" &&
    reading.side === "left" &&
    JOINTS.every((one) => reading.points.includes(one))
  );
}

/** @param isTaped the joints' distance itself was read, wherever they are */
function spanOf(lower: MeasuredPoint, upper: MeasuredPoint, isTaped: boolean): readonly Written[] {
  const isRead = isTaped || [...lower.standing, ...upper.standing].every((one) => one === "measured");
  return [{ path: ["knuckle", "span"], value: distanceOf(lower, upper), isRead }];
}

function distanceOf(lower: MeasuredPoint, upper: MeasuredPoint): number {
  return Math.hypot(...lower.at.map((one, i) => upper.at[i]! - one));
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
function railOf(document: unknown, { sizes }: MeasuredTruck): readonly Written[] {
  const frame = sizes.find(({ size }) => size === "frameWidth");
  const max = frame && pathOfPoint('body["frame rail"].max', document);
  return frame && max ? [{ path: [...max, 1], value: frame.at / 2, isRead: true }] : [];
}

/**
 * Wheel by straightedge and tire by calipers. A tire's size that somebody typed stays; what stands there otherwise gives way
 * to the calipers.
 */
function gaugedOf(
  document: unknown,
  measured: MeasuredTruck,
  units: LengthUnit,
  keeps: Keeps,
): readonly Gauged[] {
  const isTyped = keeps(TIRE_SIZE) && valueAt(document, TIRE_SIZE) !== undefined;
  const found = sizeValues(measured, isTyped ? document : removeAt(document, TIRE_SIZE), units)
    .filter(({ path }) => !(isTyped && path[0] === "tire") && !keeps(path))
    .map((one): Gauged => ({ ...one, isRead: true }));
  const has = (key: string) => found.some(({ path }) => path[0] === "tire" && path[1] === key);
  const width = ["tire", "sectionWidth"];
  if (!has("diameter") || has("sectionWidth") || keeps(width)) return found;
  // A tire of a diameter alone is as wide as the assumed one.
  return [...found, { path: width, value: ASSUMED_SIZES["tire.sectionWidth"], removes: [], isRead: false }];
}

const TIRE_SIZE: KeyPath = ["tire", "size"];

/** A tire goes on rims of one diameter, which its size names. */
function rimOf(document: unknown, keeps: Keeps): readonly Written[] {
  const size = valueAt(document, TIRE_SIZE);
  const rim = typeof size === "string" && keeps(TIRE_SIZE) ? parseTireSize(size) : null;
  return rim ? [{ path: ["wheel", "rimDiameter"], value: mmFromInches(rim.rimCode), isRead: true }] : [];
}

/** To a hundredth of a millimeter: far finer than a tape. */
function fileNumbers(mm: number | readonly unknown[], units: LengthUnit): unknown {
  if (typeof mm !== "number") return mm.map((one) => fileNumbers(one as number | readonly unknown[], units));
  return rounded(unitsFromMm(mm, units), units === "in" ? 4 : 2);
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}

/** What the truck's points and knuckle are worked out of, besides what is typed into them. */
const OF = ["readings", "knuckle", "wheel", "tire"] as const;

/** A document after a change, with what follows from its readings where one of them changed. */
export function followReadings(before: unknown, after: unknown): unknown {
  const isChanged = OF.some((key) => valueAt(before, [key]) !== valueAt(after, [key]));
  return isChanged ? withReadings(after) : after;
}
