import { describeValue } from "../../setup/reading/describeValue.ts";
import type { MeasuredStance } from "../../setup/types/floorTypes.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { formatAngle } from "../../units/angle.ts";
import { formatLength } from "../../units/formatLength.ts";
import { type FileUnits, MM_PER_INCH } from "../../units/lengthUnits.ts";

/** The travel, mm, that both wheels can stand at straight ahead. */
export interface StandingRange {
  readonly least: number;
  readonly most: number;
}

/**
 * A stance typed by a travel, mm, that a wheel cannot stand at.
 * @param index its place in the file @param joint what cannot follow, such as `left tie rod`
 */
export function stanceOutOfReach(
  at: { readonly file: string; readonly index: number },
  travel: number,
  range: StandingRange,
  joint: string,
  units: FileUnits,
): SetupIssue {
  const end = travel < range.least ? range.least : range.most;
  return {
    file: at.file,
    key: `stances[${at.index}].travel`,
    value: formatLength(travel, { units }),
    mend: `out of reach: the ${joint} cannot follow there; the nearest that goes is ${inwardText(end, units)}`,
    range,
  };
}

/** A length a reader can type: rounded toward 0, where the truck stands as measured. */
function inwardText(mm: number, units: FileUnits): string {
  const step = units === "in" ? MM_PER_INCH / 16 : 0.1;
  return formatLength(Math.trunc(mm / step) * step, { units });
}

/** A stance typed by a measure that no travel in reach gives; null ends = it can be read nowhere. */
export function measureOutOfReach(
  file: string,
  { index, measure, typed }: MeasuredStance,
  { least, most }: { readonly least: number | null; readonly most: number | null },
  units: FileUnits,
): SetupIssue {
  const isAngle = measure === "lowerArmAngle";
  const text = (value: number) => (isAngle ? formatAngle(value, 1) : formatLength(value, { units }));
  const issue = { file, key: `stances[${index}].${measure}`, value: describeValue(typed) };
  if (least === null || most === null) return { ...issue, mend: "cannot be read at any travel in reach" };
  const mend = `no travel in reach gives it; between ${text(least)} and ${text(most)} one does`;
  return { ...issue, mend, ...(isAngle ? {} : { range: { least, most } }) };
}
