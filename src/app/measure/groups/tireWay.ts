import type { TireRing } from "../../../gaps/tire/tireOf.ts";
import type { WheelSetup } from "../../../setup/types/types.ts";
import { type FileUnits, MM_PER_INCH } from "../../../units/lengthUnits.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";

/** How a tire is given. */
export type TireWay = "size" | "diameter" | "profile";

/** Keys that give a tire's shape, in one way or another. */
const SHAPE: readonly string[] = ["size", "diameter", "sectionWidth", "treadWidth", "profile"];

/**
 * The tire as the file holds it, given in another way: about the tire there is, to be put right. A size is the nearest metric
 * one; dimensions and profile are the ones the size stands for.
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
  const text = (mm: number) => {
    const grid = units === "in" ? MM_PER_INCH / 16 : 1;
    return plainLengthText(Math.round(mm / grid) * grid, units);
  };
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

/** To the hundredth of a millimeter, outward: the made outline holds the tire, and so must what is written of it. */
function profilePoints({ profile, freeRadius }: TireRing, units: FileUnits): readonly (readonly string[])[] {
  const rows: string[][] = [];
  const outward = (mm: number) => (Math.sign(mm) * Math.ceil(Math.abs(mm) * 100 - 1e-6)) / 100;
  for (let i = 0; i < profile.length; i += 2) {
    const r = Math.min(profile[i + 1]!, freeRadius);
    rows.push([plainLengthText(outward(profile[i]!), units, "mm"), plainLengthText(outward(r), units, "mm")]);
  }
  return rows;
}
