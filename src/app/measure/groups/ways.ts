import type { TireRing } from "../../../gaps/tire/tireOf.ts";
import type { SteeringSetup } from "../../../setup/types/truckTypes.ts";
import type { Setup, WheelSetup } from "../../../setup/types/types.ts";
import { degFromRad } from "../../../units/angle.ts";
import {
  type FileUnits,
  MM_PER_INCH,
  mmFromInches,
  mmFromUnits,
  unitsFromMm,
} from "../../../units/lengthUnits.ts";
import { plainLengthText, tapeText } from "../../../units/plainLengthText.ts";
import { backspacingFromOffset } from "../../../units/wheelOffset.ts";

/** How the place of the mounting face is given. */
export type SeatWay = "backspacing" | "offset";

/**
 * The wheel as the file holds it, its mounting face at the same place given the other way.
 * @param typed the wheel as the file holds it now; @param wheel the wheel last read, mm
 */
export function wheelGivenBy(way: SeatWay, typed: unknown, wheel: WheelSetup, units: FileUnits): object {
  const { backspacing: _, offset: __, ...others } = (typed ?? {}) as Readonly<Record<string, unknown>>;
  const mm = way === "offset" ? wheel.offset : backspacingFromOffset(wheel.offset, wheel.rimWidth);
  // What arithmetic rounds off is far below what any tape reads.
  return { ...others, [way]: plainLengthText(Math.round(mm * 1e6) / 1e6, units) };
}

/** A wheel's center to start from: the flat disk that holds while none is given, out to the barrel. */
export function flatCenter(wheel: WheelSetup, units: FileUnits): readonly (readonly (string | number)[])[] {
  return [
    [0, 0],
    [0, plainLengthText(wheel.barrelDiameter / 2, units)],
  ];
}

/** mm. A pitman arm about as long as most are (common practice, no source); to be measured. */
const PITMAN_LENGTH = mmFromInches(6);

/**
 * A steering of the other type to start from, as the file holds it: the same inner tie rod ends and about the same way to
 * lock. Pitman and idler arms reach forward from the inner ends to upright shafts; where they are has to be measured.
 */
export function steeringOfType(
  type: SteeringSetup["type"],
  steering: SteeringSetup,
  units: FileUnits,
): object {
  const text = (mm: number) => tapeText(mm, units);
  const [x, y, z] = steering.innerEnd;
  const innerEnd = [text(x), text(y), text(z)];
  if (steering.type === type) return { ...steering, innerEnd };
  if (steering.type === "pitman") {
    return { type: "rack", innerEnd, stroke: text(PITMAN_LENGTH * Math.sin(steering.swing)) };
  }
  const arm = (side: 1 | -1) => ({
    pivot: [text(x + PITMAN_LENGTH), text(side * y), text(z)],
    end: [text(x), text(side * y), text(z)],
  });
  const swing = degFromRad(Math.asin(Math.min(0.9, steering.stroke / PITMAN_LENGTH)));
  return { type: "pitman", innerEnd, swing: Number(swing.toFixed(1)), pitman: arm(1), idler: arm(-1) };
}

/** How a tire is given. */
export type TireWay = "size" | "diameter" | "profile";

/** Keys that give a tire's shape, in one way or another. */
const SHAPE: readonly string[] = ["size", "diameter", "sectionWidth", "treadWidth", "profile"];

/**
 * The tire as the file holds it, given in another way. Dimensions and profile are the ones the size stands for, as closely as
 * they are worked out: nothing answered changes by more than a thousandth of a millimeter or two. A size is the nearest metric
 * one, about the tire there is, to be put right.
 * @param typed the tire as the file holds it now; @param ring and @param wheel as last assembled, mm
 */
export function tireGivenBy(
  way: TireWay,
  typed: unknown,
  ring: TireRing,
  wheel: WheelSetup,
  units: FileUnits,
): object {
  const kept = Object.fromEntries(Object.entries(typed ?? {}).filter(([key]) => !SHAPE.includes(key)));
  // On a tape's marks the tire would be another by up to half a mark. Half of each is to a side.
  const text = (mm: number) => outwardText(mm, units, 2 * KEPT);
  switch (way) {
    case "size":
      return { size: nearestSize(ring, wheel), ...kept };
    case "diameter":
      return { diameter: text(2 * ring.freeRadius), sectionWidth: text(ring.sectionWidth), ...kept };
    case "profile":
      return { profile: profilePoints(ring, units), ...kept };
  }
}

/** Widths of metric sizes end in 5, ten apart; aspect ratios go by fives. */
function nearestSize(ring: TireRing, wheel: WheelSetup): string {
  const width = 10 * Math.round((ring.sectionWidth - 5) / 10) + 5;
  const section = ring.freeRadius - wheel.rimDiameter / 2;
  const aspect = Math.max(20, Math.min(95, 5 * Math.round((20 * section) / width)));
  return `P${width}/${aspect}R${Number((wheel.rimDiameter / MM_PER_INCH).toFixed(1))}`;
}

/** Decimals of a file's units, the fewer first: as many as keep a length within `KEPT`. */
const DECIMALS = { in: [0, 1, 2, 3, 4, 5], mm: [0, 1, 2, 3] } as const;

/** mm. What is written is outside of what it stands for by less. */
const KEPT = 1e-3;

/**
 * A length in the file's own units with no unit named, as short as it can be to within `kept`, outward: the made outline holds
 * the tire, and so must what is written of it.
 */
function outwardText(mm: number, units: FileUnits, kept = KEPT): string {
  const [size, sign] = [unitsFromMm(Math.abs(mm), units), Math.sign(mm)];
  const off = (value: number) => Math.abs(mmFromUnits(value, units) - Math.abs(mm));
  const outward = (decimals: number) => {
    const shift = 10 ** decimals;
    return Math.ceil(size * shift - 1e-6) / shift;
  };
  const decimals = DECIMALS[units].find((one) => off(outward(one)) <= kept) ?? DECIMALS[units].at(-1)!;
  return String(sign * outward(decimals) + 0);
}

/** Points of an outline as they are typed, in the file's own units. */
function profilePoints({ profile, freeRadius }: TireRing, units: FileUnits): readonly (readonly string[])[] {
  const rows: string[][] = [];
  for (let i = 0; i < profile.length; i += 2) {
    const r = Math.min(profile[i + 1]!, freeRadius);
    rows.push([outwardText(profile[i]!, units), outwardText(r, units)]);
  }
  return rows;
}

/** mm. A caliper with its bracket, about as large as most (common practice, no source); to be measured. */
const SIZE = { along: mmFromInches(3), across: mmFromInches(4), high: mmFromInches(6) } as const;

/** A caliper to start from, as the file holds it: behind the pin, from the hub face inward, inside the barrel. */
export function startCaliper({ wheel }: Setup, units: FileUnits): object {
  const text = (mm: number) => tapeText(mm, units);
  // Its outer corner stays an inch inside the barrel.
  const half = SIZE.high / 2;
  const reach = Math.sqrt(Math.max(0, (wheel.barrelDiameter / 2 - MM_PER_INCH) ** 2 - half ** 2));
  return {
    frame: "hub",
    min: [text(-reach), text(-SIZE.across - MM_PER_INCH), text(-half)],
    max: [text(SIZE.along - reach), text(-MM_PER_INCH), text(half)],
  };
}
