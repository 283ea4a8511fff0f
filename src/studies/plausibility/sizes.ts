import { fieldAt } from "../../setup/fieldCatalogue.ts";
import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { isUsual, meantBy, type Unusual, type UsualRange } from "./unusual.ts";

const inches = (least: number, most: number): UsualRange => ({
  least: least * MM_PER_INCH,
  most: most * MM_PER_INCH,
});
const degrees = (least: number, most: number): UsualRange => ({
  least: (least / 180) * Math.PI,
  most: (most / 180) * Math.PI,
});

/** What a hub face measures, from the steering axis along the pin. Common practice, no source. */
const HUB_FACE_RANGE = inches(3, 10);

/**
 * Sizes that stand on their own, and what pickups and vans have there. Common practice, no source; wide enough for drop
 * knuckles, narrowed clips and one-ton trucks.
 */
const SIZES: readonly (readonly [KeyPath, UsualRange])[] = [
  [["knuckle", "span"], inches(6, 20)],
  [["knuckle", "pinHeight"], inches(-1, 13)],
  [["knuckle", "pinAngle"], degrees(0, 20)],
  [["knuckle", "pinLead"], inches(-1.5, 1.5)],
  [["truck", "wheelbase"], inches(70, 220)],
  [["truck", "steering", "stroke"], inches(0.75, 4.5)],
  [["truck", "steering", "swing"], degrees(10, 55)],
  [["wheel", "rimWidth"], inches(4, 16)],
  [["alignment", "toe"], degrees(-3, 3)],
  [["travel", "bump"], inches(0, 12)],
  [["travel", "droop"], inches(-12, 0)],
  [["allowance"], inches(0, 3)],
];

/** Sizes out of the usual, one by one. */
export function unusualSizes(setup: Setup): readonly Unusual[] {
  return SIZES.flatMap(([path, range]): readonly Unusual[] => {
    const value = path.reduce<unknown>((at, key) => (at as Record<string, unknown> | null)?.[key], setup);
    return typeof value === "number" ? ofSize("size", path, value, range, setup) : [];
  });
}

/** The hub face, out of the usual. */
export function unusualHubFace(setup: Setup): readonly Unusual[] {
  return ofSize("hubFace", ["knuckle", "hubFace"], setup.knuckle.hubFace, HUB_FACE_RANGE, setup);
}

/** A value out of its range, with what it may have been meant to be; none where it is usual. */
function ofSize(
  check: Unusual["check"],
  path: KeyPath,
  value: number,
  range: UsualRange,
  setup: Setup,
): readonly Unusual[] {
  if (isUsual(value, range)) return [];
  const kind = fieldAt(path, setup)?.kind === "angle" ? "angle" : "length";
  const meant = meantBy(value, range, kind, setup.units);
  return [{ check, paths: [path], kind, value, ...range, meant, beside: null }];
}
