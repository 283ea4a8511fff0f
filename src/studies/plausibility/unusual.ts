import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { Confirmed, LengthUnit } from "../../setup/types/types.ts";
import type { UnusualCheck } from "../../setup/types/unusualChecks.ts";
import { degFromRad } from "../../units/angle.ts";
import { MM_PER_INCH, unitsFromMm } from "../../units/lengthUnits.ts";

/**
 * What an unusual number may have been meant to be: another sign, a decimal place off, the number in the other unit, or a whole
 * inch misread on a tape.
 */
export interface Meant {
  readonly slip: "sign" | "place" | "unit" | "inch";
  /** mm, radians or a plain number. */
  readonly value: number;
}

/** What a value is: mm, radians, or a plain number. */
export type UnusualKind = Confirmed["kind"];

/** One value of a setup that is plausibly a slip. */
export interface Unusual {
  readonly check: UnusualCheck;
  /** The field it is about; the first is where it is confirmed, the others have part in it. */
  readonly paths: readonly [KeyPath, ...KeyPath[]];
  readonly kind: UnusualKind;
  /** The value judged, mm, radians or a plain number. */
  readonly value: number;
  /** What is usual; null = no such end. */
  readonly least: number | null;
  readonly most: number | null;
  readonly meant: readonly Meant[];
  /** A number the sentence tells beside it, as the value; null = none. */
  readonly beside: number | null;
}

/** A range a value usually lies in; null = no such end. */
export interface UsualRange {
  readonly least: number | null;
  readonly most: number | null;
}

/** mm or radians. What is typed just at an end, in another unit, may come out this far past it. */
const ROUNDING = 1e-6;

/** Whether a value lies in a usual range, ends included. NaN does not. */
export function isUsual(value: number, { least, most }: UsualRange): boolean {
  return (least === null || value >= least - ROUNDING) && (most === null || value <= most + ROUNDING);
}

const PLACES = [0.1, 10, 0.01, 100];

/** Slips that would turn a usual value into this one. @param units of bare numbers in the file */
export function meantBy(
  value: number,
  range: UsualRange,
  kind: UnusualKind,
  units: LengthUnit,
): readonly Meant[] {
  const { least, most } = range;
  // Near an end that is not there anything is usual: a slip is only told of a range with two ends.
  if (least === null || most === null) return [];
  const unit = units === "in" ? 1 / MM_PER_INCH : MM_PER_INCH;
  const all: readonly Meant[] = [
    { slip: "sign", value: -value },
    ...PLACES.map((factor): Meant => ({ slip: "place", value: value * factor })),
    ...(kind === "length" ? [{ slip: "unit", value: value * unit } as const] : []),
  ];
  const usual = all.filter((one) => isUsual(one.value, range));
  // One of a sort: the nearest decimal place is the likeliest.
  return usual.filter((one, i) => usual.findIndex(({ slip }) => slip === one.slip) === i);
}

/** An entry of the setup's `confirmed`, as the file writes it: lengths in its units, angles in degrees. */
export interface Confirmation {
  readonly check: UnusualCheck;
  readonly at: string;
  readonly length?: number;
  readonly angle?: number;
  readonly number?: number;
}

/** What a setup says when somebody has looked at an unusual value again and it is so. */
export function confirmationOf({ check, paths, kind, value }: Unusual, units: LengthUnit): Confirmation {
  const at = keyText(paths[0]);
  if (kind === "number") return { check, at, number: rounded(value, 6) };
  return kind === "length"
    ? { check, at, length: rounded(unitsFromMm(value, units), units === "in" ? 4 : 3) }
    : { check, at, angle: rounded(degFromRad(value), 3) };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
