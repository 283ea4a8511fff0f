import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { OrderSetup } from "../../setup/types/orderTypes.ts";
import type { Point } from "../../setup/types/truckTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { type FileUnits, MM_PER_INCH } from "../../units/lengthUnits.ts";
import { backspacingFromOffset } from "../../units/wheelOffset.ts";
import type { OrderedParts } from "./orderedParts.ts";

/** A value an order writes: mm, rad, a point in mm, or a word. */
export type OrderedValue =
  | { readonly kind: "length"; readonly mm: number }
  | { readonly kind: "angle"; readonly rad: number }
  | { readonly kind: "point"; readonly point: Point }
  | { readonly kind: "word"; readonly word: string };

/** One field of the knuckle, wheel or hardware block that an order fixes. */
export interface OrderedField {
  readonly path: KeyPath;
  /** What the order makes it. */
  readonly ordered: OrderedValue;
  /** What the block says, which every answer is worked out from; null = nothing. */
  readonly block: OrderedValue | null;
  /** Whether the two say the same. */
  readonly agrees: boolean;
}

/** mm and rad. Far below any gauge, far above what turning units rounds. */
const SAME = { length: 1e-6, angle: 1e-9 } as const;

/**
 * The fields of the knuckle, wheel and hardware blocks that an order fixes, beside what the blocks say. What the order
 * leaves open is left out.
 */
export function orderedFields(setup: Setup, order: OrderSetup, parts: OrderedParts): readonly OrderedField[] {
  return fieldsOf(setup, [
    ...knuckleValues(order),
    ...wheelValues(order),
    ...hardwareValues(parts, setup.units),
  ]);
}

/** Those of the knuckle block alone, which no catalog has a say in. */
export function knuckleFields(setup: Setup, order: OrderSetup): readonly OrderedField[] {
  return fieldsOf(setup, knuckleValues(order));
}

function fieldsOf(setup: Setup, values: readonly Entry[]): readonly OrderedField[] {
  return values.flatMap(([path, ordered]): readonly OrderedField[] => {
    if (ordered === null) return [];
    const block = blockValue(setup, path, ordered.kind);
    return [{ path, ordered, block, agrees: block !== null && isSameValue(ordered, block) }];
  });
}

type Entry = readonly [KeyPath, OrderedValue | null];

function knuckleValues({
  base,
  drop,
  hubFace,
  pinAngle,
  pinLead,
  steeringArm,
}: OrderSetup): readonly Entry[] {
  const pinHeight = base.pinHeight === null || drop === null ? null : base.pinHeight + drop;
  return [
    [["knuckle", "span"], length(base.span)],
    [["knuckle", "pinHeight"], length(pinHeight)],
    [["knuckle", "pinLead"], length(pinLead ?? base.pinLead)],
    [["knuckle", "pinAngle"], angle(pinAngle ?? base.pinAngle)],
    [["knuckle", "hubFace"], length(hubFace)],
    [["knuckle", "steeringArm"], point(steeringArm.tieRodEnd ?? base.steeringArm)],
  ];
}

function wheelValues({ wheel }: OrderSetup): readonly Entry[] {
  return [
    [["wheel", "rimDiameter"], length(wheel.rimDiameter)],
    [["wheel", "rimWidth"], length(wheel.rimWidth)],
    [["wheel", "backspacing"], length(wheel.backspacing)],
    [["wheel", "offset"], length(wheel.offset)],
    [["wheel", "barrelDiameter"], length(wheel.barrelDiameter)],
  ];
}

function hardwareValues(parts: OrderedParts, units: FileUnits): readonly Entry[] {
  const { brake, hub, upperBallJoint, lowerBallJoint } = parts;
  const inboard = brake.hatOffset === null || hub.rotorSeat === null ? null : brake.hatOffset + hub.rotorSeat;
  const caliper = brake.caliper !== null && hub.rotorSeat !== null ? brake.caliper : null;
  const fromFace = ([x, y, z]: Point): Point => [x, y - hub.rotorSeat!, z];
  return [
    [["hardware", "upperBallJoint", "radius"], length(housingRadius(upperBallJoint, units))],
    [["hardware", "lowerBallJoint", "radius"], length(housingRadius(lowerBallJoint, units))],
    [["hardware", "rotor", "diameter"], length(brake.rotorDiameter)],
    [["hardware", "rotor", "thickness"], length(brake.rotorThickness)],
    [["hardware", "rotor", "inboard"], length(inboard)],
    [["hardware", "caliper", "frame"], caliper && { kind: "word", word: "hub" }],
    [["hardware", "caliper", "min"], point(caliper && fromFace(caliper.min))],
    [["hardware", "caliper", "max"], point(caliper && fromFace(caliper.max))],
  ];
}

/**
 * Radius of the ball about a joint's center that holds all of its housing, a cylinder with the center in its middle, mm:
 * rounded up to 0.001 in or 0.01 mm, so that no gap is told larger than it is. null = not given.
 */
export function housingRadius(
  { housingDiameter, housingHeight }: OrderedParts["upperBallJoint"],
  units: FileUnits,
): number | null {
  if (housingDiameter === null || housingHeight === null) return null;
  const exact = Math.sqrt(housingDiameter ** 2 + housingHeight ** 2) / 2;
  const step = units === "in" ? MM_PER_INCH / 1000 : 0.01;
  return Math.ceil(exact / step - 1e-9) * step;
}

function length(mm: number | null): OrderedValue | null {
  return mm === null ? null : { kind: "length", mm };
}

function angle(rad: number | null): OrderedValue | null {
  return rad === null ? null : { kind: "angle", rad };
}

function point(at: Point | null): OrderedValue | null {
  return at === null ? null : { kind: "point", point: at };
}

function blockValue(setup: Setup, path: KeyPath, kind: OrderedValue["kind"]): OrderedValue | null {
  if (path[1] === "backspacing") {
    const { offset, rimWidth } = setup.wheel;
    return { kind: "length", mm: backspacingFromOffset(offset, rimWidth) };
  }
  const value = valueAt(setup, path);
  if (value === undefined || value === null) return null;
  switch (kind) {
    case "length":
      return { kind, mm: value as number };
    case "angle":
      return { kind, rad: value as number };
    case "point":
      return { kind, point: value as Point };
    case "word":
      return { kind, word: value as string };
  }
}

function isSameValue(a: OrderedValue, b: OrderedValue): boolean {
  if (a.kind === "length" && b.kind === "length") return Math.abs(a.mm - b.mm) < SAME.length;
  if (a.kind === "angle" && b.kind === "angle") return Math.abs(a.rad - b.rad) < SAME.angle;
  if (a.kind === "point" && b.kind === "point")
    return a.point.every((value, i) => Math.abs(value - b.point[i]!) < SAME.length);
  return a.kind === "word" && b.kind === "word" && a.word === b.word;
}
