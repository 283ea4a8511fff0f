import { fieldAt } from "../../setup/fieldCatalogue.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { isUsual, meantBy, type Unusual, type UsualRange } from "./unusual.ts";

/** A usual range of lengths, from inches. */
export function inches(least: number, most: number): UsualRange {
  return { least: least * MM_PER_INCH, most: most * MM_PER_INCH };
}

/** A usual range of angles, from degrees. */
export function degrees(least: number, most: number): UsualRange {
  return { least: (least / 180) * Math.PI, most: (most / 180) * Math.PI };
}

/** The same of what stands at a place of the setup; none where nothing does. */
export function ofPlace(
  check: Unusual["check"],
  path: KeyPath,
  range: UsualRange,
  setup: Setup,
): readonly Unusual[] {
  const value = valueAt(setup, path);
  return typeof value === "number" ? outOf(check, path, value, range, setup) : [];
}

/** A value out of its range, with what it may have been meant to be; none where it is usual. */
export function outOf(
  check: Unusual["check"],
  path: KeyPath,
  value: number,
  range: UsualRange,
  setup: Setup,
): readonly Unusual[] {
  if (isUsual(value, range)) return [];
  const natural = fieldAt(path, setup)?.kind;
  const kind = natural === "angle" || natural === "number" ? natural : "length";
  const meant = meantBy(value, range, kind, setup.units);
  return [{ check, paths: [path], kind, value, ...range, meant, beside: null }];
}
