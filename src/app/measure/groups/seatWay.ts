import type { WheelSetup } from "../../../setup/types/types.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
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
