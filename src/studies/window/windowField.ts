import { tireDesignDimensions } from "../../gaps/tire/designDimensions.ts";
import { fieldAt, setupFields } from "../../setup/fieldCatalogue.ts";
import type { SetupField } from "../../setup/fields/setupField.ts";
import { describeValue } from "../../setup/reading/describeValue.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { bareTyped } from "../../setup/reading/typedPair.ts";
import { type KeyPath, keyText, parseKeyText, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit, Result, Setup } from "../../setup/types/types.ts";
import { degFromRad, parseAngle, radFromDeg } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import { parseTireSize } from "../../units/tireSize.ts";
import { backspacingFromOffset } from "../../units/wheelOffset.ts";
import { nearestWord } from "../../units/words.ts";

/** A length or an angle of a setup's document that can be given other values. */
export interface WindowField {
  readonly path: KeyPath;
  /** The path as a person writes it. */
  readonly key: string;
  readonly kind: "length" | "angle";
  /** The file's, whatever lengths are shown in. */
  readonly units: LengthUnit;
  /** mm or radians. */
  readonly now: number;
  /** Ends of what the file may hold there, themselves perhaps not allowed; mm or radians. */
  readonly least: number;
  readonly most: number;
  /** A copy of a document with another value there. */
  readonly put: (document: unknown, value: number) => unknown;
}

const DEG = Math.PI / 180;

/** How near an end is told: a tenth of a millimeter, as gaps are; a hundredth of a degree, which moves a tread by half of that. */
export const WINDOW_TOLERANCE = { length: 0.1, angle: 0.01 * DEG } as const;

/** How far from now is looked where no range is asked for: six inches; ten degrees. */
export const DEFAULT_REACH = { length: 152.4, angle: 10 * DEG } as const;

/** Longest key looked up among the known ones. */
const MOST_KEY = 120;

/**
 * The field of a document at a key such as `knuckle.hubFace`. What the file says in another way is turned into the one asked for:
 * backspacing and offset, a tire's size and its widths.
 * @param document the variant shown applied; @param setup what was made of it
 */
export function windowField(document: unknown, setup: Setup, key: string, file: string): Result<WindowField> {
  const refuse = (value: unknown, mend: string): Result<never> => ({
    ok: false,
    issues: [{ file, key, value: value === undefined ? "" : describeValue(value), mend }],
  });
  const path = parseKeyText(key);
  const field = path === null || path.length === 0 ? null : fieldAt(path, document);
  if (path === null || field === null)
    return refuse(undefined, `there is no such field${nearestKey(key, document)}`);
  const kind = windowKind(field);
  if (key === "tire.size")
    return refuse(valueAt(document, path), 'is a size in words; name "tire.sectionWidth" or "tire.diameter"');
  if (kind === null)
    return refuse(valueAt(document, path), `holds no single length or angle${nearestKey(key, document)}`);
  if (
    path[0] === "truck" &&
    path[1] === "body" &&
    valueAt(document, [...path.slice(0, 3), "kind"]) === "mesh"
  )
    return refuse(
      valueAt(document, path),
      "is part of a mesh, which is not moved about; name a field of a path or a box",
    );
  const prepare = otherWay(path, setup);
  const now = numberNow(path, document, setup, kind);
  if (now === null) return refuse(valueAt(document, path), "is not in the file; give it a value first");
  const { least, most } = field.range;
  // Its beads sit as far apart as the rim's flanges: on this rim no tire is narrower.
  const narrowest = key === "tire.sectionWidth" ? Math.min(now, setup.wheel.rimWidth) : null;
  const inside = (degrees: number) => (kind === "angle" ? radFromDeg(degrees) : degrees);
  return {
    ok: true,
    value: {
      path,
      key,
      kind,
      units: setup.units,
      now,
      least: narrowest ?? (least === null ? Number.NEGATIVE_INFINITY : inside(least)),
      most: most === null ? Number.POSITIVE_INFINITY : inside(most),
      put: (typed, value) => {
        const plain = kind === "angle" ? degFromRad(value) : unitsFromMm(value, setup.units);
        const prepared = value === now ? prepare(typed) : ofOtherTire(key, prepare(typed));
        return setAt(prepared, path, plain);
      },
    },
  };
}

/** What a window of a field is over; null = it has none. */
function windowKind(field: SetupField): WindowField["kind"] | null {
  return field.kind === "length" || field.kind === "signedLength"
    ? "length"
    : field.kind === "angle"
      ? "angle"
      : null;
}

/** What the file says instead of this field, turned round: then this may be written beside it. */
export function otherWay(path: KeyPath, { units, tire, wheel }: Setup): (document: unknown) => unknown {
  const key = keyText(path);
  if (key === "tire.size")
    return (document) => SHAPES.reduce((on, one) => removeAt(on, ["tire", one]), document);
  if (key === "wheel.backspacing") return (document) => removeAt(document, ["wheel", "offset"]);
  if (key === "wheel.offset") return (document) => removeAt(document, ["wheel", "backspacing"]);
  if (tire.kind !== "size" || !isTireWidth(key)) return (document) => document;
  const size = parseTireSize(tire.size)!;
  const { diameter, sectionWidth } = tireDesignDimensions(size, wheel.rimWidth);
  return (document) => {
    const sized = removeAt(document, ["tire", "size"]);
    const wide = setAt(sized, ["tire", "diameter"], unitsFromMm(diameter, units));
    return setAt(wide, ["tire", "sectionWidth"], unitsFromMm(sectionWidth, units));
  };
}

/** A document whose tire gets another size: a loaded radius was measured of the one before. */
export function ofOtherTire(key: string, document: unknown): unknown {
  return key === "tire.size" || key === "tire.diameter"
    ? removeAt(document, ["tire", "loadedRadius"])
    : document;
}

/** What a tire is told by where its size is not. */
const SHAPES = ["diameter", "sectionWidth", "treadWidth", "profile"];

function isTireWidth(key: string): key is "tire.diameter" | "tire.sectionWidth" {
  return key === "tire.diameter" || key === "tire.sectionWidth";
}

/** mm or radians; null = neither the file nor a default gives it. */
function numberNow(path: KeyPath, document: unknown, setup: Setup, kind: WindowField["kind"]): number | null {
  const typed = bareTyped(valueAt(document, path));
  if (typeof typed === "number" || typeof typed === "string") {
    if (kind === "angle") {
      const angle = parseAngle(typed);
      return angle.ok ? angle.rad : null;
    }
    const length = parseLength(typed, setup.units);
    return length.ok ? length.mm : null;
  }
  const key = keyText(path);
  const { wheel, tire } = setup;
  if (key === "wheel.backspacing") return backspacingFromOffset(wheel.offset, wheel.rimWidth);
  if (tire.kind === "size" && isTireWidth(key))
    return tireDesignDimensions(parseTireSize(tire.size)!, wheel.rimWidth)[
      key === "tire.diameter" ? "diameter" : "sectionWidth"
    ];
  // A coordinate has no place where the file does not hold the point.
  if (typeof path.at(-1) === "number" && !Array.isArray(valueAt(document, path.slice(0, -1)))) return null;
  // A resolved setup holds defaults where the file holds nothing, mostly at the same place.
  const byDefault = valueAt(setup, path);
  return typeof byDefault === "number" && Number.isFinite(byDefault) ? byDefault : null;
}

/** The known key that was most likely meant, as the end of a mend. */
function nearestKey(key: string, document: unknown): string {
  const keys = [...new Set(setupFields().flatMap((field) => keysOf(field, document)))];
  const near = nearestWord(key.slice(0, MOST_KEY), keys);
  if (near !== null) return `; did you mean "${near}"?`;
  const inside = keys.find((one) => one.startsWith(`${key}.`) || one.startsWith(`${key}[`));
  return `; name one such as "${inside ?? "knuckle.hubFace"}"`;
}

/** Keys that hold a length or an angle; of a point its coordinates, of a list its first entry. */
function keysOf(field: SetupField, document: unknown): string[] {
  const steps = field.pattern.map((step) => (step === "*" ? 0 : step));
  if (field.kind === "point") return [0, 1, 2].map((i) => keyText([...steps, i]));
  if (windowKind(field) === null) return [];
  return fieldAt(steps, document) === null ? [] : [keyText(steps)];
}

/** Longest text of a length that a person would write. */
const MOST_TEXT = 12;

/** Digits after the point of what nobody would write: far finer than anything is made. */
const DIGITS = 6;

/**
 * A copy of a document with a field at a value as a person would write it: a length as text, exact where that is short; all else to
 * a millionth of a unit or a degree. @param value mm or radians
 */
export function writtenField(document: unknown, field: WindowField, value: number): unknown {
  return setAt(field.put(document, value), field.path, typedValue(field, value));
}

function typedValue({ kind, units }: WindowField, value: number): string | number {
  if (kind === "angle") return Number(degFromRad(value).toFixed(DIGITS));
  const text = plainLengthText(value, units);
  return text.length <= MOST_TEXT ? text : Number(unitsFromMm(value, units).toFixed(DIGITS));
}
